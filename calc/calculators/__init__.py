"""The calculators. Each module of this package declares one and is named as it is."""

import importlib
import pkgutil

from calc.model import Calculator


def names() -> list[str]:
    """Names of all calculators, in alphabetical order."""
    return sorted(each.name for each in pkgutil.iter_modules(__path__))


def calculator(name: str) -> Calculator:
    """The calculator of that name. KeyError, naming it, if there is none.

    Only its own module is imported: a page pays for what it shows.
    """
    path = f"{__name__}.{name}"
    if not name.isidentifier() or name.startswith("_"):
        raise KeyError(name)
    try:
        declared = importlib.import_module(path).CALCULATOR
    except ModuleNotFoundError as missing:
        if missing.name != path:
            raise
        raise KeyError(name) from None
    assert isinstance(declared, Calculator)
    return declared
