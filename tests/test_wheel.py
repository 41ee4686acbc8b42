"""The wheel: what is in it, and that it works where nothing else is."""

import json
import os
import re
import shlex
import subprocess
import sys
import zipfile
from email.message import Message
from email.parser import Parser
from pathlib import Path

import pytest

from calc import EDITION
from calc.request import case_of
from calc.views.data import answered

ROOT = Path(__file__).resolve().parents[1]
PIP = (sys.executable, "-m", "pip", "--disable-pip-version-check", "--quiet")
ALONE = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
README = (ROOT / "calc" / "README.md").read_text(encoding="utf-8")


def run(*command: str | Path, where: Path) -> str:
    done = subprocess.run(
        command, cwd=where, env=ALONE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built without a network."""
    folder = tmp_path_factory.mktemp("wheel")
    offline = ("--no-index", "--no-deps", "--no-build-isolation")
    run(*PIP, "wheel", *offline, "--wheel-dir", folder, ROOT, where=folder)
    (built,) = folder.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def python(wheel: Path) -> Path:
    """A Python that has the wheel and nothing else."""
    folder = wheel.parent / "venv"
    run(sys.executable, "-m", "venv", "--without-pip", folder, where=wheel.parent)
    python = folder / "bin" / "python"
    run(*PIP, "--python", python, "install", "--no-index", "--no-deps", wheel, where=wheel.parent)
    return python


def metadata(wheel: Path) -> Message:
    with zipfile.ZipFile(wheel) as opened:
        (name,) = (each for each in opened.namelist() if each.endswith("/METADATA"))
        return Parser().parsestr(opened.read(name).decode())


def test_carries_the_whole_package_and_nothing_else(wheel: Path) -> None:
    """The package itself: every file of calc/, with its types, schemas and README."""
    kept = (file for file in (ROOT / "calc").rglob("*") if "__pycache__" not in file.parts)
    files = {file.relative_to(ROOT).as_posix() for file in kept if file.is_file()}
    assert files > {"calc/py.typed", "calc/README.md", "calc/calculators.schema.json"}
    with zipfile.ZipFile(wheel) as opened:
        names = set(opened.namelist())
    beside = {name for name in names if name.partition("/")[0].endswith(".dist-info")}
    assert names - beside == files
    assert any(name.endswith("/LICENSE") for name in beside)


def test_says_what_it_is_and_needs_nothing(wheel: Path) -> None:
    """pyproject.toml: one edition for handbook and wheel, no dependency at run time."""
    about = metadata(wheel)
    assert about["Version"] == EDITION
    assert about.get_payload() == README
    needed = [each for each in about.get_all("Requires-Dist", []) if "extra ==" not in each]
    assert needed == []


def test_answers_from_an_empty_folder(python: Path, tmp_path: Path) -> None:
    """This package in this process: the installed one says the same to the last digit."""
    case = case_of(["pail_flow"])
    told = json.loads(run(python, "-m", "calc", "pail_flow", "--json", where=tmp_path))
    assert told == json.loads(json.dumps(answered(case)))
    where = run(python, "-c", "import calc; print(calc.__file__)", where=tmp_path)
    assert Path(where.strip()).is_relative_to(python.parents[1])


def test_the_commands_of_the_readme_run(python: Path, tmp_path: Path) -> None:
    """A shell's own reading of the lines."""
    commands = re.findall(r"^    python (-m calc.*)$", README, re.MULTILINE)
    assert len(commands) > 3
    for command in commands:
        assert run(python, *shlex.split(command, comments=True), where=tmp_path)


def test_the_readme_is_a_program_that_runs_and_has_its_types(python: Path, tmp_path: Path) -> None:
    """By hand: 6 gal in 90 s is 4 gpm. mypy, of which a reader's own mistake must be seen."""
    (example,) = re.findall(r"```python\n(.*?)```", README, re.DOTALL)
    script = tmp_path / "script.py"
    script.write_text(example, encoding="utf-8")
    assert run(python, script, where=tmp_path) == "4.0\n"
    mypy = (sys.executable, "-m", "mypy", "--strict", "--python-executable", python, script)
    assert "no issues" in run(*mypy, where=tmp_path)
    script.write_text(f"{example}\nprint(case.calculator.titel, gpm + '')\n", encoding="utf-8")
    done = subprocess.run(
        mypy, cwd=tmp_path, env=ALONE, capture_output=True, text=True, check=False
    )
    assert 'no attribute "titel"' in done.stdout
    assert "[operator]" in done.stdout
