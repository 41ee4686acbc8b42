"""Every sentence a calculator can say, each reached by a case, with its figures put in."""

import ast
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import calc.calculators
from calc.calculators import calculator, names
from calc.calculators.interlock_check import HAZARDS
from calc.model import UNIT_SETS, solve
from calc.request import case_of
from calc.views.words import finding_words, output_words, refusal_words
from tests.model.given import patient, typed

FOLDER = Path(calc.calculators.__file__).parent
STEADY = "filter_flows=6;6;6 filter_gauges=44;43;42 filter_meter=0;3000;6000"
TWO = "filter_flows=6.65;6.1 filter_gauges=44;45 filter_meter=0;9000"
SCATTERED = "filter_flows=6.2;6;6.1 filter_gauges=43;44;44 filter_meter=0;3000;6000"
ALL_PASSED = " ".join(f"{name}=passed" for name in HAZARDS)
# Some calculators have inputs checked in another module: what they import, and from where.
SHARED = {"import House": "household.py", "import RawWater": "raw_water.py"}
HARD = "raw_ph=7.4 alkalinity=250 calcium=90"
FINDINGS = [
    ("pail_flow", "good", "Measured."),
    ("pail_flow pail=1 runs=8", "caution", "Rough."),
    ("pail_flow runs=53", "caution", "More runs."),
    ("pail_flow", "good", "Enough runs."),
    ("pail_flow timing=2", "good", "Enough runs."),
    ("outlet_setting outlet=4", "good", "Safe."),
    ("outlet_setting outlet=4.7", "caution", "Too close."),
    ("outlet_setting outlet=6", "danger", "Can run dry."),
    ("outlet_setting limit=after house_tank=80", "danger", "Not safe."),
    ("outlet_setting inlet=4.5", "caution", "Service is due."),
    ("outlet_setting inlet=7", "caution", "Keep the service promise."),
    ("outlet_setting house_gauge=30 outlet=4", "caution", "Not proven."),
    ("outlet_setting house_gauge=30", "caution", "Not the worst case."),
    ("outlet_setting limit=after", "caution", "Open pipe only."),
    ("tank_draw worst_inlet=2", "danger", "Runs dry."),
    ("tank_draw worst_inlet=4.8", "caution", "Lasts, this time."),
    ("tank_draw worst_inlet=7", "good", "Lasts."),
    ("filter_due", "good", "There is a date."),
    ("filter_due worst_outlet=5.4", "danger", "Overdue."),
    ("filter_due worst_outlet=4.95", "caution", "Due now, to be sure."),
    (f"filter_due {STEADY}", "caution", "No trend."),
    (f"filter_due {TWO}", "caution", "Two readings."),
    (f"filter_due {SCATTERED}", "caution", "Too much scatter."),
    (f"filter_due {TWO}", "caution", "The laws disagree."),
    ("filter_due inlet_coefficient=0.96", "caution", "No resistance."),
    ("intake_depth", "good", "Deep enough."),
    ("intake_depth limit=after", "caution", "Raise the float."),
    ("intake_depth float_open=4", "danger", "Air before the tank is low."),
    ("intake_depth overflow_height=8", "danger", "The floats do not fit."),
    (f"interlock_check {ALL_PASSED}", "good", "Every protection acts."),
    (f"interlock_check {ALL_PASSED} vent=untested", "caution", "Test the rest."),
    (f"interlock_check {ALL_PASSED} alarm=failed", "caution", "Mend before you leave, or soon."),
    (f"interlock_check {ALL_PASSED} vent=failed", "danger", "Do not leave it so."),
    ("interlock_check lock_on=6", "caution", "The lock-out lets go too soon."),
    *(
        (f"interlock_check {name}={result}", hazard.level, hazard.head)
        for name, hazard in HAZARDS.items()
        for result in ("failed", "missing")
    ),
    ("inlet_flow", "caution", "The filter decides."),
    ("inlet_flow bed_dirty=0.5", "good", "The limit decides."),
    ("inlet_flow inlet_limit=fixed limit_flow=3", "good", "The limit decides."),
    ("inlet_flow pipe_length=1500 bed_dirty=0.5", "caution", "The pipe decides."),
    ("inlet_flow well_level=250", "caution", "The well pump falls behind."),
    ("inlet_flow well_level=180", "caution", "The well pump never stops."),
    ("inlet_flow", "caution", "Today may flatter."),
    ("outlet_limit house_gauge=1", "good", "Measured at its worst."),
    ("outlet_limit limit=after house_gauge=50", "good", "Measured at its worst."),
    ("outlet_limit house_gauge=30", "caution", "Passes more when the tank is empty."),
    ("outlet_limit limit=after house_gauge=40", "caution", "Passes more at cut-out."),
    (
        "outlet_limit limit=after caught=tap outlet=4.19 house_gauge=45",
        "caution",
        "The tap hid part of it.",
    ),
    (
        "outlet_limit limit=after outlet_device=compensating house_gauge=10",
        "caution",
        "Below its threshold.",
    ),
    (
        "outlet_limit outlet_device=compensating house_gauge=30",
        "caution",
        "Counted as a plain hole.",
    ),
    ("valve_setting", "caution", "A cock is touchy."),
    ("valve_setting valve_bore=1.38", "caution", "The valve is far too big."),
    ("valve_setting valve_bore=0.1", "caution", "The valve is too small."),
    ("valve_setting valve_bore=0.824", "caution", "A globe valve is nearly shut."),
    ("valve_setting valve_bore=0.3", "caution", "A globe valve is too small."),
    ("valve_setting valve_before=100 valve_after=0", "danger", "Chokes."),
    ("valve_setting valve_before=40 valve_after=5", "caution", "May cavitate."),
    ("valve_setting", "good", "No choking."),
    ("system_run worst_inlet=3", "danger", "Runs dry."),
    ("system_run", "caution", "Lasts, this time."),
    ("system_run worst_outlet=4.6", "good", "Lasts."),
    ("system_run worst_inlet=3 lock_at=2", "caution", "Locked out."),
    ("system_run blower=nothing", "danger", "Radon passes."),
    ("system_run well_pump=2", "caution", "The well falls behind."),
    ("system_run limit=after worst_outlet=4.6", "caution", "The pressure tank drinks."),
    ("pressure_draw worst_inlet=2 limit=after draw_volume=60", "danger", "Runs dry."),
    ("pressure_draw limit=after", "caution", "Lasts, this time."),
    ("pressure_draw", "good", "Lasts."),
    ("year_of_draws worst_inlet=3", "danger", "Runs dry."),
    ("year_of_draws worst_outlet=4.8", "good", "Cannot run dry."),
    ("year_of_draws worst_outlet=4.8 limit=after", "good", "Cannot run dry."),
    ("year_of_draws worst_outlet=6.1 worst_inlet=6", "caution", "Not seen dry, not sure."),
    (
        "year_of_draws worst_outlet=4.8 limit=after drawdown=10 loads=0 hose_days=0",
        "caution",
        "Not seen dry, not sure.",
    ),
    ("year_of_draws worst_inlet=3 worst_outlet=3", "caution", "Slow taps."),
    ("first_fix worst_inlet=3", "danger", "Runs dry as it is."),
    ("first_fix worst_outlet=4.8", "good", "Nothing to mend."),
    (
        "first_fix worst_inlet=6 worst_outlet=6.1 serviced_inlet=7",
        "caution",
        "Not seen dry as it is.",
    ),
    ("first_fix worst_inlet=3", "good", "Sure: a lower outlet."),
    ("first_fix worst_inlet=4", "caution", "Not a bigger pressure tank."),
    (f"carbonate {HARD} raw_ph=7.8", "caution", "Can make scale."),
    ("carbonate", "caution", "Dissolves chalk."),
    (f"carbonate {HARD} solids=380", "good", "At rest with chalk."),
    ("carbonate", "caution", "Acid."),
    ("carbonate raw_ph=9", "caution", "Alkaline."),
    (f"carbonate {HARD}", "caution", "Air makes it scale."),
    ("carbonate", "good", "Air cures most of it."),
    (f"carbonate {HARD}", "caution", "Scale in the heater."),
    ("carbonate magnesia_dose=30", "caution", "Too much magnesia."),
    ("neutralizer raw_ph=7.6", "good", "No bed needed."),
    ("neutralizer co2_stripped=80", "good", "Gets there."),
    ("neutralizer", "caution", "Too little contact."),
    ("neutralizer raw_ph=5.8 alkalinity=80", "caution", "The stone cannot do it."),
    ("neutralizer", "good", "Air first saves stone."),
    ("neutralizer magnesia=10", "caution", "Magnesia has no ceiling near 8."),
    ("neutralizer alkalinity=10 calcium=3 raw_ph=6.6", "caution", "High after a night."),
    ("neutralizer", "caution", "Hardens the water."),
    (f"neutralizer {HARD} raw_ph=6.9", "caution", "No water for a bed of stone."),
    ("neutralizer service_flow=3.7", "caution", "Refill sooner."),
    ("neutralizer daily_use=2000", "caution", "Refilled often."),
    ("neutralizer", "caution", "Fast for this tank."),
    ("backwash well_stored=20", "danger", "The well runs out."),
    ("backwash well_pump=6", "caution", "The pump cannot keep up."),
    ("backwash", "good", "The well side can."),
    ("backwash media=resin grain_size=0.6", "danger", "Washes the bed away."),
    ("backwash backwash_flow=2", "caution", "Does not lift the bed."),
    ("backwash", "caution", "Hardly lifts the bed."),
    ("backwash grain_size=0.6", "caution", "Lifts less than wanted."),
    ("backwash grain_size=0.4", "good", "Lifts the bed."),
    ("backwash", "caution", "The open tank goes short."),
    ("soda_ash feed_most=30", "danger", "The feed pump is too small."),
    ("soda_ash feed_most=900", "caution", "Badly matched."),
    ("soda_ash", "good", "Set it."),
    ("soda_ash feed_chemical=caustic", "danger", "Caustic burns."),
    ("soda_ash feed_solution=150", "danger", "It will not dissolve."),
    ("soda_ash", "caution", "Sodium."),
    ("soda_ash target_ph=7.8", "caution", "Steep."),
]
CONTRADICTIONS = [
    *(
        (f"{name} {asked}", "raw_ph", says)
        for name in ("carbonate", "neutralizer", "soda_ash")
        for asked, says in (
            (
                "raw_ph=9.5 alkalinity=2 water_temperature=90",
                "is more than an alkalinity of 2 mg/L as CaCO3 allows: measure both again",
            ),
            (
                "raw_ph=4.9 alkalinity=300",
                "with an alkalinity of 300 mg/L as CaCO3 would be soda water: measure both again",
            ),
        )
    ),
    ("soda_ash target_ph=7 raw_ph=7.5", "target_ph", "is no higher than the raw water's, 7.5"),
    ("pail_flow mark=2", "mark", "is over a quarter of the pail (5 gal)"),
    ("outlet_setting rise=60 inlet_gauge=20", "inlet_gauge", "cannot lift water by 60 ft"),
    ("outlet_setting rise=60 well_cut_in=20", "well_cut_in", "cannot lift water by 60 ft"),
    ("outlet_setting cut_out=30", "cut_out", "must be above the cut-in of 30 psi"),
    ("outlet_setting precharge=50", "precharge", "must be below the cut-out of 50 psi"),
    ("outlet_setting inlet=5±3", "inlet", "is known too loosely to set a limit by"),
    ("outlet_setting outlet=6±41%", "outlet", "is known too loosely to set a limit by"),
    (
        "tank_draw float_closed=9",
        "float_closed",
        "must be well above the float's opening at 9.5 gal",
    ),
    ("tank_draw cut_out=29", "cut_out", "must be above the cut-in of 30 psi"),
    ("tank_draw precharge=55", "precharge", "must be below the cut-out of 50 psi"),
    ("tank_draw house_tank=1", "house_tank", "gives too little between cut-in and cut-out"),
    ("tank_draw limit=after pump=5", "pump", "must pass at least 6 gpm"),
    ("filter_due filter_meter=0", "filter_meter", "needs two readings: one has no trend"),
    (
        "filter_due filter_meter=0;9000",
        "filter_flows",
        "needs one reading for each of the meter's: 0 gal; 9000 gal",
    ),
    (
        "filter_due filter_meter=0;3000;6000;9000;9000",
        "filter_meter",
        "must rise from reading to reading",
    ),
    ("filter_due filter_gauges=44;46;2;45;44", "filter_gauges", "cannot all lift water by 6 ft"),
    (
        "filter_due rise=60 well_cut_in=20 filter_gauges=44;46;43;45;44",
        "well_cut_in",
        "cannot lift water by 60 ft",
    ),
    (
        "filter_due worst_outlet=7",
        "worst_outlet",
        "and the guard are more than the inlet brings at cut-in with no filter in it",
    ),
    (
        "filter_due inlet_coefficient=0.8 worst_outlet=3",
        "inlet_coefficient",
        "would pass less than the last reading shows, with no filter in it",
    ),
    ("interlock_check lock_on=4", "lock_on", "must be above the 5 gal it stopped at"),
    ("intake_depth float_closed=9", "float_closed", "must be above the float's opening at 9.5 gal"),
    (
        "inlet_flow well_level=310",
        "well_pump_head",
        "is too little to lift water from 310 ft and by 6 ft",
    ),
    ("inlet_flow rise=60 well_cut_in=20", "well_cut_in", "cannot lift water by 60 ft"),
    ("inlet_flow well_cut_out=40", "well_cut_out", "must be above 40 psi"),
    ("inlet_flow bed_dirty=0.3", "bed_dirty", "is less than clean, 0.5 psi/gpm"),
    ("inlet_flow water_coldest=60", "water_coldest", "is warmer than today, 52 °F"),
    ("outlet_limit house_gauge=65", "house_gauge", "is over what pump 2 reaches"),
    (
        "outlet_limit limit=after caught=tap house_gauge=20",
        "tap_flow",
        "is too little: the tap passed 6 gpm",
    ),
    ("valve_setting valve_after=36", "valve_after", "must be below 36 psi"),
    (
        "system_run float_closed=9",
        "float_closed",
        "must be well above the float's opening at 9.5 gal",
    ),
    ("system_run limit=after pump=5", "pump", "must pass at least 6 gpm"),
    (
        "system_run lock_at=10",
        "lock_at",
        "must be below the float's opening at 9.5 gal, or nothing would enter",
    ),
    (
        "pressure_draw float_closed=9",
        "float_closed",
        "must be well above the float's opening at 9.5 gal",
    ),
    ("pressure_draw cut_out=29", "cut_out", "must be above the cut-in of 30 psi"),
    (
        "pressure_draw pump_shut_off=50",
        "pump_shut_off",
        "must clear the cut-out of 50 psi, or pump 2 never stops",
    ),
    ("pressure_draw limit=after pump=5", "pump", "must pass at least 6 gpm"),
    ("pressure_draw house_tank=1", "house_tank", "gives too little between cut-in and cut-out"),
    ("pressure_draw well_tank=1", "well_tank", "gives too little for its switch"),
    *(
        (f"{name} {asked}", field, says)
        for name in ("year_of_draws", "first_fix")
        for asked, field, says in (
            ("float_closed=9", "float_closed", "must be well above the float's opening at 9.5 gal"),
            ("limit=after pump=5", "pump", "must pass at least 6 gpm"),
            ("loads=40 wash_days=1", "wash_days", "are too few for 40 loads"),
        )
    ),
    (
        "first_fix serviced_inlet=4.7",
        "serviced_inlet",
        "must be at least the worst flow in, 4.8 gpm",
    ),
]


