"""Each problem's variants, dealt once for all tests of a module."""

import pytest

from calc.coursework.problem import Recall
from tests.coursework.given import SETS, Dealt, dealt

EVERY = [(each, problem) for each in SETS for problem in each.problems]
CASES = [(each, one.name) for each, one in EVERY if not isinstance(one, Recall)]
RECALLS = [(each, one.name) for each, one in EVERY if isinstance(one, Recall)]


def _named(case: object) -> str:
    assert isinstance(case, tuple)
    return f"{case[0].name}-{case[1]}"


@pytest.fixture(scope="module", params=CASES, ids=_named)
def case(request: pytest.FixtureRequest) -> Dealt:
    """Every problem that stands on a calculator, all variants."""
    return dealt(*request.param)


@pytest.fixture(scope="module", params=CASES, ids=_named)
def sample(request: pytest.FixtureRequest) -> Dealt:
    """Every problem that stands on a calculator, some variants."""
    problems, name = request.param
    return dealt(problems, name, every=25)


@pytest.fixture(scope="module", params=RECALLS, ids=_named)
def recall(request: pytest.FixtureRequest) -> Dealt:
    """Every problem of recall, all variants."""
    return dealt(*request.param)
