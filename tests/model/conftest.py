"""For tests of what holds of any count: fewer weeks, so that a thousand answers take seconds."""

from collections.abc import Iterator

import pytest

from calc.fields import household


@pytest.fixture(autouse=True, scope="module")
def few_weeks() -> Iterator[None]:
    """A first answer of two to six weeks in place of two years; the code is the same."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(household, "QUICK", 20_000)
        yield
