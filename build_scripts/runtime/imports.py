"""Which modules a page can come to import, read from the code itself."""

import ast
import json
import subprocess
import sys
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PAGE_ASKS = "calc.views.browser"
CALCULATORS = ROOT / "calc" / "calculators"
PRACTICE = "calc.coursework.practice"  # the page asks for it by its name as text
SETS = ROOT / "calc" / "coursework" / "sets"

# A process of its own tells which modules are loaded once those it is given are, with others in
# the place of some.
TELL = """
import sys
from importlib import import_module
from json import loads
from types import ModuleType
names, stand_ins = loads(sys.argv[1])
for name, code in stand_ins.items():
    sys.modules[name] = ModuleType(name)
    exec(code, sys.modules[name].__dict__)
for name in names:
    try:
        import_module(name)
    except ModuleNotFoundError:
        pass  # a function's name, not a module's
print(*sys.modules)
"""


def package_files() -> dict[str, Path]:
    """The files of `calc` that a page can reach, by module name."""
    return reached([PAGE_ASKS, *calculators(), *coursework()])


def calculators() -> list[str]:
    """Names of the calculators' modules."""
    return [_name(file) for file in sorted(CALCULATORS.glob("[!_]*.py"))]


def coursework() -> list[str]:
    """Names of the modules that only the pages of problem sets need."""
    return [PRACTICE, *(_name(file) for file in sorted(SETS.glob("[!_]*.py")))]


def reached(modules: list[str]) -> dict[str, Path]:
    """The files of `calc` that these of its modules come to import, and their own, by name."""
    waiting = [*modules]
    found: dict[str, Path] = {}
    while waiting:
        module = waiting.pop()
        file = _file(module)
        if file and module not in found:
            found[module] = file
            waiting += [*_packages(module), *imported(file)]
    return dict(sorted(found.items()))


@cache
def imported(file: Path) -> tuple[str, ...]:
    """Names that the code imports, anywhere in it: modules, and what is taken out of them."""
    return tuple(_imported(file))


def _imported(file: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(file.read_bytes())):
        if isinstance(node, ast.Import):
            yield from (each.name for each in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.module, f"{file}: say the whole name in an import"
            assert not node.level, f"{file}: say the whole name in an import"
            yield node.module
            yield from (f"{node.module}.{each.name}" for each in node.names)


def asked_of_library(files: Mapping[str, Path]) -> set[str]:
    """Names that these files import from the standard library."""
    names = {name for file in files.values() for name in imported(file)}
    return {name for name in names if name.partition(".")[0] in sys.stdlib_module_names}


def loaded_with(names: set[str], stand_ins: Mapping[str, str]) -> set[str]:
    """Names of all modules that are loaded once those of these names are.

    stand_ins -- code of modules that are there in place of the library's own, by name
    """
    asked = json.dumps([sorted(names), dict(stand_ins)])
    command = [sys.executable, "-I", "-S", "-c", TELL, asked]
    return set(subprocess.run(command, check=True, capture_output=True, text=True).stdout.split())


def _name(file: Path) -> str:
    return ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


@cache
def _file(module: str) -> Path | None:
    path = ROOT.joinpath(*module.split("."))
    candidates = (path.with_suffix(".py"), path / "__init__.py")
    ours = module.partition(".")[0] == "calc"
    return next((file for file in candidates if ours and file.exists()), None)


def _packages(module: str) -> Iterator[str]:
    while module := module.rpartition(".")[0]:
        yield module
