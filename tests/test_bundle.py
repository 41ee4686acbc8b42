"""What a browser runs: all that a page can ask works in the trimmed runtime, and it is light."""

import json
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

from build_scripts import bundle, formulas
from build_scripts.runtime import binary, packed
from build_scripts.runtime.engine import ASKED, MAIN
from build_scripts.runtime.library import PYODIDE
from calc import demo
from calc.calculators import calculator, names
from calc.coursework import sets
from calc.diagnosis.symptoms import SYMPTOMS
from calc.job import write_job
from calc.model import Input
from calc.views import browser
from calc.visits.all_visits import VISITS
from tests.conftest import Site

ROOT = Path(__file__).resolve().parents[1]
FIRST_VISIT = 3_200_000  # bytes in brotli that the calculators may cost, page and theme apart
WHEN = "2026-11-25T10:00:00Z"
JOB = {"name": "Quarry Road", "date": "2026-11-25", "format": "pail-and-timer-job", "version": 1}
JOB |= {"handbook": "0.1.0", "values": {}}


def asked_of(name: str) -> list[dict[str, Any]]:
    """One request of each kind that a calculator's form can make."""
    declared = calculator(name)
    free = next(e.name for e in declared.inputs if isinstance(e, Input) and e.several == 1)
    wanted = declared.outputs[0].name
    base = {"calculator": name, "key": name, "root": "", "units": "si", "job": json.dumps(JOB)}
    about: dict[str, Any] = {"wanted": wanted, "target": "1", "free": free, "seen": wanted}
    about |= {"mark": "first-survey.well", "says": "Found."}
    about |= {"varied": free, "ticked": [free], "origin": "measured", "when": WHEN}
    does = [*browser.DOES, *browser.ON_FORM_AND_JOB]
    return [base | about | {"do": do} for do in does] + [base | {"do": "record", "blank": True}]


def asked_of_jobs() -> list[dict[str, Any]]:
    job = json.dumps(JOB)
    given: dict[str, Any] = {"job": job, "text": job, "old": job, "new": job, "name": "Quarry Road"}
    given |= {"date": "2026-11-26", "when": WHEN, "mark": "first-survey.well", "value": "done"}
    given |= {"visit": "first-survey", "sheet": "all", "others": [job], "now": "2026-11-26"}
    tables = {"trouble-show": SYMPTOMS, "visit-show": VISITS["first-survey"]}
    figure = {"name": "inlet", "text": "5 gpm"}
    told = [
        given
        | {"do": do, "table": tables.get(do)}
        | (figure if do in ("house-what-if", "visit-fill-in") else {})
        for do in (*browser.ON_JOBS, *browser.ON_HOUSE, *browser.ON_SHEETS)
    ]
    return [*told, given | {"do": "house-show", "job": write_job(demo.as_left())}]


def test_python_looks_into_every_archive_for_the_packages_it_holds() -> None:
    """The code: a package begun in one archive goes on in others only if `take` names it."""
    for role, members in bundle.packages(formulas.as_modules()).items():
        for path in members if role != "calc" else ():
            folder = path.rpartition("/")[0]
            begins = f"{folder}/__init__.py" in members
            assert begins or folder.replace("/", ".") in browser.PACKAGES, path


def asked_of_problems() -> list[dict[str, Any]]:
    """A sheet of every problem set, and one request of each other kind."""
    who = {"section": "Monday", "learner": "1017", "word": ""}
    asked: list[dict[str, Any]] = [
        {"do": "course-show", "set": name, "number": number, "tries": []} | who
        for name in sets.names()
        for number in ("17", "400")
    ]
    tries = [["turnover", "t_f", "444", "min"]]
    given = {"set": "well_storage", "number": "17", "tries": tries} | who
    return asked + [given | {"do": do} for do in browser.ON_COURSE]


def every_request() -> list[dict[str, Any]]:
    of_forms = [request for name in names() for request in asked_of(name)]
    return of_forms + asked_of_jobs() + asked_of_problems()


@pytest.fixture(scope="module")
def replies(site: Site) -> list[dict[str, Any]]:
    """What the worker answers to everything, run in Node, which starts in half a second."""
    listed = json.loads((site.folder / "runtime/manifest.json").read_text(encoding="utf-8"))
    runtime = {role: str(site.folder / file["path"]) for role, file in listed.items()}
    requests = every_request()
    messages: list[dict[str, Any]] = [runtime, {"id": 0, "boot": True}]
    messages += [{"id": n, "request": request} for n, request in enumerate(requests, 1)]
    told = subprocess.run(
        ["node", ROOT / "tests/worker_in_node.js", ROOT / "docs/app/worker.js"],
        input="\n".join(map(json.dumps, messages)),
        capture_output=True,
        text=True,
        check=True,
    )
    every = [json.loads(line) for line in told.stdout.splitlines()]
    taken = [reply for reply in every if isinstance(reply["id"], str)]
    assert [reply["reply"] for reply in taken] == [True] * (
        len(names()) + 1
    )  # and the problem sets
    return [reply for reply in every if reply not in taken]


