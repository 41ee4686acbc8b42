"""The visits as data and as sheets; what the page's worker replies of them."""

import json
import re
from typing import Any

import pytest

from build_scripts.sheets import visit_sheet
from calc import demo
from calc.calculators import calculator, names
from calc.diagnosis.path import Branch, symptom_of
from calc.diagnosis.symptoms import SYMPTOMS
from calc.house.runs import is_example
from calc.job import Job, Mark, marked, read_job, write_job
from calc.model import Choice
from calc.views.browser import reply
from calc.views.trouble import COMPLAINT
from calc.visits.all_visits import VISITS
from calc.visits.path import visit_of
from calc.vocabulary import words

WHEN = "2026-11-25T10:04:00Z"
EMPTY = Job(name="Another house", date="2026-11-25", handbook="1")
STEPS = [(name, step) for name, visit in VISITS.items() for step in visit.steps]


def asked(do: str, job: Job = EMPTY, **more: object) -> dict[str, Any]:
    request = {"do": do, "job": write_job(job), "units": "us", "when": WHEN, "root": "../", **more}
    table: object = SYMPTOMS if do == "trouble-show" else VISITS.get(str(more.get("visit")))
    answered: dict[str, Any] = json.loads(reply(json.dumps({"table": table, **request})))
    return answered


@pytest.mark.parametrize(("name", "step"), STEPS)
def test_a_step_names_figures_and_calculators_that_there_are(name: str, step: Any) -> None:
    """The declarations: figures a job keeps, answers that a calculator leaves so."""
    known = words()
    assert all(known[each].once for each in step.asks)
    if step.opens:
        assert step.opens in names()
    for each in step.keeps:
        output, _, place = each.partition(">")
        assert place in calculator(step.opens).leaves[output]
    assert re.fullmatch("[a-z][a-z0-9_]*", step.name), name


@pytest.mark.parametrize("name", VISITS)
def test_a_visit_has_steps_of_its_own_names(name: str) -> None:
    steps = [step.name for step in VISITS[name].steps]
    assert len(steps) == len({*steps})


@pytest.mark.parametrize("name", ["balance-and-commission", "first-survey"])
def test_a_visit_asks_for_all_that_its_decision_needs(name: str) -> None:
    """By reason: the outlet's setting needs no figure that no step of the visit has asked for."""
    visit = VISITS[name]
    asked_for = {each for step in visit.steps for each in step.asks}
    asked_for |= {each.partition(">")[2] for step in visit.steps for each in step.keeps}
    wants = {each.name for each in calculator("outlet_setting").inputs if is_example(each)}
    assert wants <= asked_for


@pytest.mark.parametrize("name", VISITS)
def test_the_sheet_has_an_empty_field_for_every_figure_and_a_tick_for_every_step(name: str) -> None:
    html = visit_sheet(name, VISITS[name], "../")
    for step in VISITS[name].steps:
        assert f'data-tick="{name}.{step.name}"' in html
        for each in step.asks:
            assert f'data-field="{each}"' in html
    assert "value=" not in re.sub(r'type="radio"[^>]*|<option[^>]*', "", html)
    ids = re.findall(r' id="([^"]+)"', html)
    assert len(ids) == len({*ids})


@pytest.mark.parametrize("name", VISITS)
def test_a_visit_comes_back_from_the_page_whole(name: str) -> None:
    """JSON, a second way: what the page holds of a visit is the visit."""
    again = visit_of(json.loads(json.dumps(VISITS[name])))
    assert json.dumps(again) == json.dumps(VISITS[name])


@pytest.mark.parametrize("name", SYMPTOMS)
def test_a_symptom_comes_back_from_the_page_whole(name: str) -> None:
    again = symptom_of(json.loads(json.dumps(SYMPTOMS[name])))
    assert json.dumps(again) == json.dumps(SYMPTOMS[name])
    assert isinstance(again.steps[-1].branches[0], Branch)


def test_what_is_typed_goes_into_the_job_in_the_readers_unit() -> None:
    made = asked("visit-fill-in", name="service_at", text="4.8", unit="gpm")
    value = read_job(made["job"]).values["service_at"]
    assert (value.value, value.unit, value.origin) == ("4.8", "gpm", "measured")
    metric = asked("visit-fill-in", name="service_at", text="18", units="si")
    assert read_job(metric["job"]).values["service_at"].unit == "L/min"


