"""As in the tests of the model: a count need not be long to be drawn."""

from tests.model.conftest import few_weeks

__all__ = ["few_weeks"]
