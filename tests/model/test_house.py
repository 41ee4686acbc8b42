"""The house as one description, what runs from it, and the worked house of the book."""

import json
from xml.etree import ElementTree as ET

import pytest

from calc import demo
from calc.calculators import calculator, names
from calc.house.parts import PARTS, named
from calc.house.runs import RUNS, is_example, run, runs
from calc.job import Job, compared, kept, read_job, without, write_job
from calc.model import Input, Typed, solve
from calc.views.browser import reply
from calc.views.schematic import parts, schematic, told
from calc.views.symbols import SYMBOLS
from calc.vocabulary import words

WHEN = "2026-11-25T10:04:00Z"
EMPTY = Job(name="Another house", date="2026-11-25", handbook="1")


def heads(job: Job) -> dict[str, str]:
    """What each run says first."""
    made = {each.calculator.name: each.case for each in runs(job)}
    return {
        name: case.answer.findings[0].head for name, case in made.items() if case and case.answer
    }


def test_every_figure_of_a_part_is_one_of_the_vocabulary_and_stands_once() -> None:
    """The declarations: a part names inputs that a job keeps, and no two parts the same."""
    known = words()
    every = [name for part in PARTS for name in part.values]
    assert len(every) == len({*every})
    assert all(known[name].once for name in every)
    assert all(named(line) for part in PARTS for line in part.lines)


def test_a_part_holds_whatever_the_runs_ask_of_a_house() -> None:
    """The declarations: what is no part's figure is usual everywhere, so that it needs none."""
    held = {name for part in PARTS for name in part.values}
    for name in RUNS:
        asked = [each for each in calculator(name).inputs if each.once and each.name not in held]
        assert not [each.name for each in asked if is_example(each)], name


def test_every_part_has_a_symbol() -> None:
    """The open tank's is drawn with its levels."""
    assert {part.name for part in PARTS} == {*SYMBOLS, "open_tank"}


def test_nothing_is_answered_for_a_house_of_which_nothing_is_known() -> None:
    """By reason: an example's figures say nothing of another house."""
    for one in runs(EMPTY):
        assert one.case is None
        assert one.missing


def test_what_is_missing_is_told_by_name() -> None:
    """By hand: one figure taken out of a whole house is the one that is asked for."""
    job = without(demo.as_left(), "bed_dirty")
    (flow_in,) = runs(job, wanted=["inlet_flow"])
    assert [each.name for each in flow_in.missing] == ["bed_dirty"]
    assert flow_in.case is None


def test_a_run_hands_its_answer_on_and_a_measured_figure_stands() -> None:
    """By hand: the tank's worst inlet is the one just computed, unless it was measured."""
    computed = runs(demo.as_left())
    given = {one.calculator.name: one for one in computed}
    assert given["tank_draw"].handed["worst_inlet"] == "inlet_flow"
    flow_in, tank = given["inlet_flow"].case, given["tank_draw"].case
    assert flow_in and flow_in.answer and tank  # noqa: PT018 -- one thought
    assert tank.values["worst_inlet"] == pytest.approx(
        flow_in.answer.outputs["worst_inlet"], rel=1e-5
    )
    job = kept(demo.as_left(), "worst_inlet", Typed("4.1", "gpm"), "measured", WHEN)
    measured = {one.calculator.name: one for one in runs(job)}["tank_draw"]
    assert "worst_inlet" not in measured.handed
    assert measured.case
    assert measured.case.typed["worst_inlet"].text == "4.1"


def test_a_single_run_agrees_with_the_calculator_asked_by_hand() -> None:
    """A second way: the same figures typed into the form."""
    declared = calculator("inlet_flow")
    mine = run(demo.as_left(), declared).case
    assert mine and mine.answer  # noqa: PT018 -- one thought
    by_hand = solve(declared).answer
    assert by_hand
    assert mine.answer.outputs == pytest.approx(by_hand.outputs)


def test_the_worked_house_is_unsafe_as_found_and_safe_as_left() -> None:
    """The chapters' story: the outlet passed more than the worst inlet brings, then less."""
    found, left = heads(demo.as_found()), heads(demo.as_left())
    assert found["outlet_setting"] == "Can run dry."
    assert left["outlet_setting"] == "Safe."
    assert (found["radon_removal"], left["radon_removal"]) == (
        "Misses the target.",
        "Meets the target.",
    )
    assert {*found} == {*left} == {*RUNS}


@pytest.mark.parametrize("job", [demo.as_found(), demo.as_left()], ids=["found", "left"])
def test_the_worked_house_is_a_job_file_and_marked_as_invented(job: Job) -> None:
    assert read_job(write_job(job)) == job
    assert "(invented)" in job.name