def test_what_is_no_figure_is_refused_in_words_and_changes_nothing() -> None:
    assert "Flow in at which" in asked("visit-fill-in", name="service_at", text="4.8.1")["refused"]


def test_a_figure_that_is_there_already_keeps_its_day() -> None:
    """By reason: filling a field anew with what it showed is no new measurement."""
    job = demo.as_left()
    value = job.values["service_at"]
    made = asked("visit-fill-in", job, name="service_at", text=value.value, unit=value.unit)
    assert read_job(made["job"]) == job


def test_what_is_missing_is_listed_step_by_step() -> None:
    name = "balance-and-commission"
    told = asked("visit-show", visit=name)
    assert "0 of 12 steps done" in told["parts"]["progress"]
    assert "missing pail, to the mark" in told["parts"]["progress"]
    assert "Still missing" in told["parts"]["answer-setting"]
    left = demo.as_left()
    whole = asked("visit-show", left, visit=name)
    assert whole["fields"]["cut_in"]["when"] == left.values["cut_in"].when
    assert "Safe." in whole["parts"]["answer-setting"]
    assert "missing" not in whole["parts"]["answer-setting"]


def test_a_tick_is_kept_in_the_job_and_taken_back() -> None:
    mark = "yearly-service.blower"
    made = asked("job-mark", mark=mark, value="done")
    job = read_job(made["job"])
    assert job.marks == {mark: Mark("done", WHEN)}
    assert asked("visit-show", job, visit="yearly-service")["done"] == ["blower"]
    assert read_job(asked("job-mark", job, mark=mark, value="")["job"]).marks == {}


def test_a_calculators_answer_comes_back_with_what_was_typed_and_marks_its_step() -> None:
    """By hand: three runs of 50 s for 5 gallons are 6 gpm, kept as the flow out."""
    fields = {
        each.name: {"text": each.default, "unit": ""} for each in calculator("pail_flow").inputs
    }
    fields["runs"] = {"text": "50 s; 50 s; 50 s", "unit": "s"}
    made = asked(
        "job-keep-all",
        calculator="pail_flow",
        fields=fields,
        ticked=["runs", "pail", "flow>outlet"],
        origin="measured",
        mark="first-survey.outlet",
        says="The flow is 6 gpm.",
    )
    job = read_job(made["job"])
    assert job.values["outlet"].value == "6"
    assert job.values["outlet"].origin == "pail_flow"
    assert {*job.values} == {"outlet", "pail"}  # a run is measured anew each time
    assert job.marks["first-survey.outlet"].note == "The flow is 6 gpm."


def test_the_trouble_call_asks_shows_and_ends() -> None:
    """By hand, through one call: each reply is made of the marks alone, as after a reload."""
    sheet = asked("trouble-show")["parts"]["sheet"]
    assert all(each.says in sheet for each in SYMPTOMS.values() if "’" not in each.says)
    job = marked(EMPTY, COMPLAINT, Mark("air", WHEN))
    sheet = asked("trouble-show", job)["parts"]["sheet"]
    assert "Measure next" in sheet
    assert 'data-level="danger"' in sheet
    level = SYMPTOMS["air"].steps[0].branches[0]
    job = marked(job, "trouble.air.level", Mark("1", WHEN, level.shows))
    sheet = asked("trouble-show", job)["parts"]["sheet"]
    assert "It is most likely this." in sheet
    assert "speaks for it" in sheet
    assert 'href="../open-tank/outlet.html"' in sheet


def test_a_reading_that_the_table_no_longer_knows_counts_for_nothing() -> None:
    job = marked(EMPTY, COMPLAINT, Mark("air", WHEN))
    job = marked(job, "trouble.air.level", Mark("1", WHEN, "Words of an older edition."))
    assert "older edition" not in asked("trouble-show", job)["parts"]["sheet"]


def test_a_measurement_that_cannot_be_taken_is_left_out() -> None:
    job = marked(EMPTY, COMPLAINT, Mark("air", WHEN))
    job = marked(job, "trouble.air.level", Mark("0", WHEN))
    sheet = asked("trouble-show", job)["parts"]["sheet"]
    assert "not taken" in sheet
    assert SYMPTOMS["air"].steps[1].take in sheet


def test_choices_are_drawn_without_one_picked() -> None:
    """By reason: an option that is picked for the reader is an answer nobody gave."""
    name = "balance-and-commission"
    html = visit_sheet(name, VISITS[name], "")
    assert isinstance(words()["limit"], Choice)
    assert 'value="before"' in html
    assert " checked" not in html
