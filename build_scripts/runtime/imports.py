"""Which modules a page can come to import, read from the code itself."""

import ast
import subprocess
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PAGE_ASKS = "calc.views.browser"
CALCULATORS = ROOT / "calc" / "calculators"

# A process of its own tells which modules are loaded once those it is given are.
TELL = """
import sys
from contextlib import suppress
from importlib import import_module
for name in sys.argv[1:]:
    with suppress(ModuleNotFoundError):  # a function's name, not a module's
        import_module(name)
print(*sys.modules)
"""


def package_files() -> dict[str, Path]:
    """The files of `calc` that a page can reach, by module name."""
    calculators = (_name(file) for file in CALCULATORS.glob("*.py"))
    waiting = [PAGE_ASKS, *calculators]
    reached: dict[str, Path] = {}
    while waiting:
        module = waiting.pop()
        file = _file(module)
        if file and module not in reached:
            reached[module] = file
            waiting += [*_packages(module), *imported(file)]
    return dict(sorted(reached.items()))


def imported(file: Path) -> Iterator[str]:
    """Names that the code imports, anywhere in it: modules, and what is taken out of them."""
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


def loaded_with(names: set[str]) -> set[str]:
    """Names of all modules that are loaded once those of these names are."""
    command = [sys.executable, "-I", "-S", "-c", TELL, *sorted(names)]
    return set(subprocess.run(command, check=True, capture_output=True, text=True).stdout.split())


def _name(file: Path) -> str:
    return ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def _file(module: str) -> Path | None:
    path = ROOT.joinpath(*module.split("."))
    candidates = (path.with_suffix(".py"), path / "__init__.py")
    ours = module.partition(".")[0] == "calc"
    return next((file for file in candidates if ours and file.exists()), None)


def _packages(module: str) -> Iterator[str]:
    while module := module.rpartition(".")[0]:
        yield module