@pytest.mark.parametrize("name", names())
def test_the_worked_house_is_the_example_of_every_calculator(name: str) -> None:
    """One figure for each quantity: a calculator's example is the house as found, or as left;
    but for a calculator that tells of another house or of a day of its own."""
    declared = calculator(name)
    for each in declared.inputs:
        if not each.once or not is_example(each) or each.name not in demo.as_left().values:
            continue
        if (name, each.name) in OTHER_CASE:
            continue
        values = [
            each.take(Typed(job.values[each.name].value, job.values[each.name].unit or ""), "us")[0]
            for job in (demo.as_found(), demo.as_left())
        ]
        assert each.take(Typed(each.default), "us")[0] in values, each.name


OTHER_CASE = {  # a dry August with guests
    ("low_yield", "daily_use"),
    ("low_yield", "static_level"),
    ("low_yield", "well_inflow"),
}


@pytest.mark.parametrize(
    ("job", "air"), [(demo.as_found(), "12"), (demo.as_left(), "21.5")], ids=["found", "left"]
)
def test_the_radon_of_the_worked_house_is_what_its_aerator_leaves(job: Job, air: str) -> None:
    """One figure for each quantity: measured or not, it is the figure the aerator's page gives."""
    case = solve(calculator("aeration_removal"), {"aerator_air": Typed(air, "cfm")})
    assert case.answer
    assert job.values["aerator_air"].value == air
    unit = words()["treated_radon"].kind.unit("pCi/L")  # type: ignore[union-attr]  # an Input
    left = unit.out_of_si(case.answer.outputs["treated_radon"] or 0)
    assert f"{left:.0f}" == job.values["treated_radon"].value


def test_what_changed_between_the_two_is_what_was_done() -> None:
    """By hand, from the story: the limit, the switch, the blower, and what came of them."""
    changed = {each.word.name for each in compared(demo.as_found(), demo.as_left(), "us")
               if each.old != each.new}  # fmt: skip
    assert changed == {"outlet", "worst_outlet", "aerator_air", "treated_radon", "lock_at"}


def test_the_schematic_is_sound_and_says_what_was_measured() -> None:
    """Read back as XML: title and description, every part, every line within the drawing."""
    job = demo.as_left()
    svg = ET.fromstring(schematic(job, "house"))
    text = ["".join(each.itertext()) for each in svg.iter() if each.tag.endswith("text")]
    assert [part.title for part in PARTS if part.title in text] == [part.title for part in PARTS]
    assert "low-level switch 2\u00a0gal" in text
    assert max(map(len, text)) <= 36  # of 14 px, beside the symbols, in 360
    described = next("".join(e.itertext()) for e in svg.iter() if e.tag.endswith("desc"))
    assert "Outlet limit: 4.63\u00a0gpm out" in described


def test_what_nobody_measured_is_drawn_dashed_and_what_is_not_there_is_not_drawn() -> None:
    """By hand."""
    assert "5 3" not in schematic(demo.as_left(), "house")
    assert schematic(EMPTY, "house").count("nothing measured yet") >= len(PARTS)
    none = kept(demo.as_left(), "inlet_limit", Typed("none"), "measured", WHEN)
    assert "inlet_limit" not in {part.name for part in parts(none)}


def test_the_limit_is_drawn_where_it_sits() -> None:
    """By hand: before the house pressure tank, or behind it."""
    order = [part.name for part in parts(demo.as_left())]
    assert order.index("outlet_limit") < order.index("tank_2")
    after = kept(demo.as_left(), "limit", Typed("after"), "measured", WHEN)
    order = [part.name for part in parts(after)]
    assert order.index("tank_2") < order.index("outlet_limit")


def test_a_house_without_a_low_level_switch_says_so() -> None:
    tank = next(part for part in PARTS if part.name == "open_tank")
    assert told(demo.as_found(), tank)[-1] == "no low-level switch"


def asked(do: str, **more: object) -> dict[str, str]:
    request = {"do": do, "job": write_job(demo.as_left()), "units": "us", "when": WHEN, **more}
    answered: dict[str, str] = json.loads(reply(json.dumps(request)))
    return answered


def test_what_if_changes_a_copy_and_says_what_that_changes() -> None:
    """By hand: an outlet wide open again runs the tank dry."""
    made = asked("house-what-if", name="outlet", text="6 gpm")
    copy = read_job(made["job"])
    assert copy.values["outlet"].value == "6 gpm"
    assert demo.as_left().values["outlet"].value == "4.63"
    assert "Can run dry." in made["html"]
    changed = [e.word.name for e in compared(demo.as_left(), copy, "us") if e.old != e.new]
    assert changed == ["outlet"]


def test_what_if_refuses_what_the_input_refuses() -> None:
    made = asked("house-what-if", name="outlet", text="6 psi")
    assert "job" not in made
    assert "Flow out, measured today" in made["refused"]


def test_a_job_that_is_broken_is_refused_by_the_house_too() -> None:
    assert "refused" in asked("house-show", job="{}")


def test_choices_of_what_if_are_figures_of_the_house() -> None:
    """By reason: each can be put to a run; a list of readings cannot be typed as one figure."""
    offered = json.loads(json.dumps(asked("house-show")["choices"]))
    known = words()
    assert offered
    for name, label in offered:
        each = known[name]
        assert isinstance(each, Input)
        assert each.label == label