@pytest.mark.parametrize(("asked", "level", "head"), FINDINGS)
def test_findings(asked: str, level: str, head: str) -> None:
    """By hand: which side of each limit the case lies on."""
    case = case_of(asked.split())
    assert case.answer
    said = {(finding.level, finding.head) for finding in case.answer.findings}
    assert (level, head) in said


@pytest.mark.parametrize(("asked", "field", "says"), CONTRADICTIONS)
def test_contradictions(asked: str, field: str, says: str) -> None:
    """By hand: inputs that cannot both be true are refused at one of them, with its figures."""
    case = case_of(asked.split())
    assert case.answer is None
    (error,) = case.errors
    assert (error.field, error.reason) == (field, "contradiction")
    label = case.calculator.input(field).label
    assert refusal_words(case, error).replace("\u00a0", " ") == f"{label} {says}."


def constants_of(call: str, place: int, keyword: str) -> set[tuple[str, str]]:
    """The words that each calculator's module gives to `call` at `place` or by `keyword`,
    written there or kept first in a variable of the keyword's name."""
    found = set()
    for name in names():
        words: list[ast.expr] = []
        text = (FOLDER / f"{name}.py").read_text(encoding="utf-8")
        for imports, module in SHARED.items():
            if imports in text:
                text += (FOLDER.parent / module).read_text(encoding="utf-8")
        for node in ast.walk(ast.parse(text)):
            match node:
                case ast.Call(func=ast.Name(id=called)) if called == call:
                    words += [each.value for each in node.keywords if each.arg == keyword]
                    words += node.args[place : place + 1]
                case ast.Assign(targets=[ast.Name(id=variable)]) if variable == keyword:
                    words.append(node.value)
        found |= {(name, word.value) for word in words if isinstance(word, ast.Constant)}
    return {(name, word) for name, word in found if isinstance(word, str)}


