"""The command line: what it prints, and how it refuses."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from calc.__main__ import main
from calc.calculators import calculator, names
from calc.figures import agrees, read_number

ROOT = Path(__file__).resolve().parents[1]
type Capture = pytest.CaptureFixture[str]


def told(capsys: Capture, *arguments: str) -> str:
    """What is printed for arguments that can be used."""
    status = main(list(arguments))
    out, err = capsys.readouterr()
    assert (status, err) == (0, "")
    return out


def told_json(capsys: Capture, *arguments: str) -> Any:
    return json.loads(told(capsys, "--json", *arguments))


def refused(capsys: Capture, *arguments: str) -> str:
    """The one line on standard error for arguments that cannot be used."""
    status = main(list(arguments))
    out, err = capsys.readouterr()
    assert (status, out) == (2, "")
    assert err.count("\n") == 1
    assert err.endswith("\n")
    return err.strip()


def figure(text: str, output: str) -> str:
    """The figure of an output in the printed text, without its unit."""
    line = next(line for line in text.splitlines() if line.endswith(f"({output})"))
    return line.rpartition(": ")[2].split()[0]


def test_lists_the_calculators(capsys: Capture) -> None:
    """The declarations: name and question, a line each."""
    lines = told(capsys).splitlines()
    assert [line.split()[0] for line in lines] == names()
    assert all(line.endswith(calculator(line.split()[0]).question) for line in lines)


def test_lists_the_calculators_as_json(capsys: Capture) -> None:
    """The declarations: inputs with range and unit, outputs, cautions, sources."""
    listed = told_json(capsys)["calculators"]
    assert [each["name"] for each in listed] == names()
    pail = next(each for each in listed if each["name"] == "pail_flow")
    (volume,) = (each for each in pail["inputs"] if each["name"] == "pail")
    assert volume["unit"] == {"us": "gal", "si": "L"}
    assert volume["range"] == {"unit": "gal", "low": pytest.approx(0.1), "high": pytest.approx(200)}
    assert volume["measure"]
    assert pail["cautions"]
    assert {each["id"] for each in pail["sources"]} >= {"jcgm-100"}
    assert all(each["seen"] and each["title"] for each in pail["sources"])


@pytest.mark.parametrize("name", names())
def test_answers_with_the_defaults(capsys: Capture, name: str) -> None:
    """The declarations: every input and output, cautions first, the working if asked for."""
    text = told(capsys, name, "--working")
    declared = calculator(name)
    for each in (*declared.inputs, *declared.outputs):
        assert each.label in text
        assert f"({each.name})" in text
    headings = ["Cautions", "Given", "Answer", "Working", "Sources"]
    places = [text.index(f"\n{heading}\n") for heading in headings]
    assert places == sorted(places)
    assert all(caution in text for caution in declared.cautions)
    assert all(caution in told(capsys, name) for caution in declared.cautions)
    assert "\nWorking\n" not in told(capsys, name)


def test_answers_what_is_asked(capsys: Capture) -> None:
    """By hand: 6 gal in 90 s is 4 gpm, 15.1 L/min."""
    asked = ("pail_flow", "pail=6 gal", "runs=90")
    assert agrees(read_number(figure(told(capsys, *asked), "flow")), "4.00")
    assert agrees(read_number(figure(told(capsys, "--units", "si", *asked), "flow")), "15.1")


@pytest.mark.parametrize(
    "asked",
    [
        ("pail=5.5", "runs=1:30"),
        ("pail=5 1/2", "runs=1½ min"),
        ("pail=5-1/2 gal", "runs=90 s"),
        ("pail = 22 qt", "runs = 90"),
        ("pail=5 gal 2 qt", "runs=1 min 30 s"),
        ("pail=20,8197648 L", "runs=0.025 h"),
    ],
)
def test_values_as_people_write_them(capsys: Capture, asked: tuple[str, ...]) -> None:
    """By hand: 5.5 gal in a minute and a half is 3.667 gpm however it is written."""
    found = told_json(capsys, "pail_flow", *asked)
    assert found["outputs"]["flow"]["value"] == pytest.approx(5.5 / 1.5, rel=1e-8)


def test_json_holds_the_whole_answer(capsys: Capture) -> None:
    """The declarations: value, unit, limits, steps, cautions and sources of the answer."""
    found = told_json(capsys, "outlet_setting", "outlet=6", "limit=before")
    assert found["calculator"] == "outlet_setting"
    assert found["inputs"]["outlet"] == {"value": pytest.approx(6), "unit": "gpm"}
    assert found["inputs"]["limit"] == {"value": "before"}
    margin = found["outputs"]["margin"]
    assert margin["value"] == pytest.approx(-1.2, rel=1e-9)
    assert (margin["unit"], margin["limits"]["low"], margin["limits"]["unit"]) == ("gpm", 0, "gpm")
    assert margin["limits"]["outside"]
    declared = calculator("outlet_setting")
    assert list(found["outputs"]) == [each.name for each in declared.outputs]
    assert found["cautions"] == list(declared.cautions)
    assert [each["id"] for each in found["sources"]] == list(declared.sources)
    assert all(step["label"] and step["formula"] and step["worked"] for step in found["steps"])
    assert found["findings"][0]["level"] == "danger"


def test_json_has_no_number_where_there_is_none(capsys: Capture) -> None:
    """By reason: an outlet smaller than the inlet lasts for good, which is no number."""
    lasts = told_json(capsys, "outlet_setting", "outlet=4")["outputs"]["lasts"]
    assert lasts["value"] is None


def test_units_of_the_answer(capsys: Capture) -> None:
    """[nist-811]: the same flow in both sets of units, 3.785412 L to the gallon."""
    us = told_json(capsys, "outlet_setting", "outlet=6 gpm")["outputs"]["setting"]
    si = told_json(capsys, "outlet_setting", "outlet=6 gpm", "--units", "si")["outputs"]["setting"]
    assert (us["unit"], si["unit"]) == ("gpm", "L/min")
    assert si["value"] / us["value"] == pytest.approx(3.785411784, rel=1e-9)


def test_tells_what_a_calculator_takes(capsys: Capture) -> None:
    """The declarations: name, label and default of each input, how to measure it, the options."""
    text = told(capsys, "--help", "outlet_setting")
    declared = calculator("outlet_setting")
    for each in declared.inputs:
        assert f"  {each.name}  {each.label} [{each.default}]" in text
        assert each.measure in text
    assert "before" in text
    assert "after" in text
    assert all(each.label in text for each in declared.outputs)


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("inlet=five", "inlet: “five” is not a number"),
        ("inlet=", "inlet: Nothing stands here"),
        ("inlet=1,234", "inlet: Is “1,234” a thousand"),
        ("inlet=101", "inlet: Too large: the arithmetic holds from 0.100 gpm to 100 gpm"),
        ("inlet=0.1 L/min", "inlet: Too small"),
        ("inlet=5 psi", "inlet: “psi” measures gauge pressure; here flow is wanted"),
        ("inlet=5 furlongs", "inlet: “furlongs” is no unit known here"),
        ("limit=beside", "limit: “beside” is none of"),
        ("cut_out=20", "cut_out: Pump 2 stops at (cut-out) must be above the cut-in of 30 psi"),
        ("no_such=3", "no_such: There is no such input"),
        ("inlet", "inlet: Write it as input=value"),
    ],
)
def test_refuses_in_one_line_that_names_the_input(capsys: Capture, asked: str, says: str) -> None:
    """By hand: what is wrong, at which input, in the reader's unit; exit status 2."""
    line = refused(capsys, "outlet_setting", asked)
    assert line.startswith(says.partition(": ")[0] + ": ")
    assert says.partition(": ")[2] in line


