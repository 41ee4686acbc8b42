"""Every sentence a calculator can say, each reached by a case, with its figures put in."""

import ast
from pathlib import Path

import pytest
from hypothesis import given
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
EVEN = "rise_times=0;20;40;60;80 rise_levels=110;100.1;90;79.9;70"
SHORT_RISE = "rise_times=0;5;10;15 rise_levels=110;107.1;103.9;101"
FOUR_HOURS = "test_times=10;60;120;240 test_levels=38.7;64.1;75.6;84.5"
STEEP = "test_times=10;240;300;360 test_levels=30.5;33;34;35"
MISSES = (
    "test_phase=recovery test_times=1000;1500;2000;2880 test_levels=52.1;49.9;48;46 test_flow=1"
)
ALL_PASSED = " ".join(f"{name}=passed" for name in HAZARDS)
ONE_SINK = "toilets=0 tub_showers=0 showers=0 kitchen_sinks=0 dishwashers=0 washers=0 lavatories=1"
# Some calculators have inputs checked in another module: what they import, and from where.
SHARED = {"import House": "household.py", "import RawWater": "raw_water.py"}
NO_BOX = "place_1=none place_2=none place_3=none place_4=none"
HARD = "raw_ph=7.4 alkalinity=250 calcium=90"
WELL = FOLDER.parent / "fields" / "well_fields.py"  # and others here, by one function or the other
FINDINGS = [
    ("treatment_train", "good", "In order."),
    ("treatment_train", "caution", "Air first would save stone."),
    ("treatment_train", "caution", "Iron meets the air."),
    ("treatment_train", "good", "Air alone would do."),
    ("treatment_train", "caution", "A wash starves the open tank."),
    (f"treatment_train {NO_BOX}", "caution", "Nothing in the train."),
    (f"treatment_train {NO_BOX}", "caution", "Acid at the tap."),
    (f"treatment_train {NO_BOX}", "caution", "Iron at the tap."),
    ("treatment_train place_1=softener", "caution", "Out of order."),
    ("treatment_train place_4=uv place_5=carbon", "danger", "Out of order."),
    ("treatment_train place_1=softener", "caution", "Iron on the resin."),
    (
        "treatment_train raw_ph=7.4 alkalinity=250 hardness=300",
        "caution",
        "Chalk in the open tank.",
    ),
    ("treatment_train well_cut_in=2", "danger", "The boxes hold the flow back."),
    ("treatment_train cut_in=18", "caution", "Little pressure."),
    ("treatment_train well_pump=4", "danger", "The well side cannot wash it."),
    ("treatment_train place_5=carbon", "danger", "The house side cannot wash it."),
    (
        "treatment_train place_1=neutralizer place_2=iron_filter",
        "caution",
        "One wash at a time.",
    ),
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
        "year_of_draws worst_outlet=4.8 limit=after house_drawdown=10 loads=0 hose_days=0",
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
    ("aeration_removal", "danger", "Short of the target."),
    ("aeration_removal", "good", "One more stage, or more air."),
    ("aeration_removal aerator_air=30", "caution", "Only while it is clean."),
    ("aeration_removal aerator=trays aerator_air=60", "good", "Reaches the target."),
    ("aeration_removal air_radon=900", "danger", "Out of reach."),
    ("aeration_removal air_radon=200", "caution", "Give the blower clean air."),
    ("packed_tower", "danger", "Too short."),
    ("packed_tower tower_height=16", "caution", "High enough on paper."),
    ("packed_tower tower_height=25", "good", "High enough."),
    ("packed_tower aerator_air=0.2", "danger", "Too little air."),
    ("packed_tower tower_diameter=3", "caution", "Outside the trials."),
    ("packed_tower packing=50", "caution", "Packing too coarse."),
    ("re_aeration", "good", "Wait, then draw."),
    ("re_aeration aerator_air=0.5", "caution", "A long wait."),
    ("re_aeration", "danger", "Keep the lid shut."),
    ("re_aeration", "caution", "The house is not clean yet."),
    ("spray_removal", "danger", "Too little goes round."),
    ("spray_removal spray_way=passes", "danger", "Short of the target."),
    ("spray_removal spray_way=passes passes=6", "good", "Reaches the target."),
    ("spray_removal aerator_air=1", "caution", "Stale air."),
    ("spray_removal pass_removal=2", "caution", "Measure again."),
    ("carbon_bed", "danger", "Not with carbon."),
    ("carbon_bed bed_volume=1", "caution", "Too small."),
    ("carbon_bed", "caution", "Only while it is new."),
    ("carbon_bed raw_radon=3000 bed_volume=4", "good", "Big enough."),
    ("carbon_bed raw_radon=3000 bed_volume=4", "caution", "It gives off gamma rays."),
    ("carbon_dose raw_radon=100000", "danger", "Too near."),
    ("carbon_dose", "caution", "Farther off would be better."),
    ("carbon_dose bed_hours=100", "good", "Far enough off."),
    ("carbon_dose", "caution", "Ask before you throw it away."),
    ("carbon_dose", "caution", "Shut it off and wait."),
    ("radon_in_air raw_radon=100000", "danger", "Over the action level by the water alone."),
    ("radon_in_air", "caution", "It matters."),
    ("radon_in_air raw_radon=4000", "good", "Little."),
    ("radon_in_air", "caution", "It could be far worse."),
    ("radon_in_air house_air=1", "caution", "More than the air test found."),
    ("radon_in_air house_air=6", "danger", "The ground first."),
    ("radon_in_air raw_radon=300", "caution", "Over published levels."),
    ("radon_in_air raw_radon=299", "good", "Under every level listed."),
    ("radon_in_air", "caution", "Two reckonings of risk."),
    ("shower_air", "caution", "High for an hour."),
    ("shower_air raw_radon=500", "good", "Low even there."),
    ("shower_air", "caution", "No cure for it."),
    ("radon_sample", "good", "Valid."),
    ("radon_sample purged=no", "caution", "Draw again."),
    ("radon_sample vial_filled=tap", "danger", "Do not decide by it."),
    ("radon_sample vial_filled=tap", "danger", "Drawn through air."),
    ("radon_sample purged=no", "caution", "Not the well's water."),
    ("radon_sample sample_bubble=1.1", "caution", "A bubble."),
    ("radon_sample sample_age=97", "caution", "Counted late."),
    ("radon_sample sample_age=2.9", "caution", "Counted too soon."),
    ("radon_sample sample_radon=13600", "caution", "One sample."),
    ("radon_sample sample_radon=30000", "caution", "One sample."),
    ("radon_sample sample_radon=10000;13000", "caution", "The duplicates disagree."),
    ("radon_sample sample_radon=10000;20000", "caution", "The duplicates disagree."),
    ("radon_count", "good", "Found."),
    ("radon_count count_gross=21", "caution", "Too little to be sure."),
    ("radon_count", "caution", "Counting is not all."),
    ("radon_removal", "good", "Meets the target."),
    ("radon_removal treated_radon=290", "caution", "Too close to tell."),
    ("radon_removal treated_radon=341", "danger", "Misses the target."),
    ("radon_removal treated_radon=20000", "danger", "No removal."),
    ("radon_removal pair=apart", "caution", "Not a pair."),
    ("radon_removal treated_seen=less", "good", "Meets the target."),
    ("radon_removal", "caution", "Water is not air."),
    ("radon_decay_in_storage", "danger", "No treatment."),
    ("radon_decay_in_storage raw_radon=400", "caution", "Low enough, on paper."),
    ("radon_decay_in_storage storage_mixing=plug", "caution", "The rest goes somewhere."),
    ("aerator_service", "good", "There is a date."),
    ("aerator_service blower_now=24", "danger", "Clean it today."),
    ("aerator_service cleaned_ago=366", "caution", "Cleaning is due."),
    ("aerator_service blower_now=17.9", "danger", "The pressure has fallen."),
    ("aerator_service tested_ago=365", "danger", "Test the water."),
    ("aerator_service", "good", "Test date."),
    ("aerator_service iron=0 blower_now=20", "good", "There is a date."),
    ("blower_and_vent blower_gives=20", "danger", "Too weak."),
    ("blower_and_vent blower_gives=28", "caution", "Enough while clean."),
    ("blower_and_vent", "good", "Strong enough."),
    ("blower_and_vent vent_bore=0.824", "caution", "A narrow vent."),
    ("blower_and_vent vent_coldest=31", "danger", "Ice."),
    ("blower_and_vent vent_coldest=33", "caution", "Water in the vent."),
    ("vent_leak leak_share=100", "danger", "The leak alone calls for action."),
    ("vent_leak leak_share=30", "danger", "Worse than no treatment."),
    ("vent_leak leak_share=6", "caution", "A leak that shows."),
    ("vent_leak leak_share=5", "good", "Hardly to be seen."),
    ("vent_leak daily_use=81", "danger", "If the vent comes off."),
    ("vent_leak", "caution", "Keep the outlet far from openings."),
    ("aerated_ph treated_ph=6.3", "danger", "No rise."),
    ("aerated_ph aerator_stages=1", "caution", "The figures do not fit."),
    ("aerated_ph treated_ph=7.3", "danger", "Less than expected."),
    ("aerated_ph treated_ph=7.9", "caution", "More than expected."),
    ("aerated_ph", "good", "As expected."),
    ("aerated_ph", "caution", "The pH is at its end."),
    ("aerated_ph alkalinity=200 hardness=250 entering_ph=7.4", "caution", "Scale."),
    ("aerated_ph entering_ph=5.5 treated_ph=6.4", "caution", "Still acid."),
    ("aerated_ph treated_ph=8.6", "caution", "Alkaline."),
    ("aerator_iron raw_iron=6", "danger", "Treat the iron first."),
    ("aerator_iron", "caution", "Clean by the calendar."),
    ("aerator_iron raw_iron=0.2", "good", "Little iron."),
    ("aerator_iron", "caution", "It rusts in the tank."),
    ("aerator_iron treated_ph=6", "caution", "It rusts later."),
    ("aerator_iron treated_ph=6.6", "caution", "It may rust here or later."),
    ("aerator_iron raw_iron=5", "caution", "Iron makes acid."),
    ("cable_drop", "good", "Thick enough."),
    ("cable_drop wire_gauge=14", "danger", "Too thin."),
    ("cable_drop cable_length=5000 wire_gauge=1", "danger", "Too thin."),
    ("cable_drop supply_volts=205", "danger", "Too little voltage."),
    ("cable_drop wire_gauge=14 cable_length=800", "caution", "A weak start."),
    ("generator_start", "good", "Starts it."),
    ("generator_start", "caution", "Pump first."),
    ("generator_start generator_rated=4", "danger", "May not start it."),
    ("generator_start generator_rated=6 other_load=5", "danger", "Overloaded."),
    ("pump_check well_tank=44 well_caught=11.3 fill_time=90", "good", "As it should be."),
    ("pump_check shut_off_gauge=60", "danger", "It cannot reach cut-out."),
    ("pump_check shut_off_gauge=68", "caution", "Short of head."),
    ("pump_check fill_time=60", "caution", "Held back, not worn."),
    ("pump_check well_caught=4", "caution", "The tank gives too little."),
    ("pump_check well_caught=7", "caution", "A figure does not fit."),
    ("pump_check", "caution", "Short runs."),
    ("pump_check well_precharge=45", "caution", "Pre-charge over cut-in."),
    ("pump_check leak_to=58", "caution", "It leaks back."),
    ("house_leak", "caution", "It leaks."),
    ("house_leak house_to=20", "caution", "More than this."),
    ("house_leak house_to=47", "good", "Tight, as far as a gauge tells."),
    ("peak_demand", "good", "Both agree."),
    ("peak_demand curve=international", "good", "Fixture units ask for more."),
    ("peak_demand lavatories=1 toilets=1 showers=0", "caution", "Fixture units ask for less."),
    ("peak_demand hose_flow=5", "caution", "The hose comes on top."),
    (f"peak_demand {ONE_SINK}", "caution", "Under the table."),
    ("daily_demand", "good", "A day's water."),
    ("daily_demand", "caution", "Examples, not your rule."),
    ("daily_demand garden_area=2000", "caution", "The garden takes more than the house."),
    ("daily_demand other_day=720", "caution", "Something runs."),
    ("disinfection", "good", "Measured out."),
    ("disinfection shock_product=dry", "danger", "Read the label."),
    ("disinfection chlorine_level=20", "caution", "Too weak."),
    ("disinfection chlorine_level=300", "caution", "Too strong."),
    ("disinfection open_tank_dosed=40", "caution", "The open tank apart."),
    ("disinfection shock_product=dry shock_strength=70", "caution", "Dissolve it first."),
    ("disinfection closed_tanks=400", "caution", "Strong at first."),
    ("disinfection chlorinated_ph=8.5", "caution", "The pH is high."),
    ("disinfection shock_time=6", "caution", "Too short."),
    ("disinfection shock_time=48", "caution", "Too long."),
    ("well_supply", "good", "Enough."),
    ("well_supply daily_use=3000", "danger", "The day fails."),
    ("well_supply peak_use=250", "danger", "Not enough for the peak."),
    ("well_supply peak_use=260", "caution", "The sum would have said yes."),
    ("well_supply peak_gap=0.5 peak_use=200", "caution", "The next peak comes too soon."),
    ("well_supply", "caution", "The pump must be stopped."),
    ("well_supply fracture_depth=100", "caution", "A fracture sets the yield."),
    ("well_test", "good", "It comes back ever slower."),
    (f"well_test {EVEN}", "caution", "It rises evenly."),
    (f"well_test {SHORT_RISE}", "caution", "Either law fits."),
    ("well_test rise_times=1;30 rise_levels=118;90", "caution", "Two readings."),
    ("well_test rise_law=even", "caution", "The readings say otherwise."),
    (f"well_test {EVEN} rise_law=drawdown", "caution", "The readings say otherwise."),
    (f"well_test {SHORT_RISE} rise_law=drawdown", "good", "It comes back ever slower."),
    (f"well_test {SHORT_RISE} rise_law=even", "caution", "It rises evenly."),
    ("well_test pump_depth=300", "caution", "Not drawn down far enough."),
    ("well_test rise_times=1;30 rise_levels=90;90.1", "danger", "It does not rise."),
    ("pumping_test", "good", "A line to go by."),
    ("pumping_test", "caution", "The beginning is left out."),
    (f"pumping_test {FOUR_HOURS}", "danger", "It measured the casing."),
    ("pumping_test test_times=1500;2880 test_levels=95;99", "caution", "Two readings."),
    ("pumping_test test_times=1500;2000;2880 test_levels=96;96;97", "caution", "A wide interval."),
    ("pumping_test test_times=1500;2000;2880 test_levels=97;96;95", "caution", "No slope."),
    (f"pumping_test {STEEP}", "caution", "The casing may still be in it."),
    (f"pumping_test {MISSES}", "caution", "The line misses zero."),
    ("low_yield", "caution", "Short in the peak."),
    ("low_yield peak_use=90", "good", "It carries the peak as it is."),
    ("low_yield peak_use=190", "danger", "No remedy is enough by itself."),
    ("low_yield daily_use=600", "danger", "The day fails."),
    ("low_yield peak_use=119", "good", "Spreading it is enough."),
    ("low_yield", "good", "A deeper pump is enough."),
    ("low_yield", "good", "Storage is enough."),
    ("low_yield", "caution", "A pressure tank is no storage."),
    ("low_yield timer_flow=0.5", "caution", "The timer empties the well."),
    ("low_yield timer_flow=0.2", "danger", "The timer starves the day."),
    ("low_yield fracture_depth=120", "caution", "Deeper brings no yield."),
    ("storage_tank", "good", "Large enough."),
    ("storage_tank tank_usable=60", "danger", "Too small."),
    ("storage_tank tank_supply=0.12", "danger", "No tank is large enough."),
    ("storage_tank tank_usable=800", "caution", "The water stands long."),
    ("storage_tank", "caution", "No treatment for radon."),
    ("pipe_loss", "good", "Fits."),
    ("pipe_loss loss_flow=15", "caution", "Too fast."),
    ("pipe_loss loss_flow=1", "caution", "Between two laws."),
    ("pipe_loss", "caution", "A table would be off."),
    ("pipe_loss pipe_run=20", "caution", "Fittings count."),
    ("total_head", "good", "Ask for a curve."),
    ("total_head well_feeds=open", "good", "Ask for this point."),
    ("total_head wanted_pump=14", "caution", "Friction is dear."),
    ("total_head wanted_pump=14", "caution", "The drop pipe is narrow."),
    ("total_head rest_level=-100 well_cut_in=20", "caution", "Flows by itself."),
    ("operating_point", "good", "It runs."),
    ("operating_point well_cut_out=75", "caution", "Hardly stops."),
    ("operating_point head_left=80", "danger", "Never stops."),
    ("operating_point", "caution", "Can pump the well down."),
    ("operating_point rest_level=-60", "caution", "Off the sheet."),
    ("operating_point", "danger", "Can burst a tank."),
    ("pump_wear tested_gauge=60", "good", "As on its sheet."),
    ("pump_wear", "caution", "Wearing."),
    ("pump_wear tested_gauge=40", "caution", "Worn, slow or leaking."),
    ("pump_wear tested_gauge=75", "caution", "Better than its sheet."),
    ("suction_limit", "good", "It can suck."),
    ("suction_limit suction_lift=22", "caution", "Too high."),
    ("suction_limit suction_lift=33", "danger", "Cannot be lifted."),
    ("suction_limit", "caution", "Gas comes first."),
    ("pump_energy", "good", "This is the bill."),
    ("pump_energy pump_efficiency=30", "caution", "Poor for its kind."),
    ("pump_energy", "caution", "Pressure is spent twice."),
    ("pressure_tank well_tank=44", "good", "Big enough."),
    ("pressure_tank", "caution", "Too small for the pump."),
    ("pressure_tank well_precharge=45", "caution", "Pre-charge over cut-in."),
    ("pressure_tank well_precharge=10", "danger", "As good as waterlogged."),
    ("pressure_tank well_precharge=30", "caution", "Pre-charge is low."),
    ("pressure_tank starts_most=20", "caution", "Too many starts."),
    ("water_report coliform=fecal", "danger", "Do not drink this water."),
    ("water_report arsenic=10", "danger", "Ask before you drink it."),
    ("water_report coliform=total", "caution", "Something comes in."),
    ("water_report", "caution", "Over advised levels."),
    ("water_report panel=yearly", "caution", "Not judged yet."),
    ("water_report coliform=untested manganese=0.01", "caution", "Not judged yet."),
    ("water_report manganese=0.06", "caution", "A nuisance, by this sheet."),
    ("water_report manganese=0 total_iron=0.1", "good", "Under every level listed."),
    ("water_report infant=yes", "danger", "Other water for the bottle."),
    ("water_report lab_ph=6.2", "caution", "pH is out of the usual range."),
    ("water_report hardness=200", "caution", "Hard water."),
    ("water_report", "caution", "Test next."),
    ("water_report lab_ph=7.2 uranium=5 copper=0.3 arsenic=1", "good", "Keep testing."),
    ("ion_balance", "good", "The charges balance."),
    ("ion_balance alkalinity=10", "caution", "Anions are missing."),
    ("ion_balance calcium=1 magnesium=1", "caution", "Cations are missing."),
    ("ion_balance hardness=60", "caution", "Hardness does not fit."),
    ("ion_balance solids=150", "caution", "Solids and conductivity do not fit."),
    ("ion_balance water_conductivity=250", "caution", "Charges and conductivity do not fit."),
    ("ion_balance calcium=4 alkalinity=20", "good", "Very soft: judge by the difference."),
    ("field_ph", "caution", "The sheet hides acid."),
    ("field_ph lab_ph=5.8", "caution", "The sheet is more acid than the site."),
    ("field_ph lab_ph=6.4", "good", "They agree."),
    ("cartridge spare_drop=2", "danger", "Too small from the start."),
    ("cartridge dirty_drop=12", "danger", "Due now."),
    ("cartridge dirty_drop=2.5", "caution", "No trend."),
    ("cartridge daily_use=500", "caution", "Too often."),
    ("cartridge", "good", "There is a date."),
    ("cartridge filter_side=well", "caution", "It sets the flow in."),
    ("cartridge", "caution", "It sets the flow out."),
    ("cartridge spare_drop=30", "caution", "Over what elements usually stand."),
    ("uv_dose lamp_age=400", "danger", "The lamp is past its life."),
    ("uv_dose uv_flow=12", "danger", "Too little light."),
    ("uv_dose", "good", "Enough light, by this reckoning."),
    ("uv_dose turbidity=2", "danger", "Too cloudy for light."),
    ("uv_dose uvt=70", "danger", "Too dark for light."),
    ("uv_dose", "caution", "Iron will coat the sleeve."),
    ("uv_dose hardness=200", "caution", "Scale will coat the sleeve."),
    ("uv_dose", "caution", "Not proven against viruses."),
    ("contact_time baffling=none", "danger", "No contact at all."),
    ("contact_time", "danger", "Too short."),
    ("contact_time contact_volume=120", "good", "Long enough for viruses and bacteria."),
    ("contact_time water_temperature=40", "caution", "Colder than the regression."),
    ("contact_time", "caution", "Not enough for Giardia."),
    ("contact_time residual=5", "caution", "More chlorine than supplies may have."),
    ("contact_time demand=6", "caution", "Most of it is used up."),
    ("contact_time", "caution", "Not for Cryptosporidium."),
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
    ("iron_form", "caution", "Clear-water iron."),
    ("iron_form iron_filtered=0.1", "caution", "Red-water iron."),
    ("iron_form iron_filtered=0.8 iron_stood=0.7", "caution", "Bound iron."),
    ("iron_form total_iron=0.2 iron_filtered=0.2", "good", "Little iron."),
    ("iron_form slime=yes", "caution", "Iron bacteria."),
    ("iron_form iron_filtered=0.45 iron_stood=0.1", "caution", "Several forms."),
    ("iron_form iron_filtered=0.6", "caution", "Some rust."),
    ("iron_form iron_filtered=0.3", "caution", "Some dissolved."),
    ("iron_form iron_filtered=0.8 iron_stood=0.2", "caution", "Some bound."),
    ("iron_contact oxygen=0.05", "danger", "Too little air."),
    ("iron_contact oxidant=bleach contact_flow=3", "good", "Time enough."),
    ("iron_contact oxidant=bleach", "caution", "Short of time."),
    ("iron_contact rust_ph=8.3 raw_iron=0.5", "good", "Rusts in time."),
    ("iron_contact rust_ph=7.8", "caution", "By the law it does."),
    ("iron_contact", "caution", "By the law it does not."),
    ("iron_contact rust_ph=6.3", "danger", "Does not rust here."),
    ("iron_contact rust_ph=6.8 alkalinity=8 raw_iron=5", "danger", "The acid wins."),
    ("iron_contact", "caution", "Iron makes acid."),
    ("iron_contact", "caution", "Air leaves the manganese."),
    ("iron_contact oxidant=bleach", "caution", "Manganese needs the bed."),
    ("iron_contact oxidant=permanganate", "caution", "Manganese too."),
    ("iron_filter tank_diameter=14", "danger", "It will not come clean."),
    ("iron_filter", "caution", "Narrow for the flow."),
    ("iron_filter service_flow=2", "good", "The size fits."),
    ("iron_filter backwash_flow=10", "caution", "More than pump 1 gives."),
    ("iron_filter", "caution", "Harder than it needs."),
    ("iron_filter rust_ph=6.3", "caution", "Too acid for it."),
    ("iron_filter raw_iron=12", "caution", "Much iron for a bed."),
    ("iron_filter oxidant=air", "caution", "Air does not renew it."),
    ("iron_filter iron_media=sand oxidant=air", "caution", "Sand holds, it does not help."),
    ("iron_filter raw_iron=20 daily_use=2000", "caution", "Full within a day."),
    ("iron_filter daily_use=50", "caution", "Thirsty."),
    ("softener resin_volume=0.1 daily_use=400", "danger", "Too small."),
    ("softener entering_hardness=50", "good", "No softener needed."),
    ("softener resin_volume=0.3", "caution", "Small."),
    ("softener", "good", "It lasts."),
    ("softener raw_iron=6", "danger", "Too much iron for it."),
    ("softener raw_iron=1", "caution", "Take the iron out first."),
    ("softener", "caution", "Iron: only if nothing rusts it."),
    ("softener salt_kind=potassium", "caution", "Potassium."),
    ("softener", "caution", "Sodium in the drinking water."),
    ("softener", "caution", "Regenerate by the calendar."),
    ("softener", "caution", "Fast for this tank."),
    ("softener salt_dose=15", "caution", "Salt for little."),
]
NO_COLUMN = "leaves nothing between the static level and the water to keep"
CONTRADICTIONS = [
    (
        "iron_form iron_filtered=1",
        "iron_filtered",
        "is more than the 0.8 mg/L before the filter: take both samples again",
    ),
    (
        "iron_form iron_stood=0.8",
        "iron_stood",
        "is more than the 0.7 mg/L at once: take both samples again",
    ),
    (
        "iron_contact rust_ph=5.5 alkalinity=500",
        "rust_ph",
        "with an alkalinity of 500 mg/L as CaCO3 would be soda water: measure both again",
    ),
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
    ("aeration_removal raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    (
        "aeration_removal raw_radon=310 air_radon=1000",
        "air_radon",
        "gives the water more than 310 pCi/L",
    ),
    ("packed_tower raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    ("re_aeration raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    ("re_aeration air_radon=1000", "air_radon", "keeps the water above 300 pCi/L"),
    ("spray_removal raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    ("carbon_bed raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    ("carbon_dose raw_radon=120", "treated_radon", "must be below 120 pCi/L"),
    (
        "radon_count count_gross=20",
        "count_gross",
        "must be above the blank's 20 cpm: nothing was found",
    ),
    (
        "aerator_service blower_limit=20",
        "blower_limit",
        "must be above 20 in of water, the pressure when clean",
    ),
    ("vent_leak treated_radon=20000", "treated_radon", "must be below 20000 pCi/L"),
    ("aerated_ph treated_radon=20000", "treated_radon", "must be below 20000 pCi/L"),
    (
        "aerated_ph entering_ph=7.8",
        "entering_ph",
        "is as high as air can bring this water: there is nothing to blow out",
    ),
    ("cable_drop cable_length=5000 wire_gauge=14", "cable_length", "would take all of 230 V"),
    ("pump_check well_cut_out=40", "well_cut_out", "must be above 40 psi"),
    ("house_leak house_to=49", "house_to", "must be no more than 48 psi"),
    ("house_leak cut_in=50", "cut_in", "must be below the 50 psi of cut-out"),
    ("pump_check well_precharge=60", "well_precharge", "must be below 60 psi"),
    ("pump_check leak_to=61", "leak_to", "must be no more than 60 psi"),
    ("pump_check curve_flows=0;8", "curve_flows", "must be three: 0, and two that rise"),
    ("pump_check curve_heads=300;225;225", "curve_heads", "must be three, each less than the last"),
    ("pump_check curve_heads=300;225;224", "curve_heads", "bend as no pump's curve does"),
    (
        f"peak_demand {ONE_SINK} lavatories=0",
        "lavatories",
        "must be at least one, if nothing else is in the house",
    ),
    (
        "disinfection well_depth=30",
        "well_depth",
        "must be below the static level of 30 ft",
    ),
    ("disinfection shock_strength=65", "shock_strength", "is more than any liquid bleach has"),
    *(
        (f"{name} static_level=131", "pump_depth", NO_COLUMN)
        for name in ("well_supply", "well_test rise_levels=140;139 rise_times=0;9", "low_yield")
    ),
    *(
        (f"{name} fracture_depth=20", "fracture_depth", f"must be below the static level of {deep}")
        for name, deep in (("well_supply", "30 ft"), ("low_yield", "80 ft"))
    ),
    ("low_yield deeper_pump=139", "deeper_pump", "is less than today's 140 ft"),
    ("well_test drop_pipe=6", "drop_pipe", "does not go into 6 in"),
    ("well_test rise_times=1", "rise_times", "needs two readings: one makes no line"),
    (
        "well_test rise_times=1;2",
        "rise_levels",
        "needs one reading for each of the times",
    ),
    (
        "well_test rise_times=2;1 rise_levels=50;40",
        "rise_times",
        "must go on from reading to reading",
    ),
    (
        "well_test rise_times=1;2 rise_levels=40;30",
        "rise_levels",
        "must all be deeper than the static level of 30 ft",
    ),
    ("pumping_test drop_pipe=6", "drop_pipe", "does not go into 6 in"),
    ("pumping_test test_times=1", "test_times", "needs two readings: one makes no line"),
    (
        "pumping_test test_times=1;2",
        "test_levels",
        "needs one reading for each of the times",
    ),
    (
        "pumping_test test_times=2;1 test_levels=40;50",
        "test_times",
        "must go on from reading to reading",
    ),
    (
        "pumping_test test_times=1;2 test_levels=30;40",
        "test_levels",
        "must all be deeper than the static level of 30 ft",
    ),
    (
        "storage_tank stretch_times=30",
        "stretch_times",
        "needs one time for each of the flows: 2.5 gpm; 0.1 gpm; 1.5 gpm",
    ),
    ("storage_tank stretch_times=30;1400;40", "stretch_times", "add up to more than a day"),
    ("total_head rest_level=130", "well_level", "is above the level at rest"),
    ("total_head well_cut_out=40", "well_cut_out", "must be above 40 psi"),
    ("operating_point rest_level=130", "well_level", "is above the level at rest"),
    ("operating_point well_cut_out=40", "well_cut_out", "must be above 40 psi"),
    (
        "operating_point curve_heads=300;310;90",
        "curve_heads",
        "must be three heads that fall while the flows rise from 0: 0 gpm; 8 gpm; 14 gpm",
    ),
    (
        "operating_point head_left=60",
        "curve_heads",
        "makes too little head to reach even cut-in with the water 120 ft down",
    ),
    (
        "pump_wear curve_flows=1;8;14",
        "curve_heads",
        "must be three heads that fall while the flows rise from 0: 1 gpm; 8 gpm; 14 gpm",
    ),
    ("pump_wear tested_flow=18", "tested_flow", "is past the end of the curve"),
    ("pressure_tank well_cut_out=40", "well_cut_out", "must be above 40 psi"),
    ("pressure_tank well_precharge=60", "well_precharge", "must be below 60 psi"),
    (
        "cartridge empty_drop=4",
        "empty_drop",
        "must be less than 3 psi: an element always takes some",
    ),
    (
        "cartridge dirty_drop=0.5",
        "dirty_drop",
        "is less than the empty housing alone loses at 5.5 gpm",
    ),
    (
        "uv_dose lamp_age=1500 lamp_end=40",
        "lamp_age",
        "leaves no light at all: replace the lamp",
    ),
    *(
        (f"{name} {asked}", "raw_ph", says)
        for name in ("carbonate", "neutralizer", "soda_ash", "treatment_train")
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
    (
        "treatment_train place_5=tank_fair",
        "place_5",
        "is a second open tank: this page follows one",
    ),
    ("soda_ash target_ph=7 raw_ph=7.5", "target_ph", "is no higher than the raw water's, 7.5"),
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
                text += (FOLDER.parent / "fields" / module).read_text(encoding="utf-8")
        for shared in ast.parse(WELL.read_text(encoding="utf-8")).body:
            if isinstance(shared, ast.FunctionDef) and f"{shared.name}(" in text:
                text += "\n" + ast.unparse(shared)
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
@patient
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