def test_every_finding_has_its_case() -> None:
    """The code of the calculators: each head in it is reached by a case above."""
    reached = {(asked.split()[0], head) for asked, _, head in FINDINGS}
    assert reached == constants_of("Finding", 1, "head")


def test_every_contradiction_has_its_case() -> None:
    """The code of the calculators: each contradiction in it is reached by a case above."""
    reached = set()
    for asked, *_ in CONTRADICTIONS:
        (error,) = case_of(asked.split()).errors
        reached.add((asked.split()[0], error.facts["says"]))
    assert reached == constants_of("Refused", 99, "says")


@pytest.mark.parametrize("name", names())
@settings(patient, max_examples=100)
@given(data=st.data())
def test_sentences_have_their_figures_put_in(name: str, data: st.DataObject) -> None:
    """By reason: no brace, no empty figure and no nan reaches a reader."""
    declared = calculator(name)
    case = solve(declared, data.draw(typed(declared)), data.draw(st.sampled_from(UNIT_SETS)))
    said = [refusal_words(case, error) for error in case.errors]
    if case.answer:
        said += [finding_words(case, finding) for finding in case.answer.findings]
        said += [output_words(case, output) for output in declared.outputs]
    for words in said:
        assert words
        assert not set("{}") & set(words)
        assert not {"nan", "inf", "None"} & set(words.replace("\u00a0", " ").split())
