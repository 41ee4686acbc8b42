"""Each problem's variants, dealt once for all tests of a module."""

import pytest

from tests.coursework.given import SETS, Dealt, dealt

CASES = [
    (each, problem.name) for each in SETS for problem in each.problems if problem.form != "recall"
]
RECALLS = [
    (each, problem.name) for each in SETS for problem in each.problems if problem.form == "recall"
]


def _named(case: object) -> str:
    assert isinstance(case, tuple)
    return f"{case[0].name}-{case[1]}"


@pytest.fixture(scope="module", params=[*CASES, *RECALLS], ids=_named)
def every(request: pytest.FixtureRequest) -> Dealt:
    """Every problem."""
    return dealt(*request.param)


@pytest.fixture(scope="module", params=CASES, ids=_named)
def case(request: pytest.FixtureRequest) -> Dealt:
    """Every problem that stands on a calculator."""
    return dealt(*request.param)
