"""Imports point one way, and `calc` needs nothing but Python."""

import ast
import sys
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
LOW = {"calc.errors", "calc.figures", "calc.quantity", "calc.units"}
MODEL = LOW | {"calc.sources", "calc.charts", "calc.model"}
JOB = {"calc.calculators.__init__", "calc.vocabulary", "calc.job_file"}
BELOW_VIEWS = (
    MODEL
    | JOB
    | {"calc.__init__", "calc.cautions", "calc.request", "calc.job"}
    | {"calc.backwards", "calc.uncertainty", "calc.sweep"}
    | {"calc.days", "calc.calendar_file", "calc.forecasts", "calc.next_visit", "calc.sheets"}
)

# What a module may import of `calc`, itself and its own package apart. The first name
# that fits counts; a name with a dot at its end stands for all modules of a package.
MAY_IMPORT = {
    "calc.__init__": set[str](),
    "calc.errors": set[str](),
    "calc.sources": set[str](),
    "calc.cautions": set[str](),
    "calc.figures": {"calc.errors"},
    "calc.quantity": {"calc.errors", "calc.figures"},
    "calc.units": {"calc.quantity"},
    "calc.charts": {"calc.quantity"},
    "calc.physics.": LOW | {"calc.roots"},
    "calc.roots": set(),
    "calc.backwards": {"calc.errors", "calc.roots"},
    "calc.uncertainty": {"calc.errors"},
    "calc.job_file": {"calc.errors"},
    "calc.model": MODEL | {"calc.uncertainty"},
    "calc.fields.__init__": MODEL,
    "calc.fields.": MODEL | {"calc.fields.", "calc.physics."},
    "calc.calculators.__init__": {"calc.model"},
    "calc.run_pictures": MODEL | {"calc.physics."},
    "calc.stripping_steps": {"calc.model"},
    "calc.calculators.": MODEL
    | {"calc.fields.", "calc.cautions", "calc.physics.", "calc.run_pictures"}
    | {"calc.levels", "calc.pipes", "calc.treatment_order", "calc.stripping_steps"},
    "calc.request": MODEL | {"calc.calculators.__init__"},
    "calc.sweep": MODEL,
    "calc.vocabulary": MODEL | {"calc.calculators.__init__"},
    "calc.job": MODEL | JOB | {"calc.__init__"},
    "calc.days": set(),
    "calc.calendar_file": {"calc.days"},
    "calc.forecasts": MODEL | JOB | {"calc.job", "calc.days", "calc.calculators."},
    "calc.next_visit": MODEL | {"calc.__init__", "calc.job"},
    "calc.sheets": set(),
    "calc.house.": MODEL | JOB | {"calc.job"},
    "calc.demo": MODEL | JOB | {"calc.__init__", "calc.job", "calc.house."},
    "calc.views.": BELOW_VIEWS | {"calc.house.", "calc.demo", "calc.diagnosis.", "calc.visits."},
    "calc.coursework.": BELOW_VIEWS | {"calc.views.", "calc.coursework."},
    "calc.__main__": BELOW_VIEWS | {"calc.views.", "calc.coursework.command"},
    "calc.levels": LOW,
    "calc.diagnosis.": set(),
    "calc.visits.": {"calc.cautions"},
    "calc.pipes": MODEL | {"calc.fields.", "calc.physics."},
    "calc.treatment_order": set(),
    "calc.other_treatment": set(),
}


def module_name(path: Path) -> str:
    return ".".join(path.relative_to(ROOT).with_suffix("").parts)


MODULES = {module_name(path): path for path in sorted((ROOT / "calc").rglob("*.py"))}
every_module = pytest.mark.parametrize("module", MODULES)


def imported(path: Path) -> Iterator[str]:
    """Every module that a file imports, functions and conditions included."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (named(each.name) for each in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: say the whole name"
            assert node.module
            inner = [f"{node.module}.{each.name}" for each in node.names]
            modules = [name for name in inner if named(name) in MODULES]
            yield from map(named, modules or [node.module])


def named(module: str) -> str:
    """The name of the file that holds a module: a package is its __init__."""
    return f"{module}.__init__" if f"{module}.__init__" in MODULES else module


def covers(rule: str, module: str) -> bool:
    return module.startswith(rule) if rule.endswith(".") else module == rule


@every_module
def test_imports_point_one_way(module: str) -> None:
    """The design's picture: errors and figures, units, sources, model, calculators, views."""
    rule = next((each for each in MAY_IMPORT if covers(each, module)), None)
    assert rule, "say in MAY_IMPORT what this module may import"
    package = f"{module.rpartition('.')[0]}."
    own = {package} if rule == package and package != "calc.calculators." else set()
    for name in imported(MODULES[module]):
        if name.split(".")[0] == "calc":
            assert any(covers(each, name) for each in MAY_IMPORT[rule] | own), name


@every_module
def test_only_the_standard_library(module: str) -> None:
    """The design: the package runs in a browser and on a bare Python alike."""
    for name in imported(MODULES[module]):
        assert name.split(".")[0] in sys.stdlib_module_names | {"calc"}


def test_no_module_imports_itself_by_a_detour() -> None:
    """graphlib: the imports can be put in an order."""
    graph = {module: set(imported(path)) & set(MODULES) for module, path in MODULES.items()}
    order = list(TopologicalSorter(graph).static_order())
    assert set(order) == set(MODULES)
    assert order.index("calc.model") < order.index("calc.calculators.tank_draw")


def test_the_scan_sees_imports() -> None:
    """By reason: a scan that finds nothing would pass every rule."""
    found = set(imported(MODULES["calc.views.answer"]))
    assert {"calc.model", "calc.sources", "calc.views.chart", "calc.views.html"} <= found
    assert "calc.calculators.__init__" in set(imported(MODULES["calc.request"]))