def test_every_calculator_does_everything_in_the_trimmed_runtime(
    replies: list[dict[str, Any]],
) -> None:
    requests = every_request()
    assert len(replies) == len(requests) + 1
    faults = [
        (request.get("calculator"), request["do"], reply["fault"][-300:])
        for request, reply in zip(requests, replies[1:], strict=True)
        if "fault" in reply
    ]
    assert faults == []


def test_the_trimmed_runtime_answers_as_cpython_does(replies: list[dict[str, Any]]) -> None:
    """What is said in words is the same; formulas are MathML only where the build put them."""
    requests = [request for name in names() for request in asked_of(name)]
    for request, reply in zip(requests, replies[1:], strict=False):
        if request["do"] == "answer":
            mine = json.loads(browser.reply(json.dumps(request)))
            assert reply["reply"]["says"] == mine["says"]
            assert reply["reply"]["fields"] == mine["fields"]


def test_a_sheet_in_the_trimmed_runtime_is_that_of_cpython(replies: list[dict[str, Any]]) -> None:
    """Every word of it, for every problem set: numbers drawn, questions, check code."""
    asked = asked_of_problems()
    assert {request["set"] for request in asked} == set(sets.names())
    for request, reply in zip(asked, replies[-len(asked) :], strict=True):
        assert reply["reply"] == json.loads(browser.reply(json.dumps(request)))


def test_the_first_visit_is_light(site: Site) -> None:
    """Of the page whose calculators weigh most."""
    listed = json.loads((site.folder / "runtime/manifest.json").read_text(encoding="utf-8"))
    weights = {
        role: len(packed.brotli_of((site.folder / file["path"]).read_bytes()))
        for role, file in listed.items()
    }
    every_page = sum(weights[role] for role in ("engine", "wasm", "library", "calc"))
    own = max(sum(weights[role] for role in roles_of(page)) for page in site.folder.rglob("*.html"))
    assert every_page + own <= FIRST_VISIT


def roles_of(page: Path) -> set[str]:
    html = page.read_text(encoding="utf-8")
    stands_on = re.findall(r'<calc-course [^>]*data-calculators="([\w ]+)"', html)
    names = {*re.findall(r'<calc-form name="(\w+)"', html), *" ".join(stands_on).split()}
    own = {f"calculators/{name}" for name in names}
    return own | {"coursework/problems"} if stands_on else own


def test_a_name_changes_with_the_content(tmp_path: Path) -> None:
    one, other = (bundle.put(tmp_path, "a.zip", content) for content in (b"one", b"other"))
    assert one["path"] != other["path"]
    assert bundle.put(tmp_path, "a.zip", b"one") == one


def test_packed_copies_stand_beside_what_is_worth_it(site: Site) -> None:
    page = site.folder / "balance.html"
    for ending in (".br", ".gz"):
        assert page.with_name(page.name + ending).stat().st_size < page.stat().st_size / 2


LISTED = """
const { readFileSync } = require("node:fs");
const names = (all) => all.map(({ name }) => name);
const { Module } = WebAssembly;
const [whole, ours] = process.argv.slice(1).map((file) => new Module(readFileSync(file)));
console.log(JSON.stringify([names(Module.imports(whole)), names(Module.exports(ours))]));
"""


def test_the_engine_gives_away_only_what_its_script_asks_for(site: Site) -> None:
    """Read by another program: Node's WebAssembly."""
    manifest = json.loads((site.folder / "runtime/manifest.json").read_text(encoding="utf-8"))
    script, wasm = (site.folder / manifest[role]["path"] for role in ("engine", "wasm"))
    shipped = PYODIDE / "pyodide.asm.wasm"
    command = ["node", "-e", LISTED, shipped, wasm]
    told = subprocess.run(command, capture_output=True, text=True, check=True)
    imported, exported = json.loads(told.stdout)
    assert binary.imported(shipped.read_bytes()) == set(imported)
    assert {"malloc", "__main_argc_argv"} < set(exported)
    assert set(exported) <= {*ASKED.findall(script.read_text(encoding="utf-8")), MAIN}