def test_refuses_many_in_one_line(capsys: Capture) -> None:
    """By reason: a script reads one line; the first thing wrong is named."""
    line = refused(capsys, "outlet_setting", "inlet=x", "outlet=y", "runs=z")
    assert line.partition(":")[0] in ("inlet", "outlet", "runs")


def test_too_many_readings(capsys: Capture) -> None:
    """The declaration: six runs at most."""
    assert refused(capsys, "pail_flow", "runs=1;2;3;4;5;6;7") == "runs: At most 6 readings."


@pytest.mark.parametrize("name", ["no_such", "Pail_Flow", "../fields", "pail flow", "__init__"])
def test_refuses_a_calculator_that_is_none(capsys: Capture, name: str) -> None:
    """By reason: the line says which there are."""
    line = refused(capsys, name)
    assert name in line
    assert all(each in line for each in names())


def test_an_option_that_is_none(capsys: Capture) -> None:
    """The way of command lines: usage on standard error, status 2."""
    with pytest.raises(SystemExit) as left:
        main(["--units", "furlongs", "pail_flow"])
    assert left.value.code == 2
    assert "furlongs" in capsys.readouterr().err


def test_as_a_program() -> None:
    """By reason: the module runs by its name, and its status is the shell's."""
    command = [sys.executable, "-m", "calc", "pail_flow", "runs=x"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith("runs: ")
