"""The first survey: what is there, and what it gives."""

from calc import cautions
from calc.visits.path import Step, Visit

VISIT = Visit(
    "First survey",
    (
        Step(
            "household",
            "Ask the household",
            "What is complained of, since when, what was changed. How many live here, how much "
            "laundry, which day. Read the meter if there is one.",
            asks=("people", "daily_use", "loads", "fill", "fill_flow"),
        ),
        Step(
            "walk",
            "Walk from the well to the last tap",
            "Follow the pipe with a light. Note every valve, gauge, filter and tank, what is "
            "labeled and what is not. Nothing is opened yet. Photograph every nameplate.",
        ),
        Step(
            "well",
            "The well",
            "Driller's log first: depth, bore, pump. Then the level at rest, with a clean sounder.",
            asks=("well_depth", "casing_bore", "static_level", "pump_depth"),
            caution=cautions.WELL_OPEN,
        ),
        Step(
            "pump_1",
            "Pump 1",
            "From its nameplate and sheet. Then the lowest water below the gauge, with the pump "
            "running on.",
            asks=("well_pump_flow", "well_pump_head", "well_level"),
            caution=cautions.ELECTRICITY,
        ),
        Step(
            "tank_1",
            "Pressure tank 1",
            "Cut-in and cut-out from the gauge, through one whole cycle. Size from its label. "
            "Pre-charge with the tank empty, pump off.",
            asks=("well_cut_in", "well_cut_out", "well_tank", "well_precharge"),
            caution=cautions.PRESSURE,
        ),
        Step(
            "well_drawdown",
            "What tank 1 gives",
            "Pump off at cut-out. Catch what comes down to cut-in, then time the pump back up.",
            asks=("well_drawdown",),
        ),
        Step(
            "well_flow",
            "What pump 1 gives",
            "Pail and timer before the filter, with the pump running on.",
            asks=("pail",),
            opens="pail_flow",
            keeps=("flow>well_pump",),
        ),
        Step(
            "filter",
            "The filter",
            "Gauge before less gauge behind, over the flow: clean from the last service sheet, at "
            "its dirtiest from the day before service.",
            asks=("bed_clean", "bed_dirty", "service_at"),
        ),
        Step(
            "line",
            "Pipe and inlet limit",
            "Tape along the pipe, caliper on it, count the fittings. Read the limit's label.",
            asks=(
                "rise",
                "pipe_length",
                "pipe_bore",
                "fittings",
                "inlet_limit",
                "limit_flow",
                "limit_drop",
                "water_now",
                "water_coldest",
            ),
        ),
        Step(
            "inlet",
            "Flow in, today",
            "Float held open, blower running, room aired. Read the gauge before the filter while "
            "the pail fills, three times.",
            asks=("inlet_gauge",),
            opens="pail_flow",
            keeps=("flow>inlet",),
            caution=cautions.RADON_AIR,
        ),
        Step(
            "worst_inlet",
            "Flow in at its worst",
            "Lowest well, pump at cut-in, dirtiest bed, coldest water. Today flatters.",
            opens="inlet_flow",
            keeps=("worst_inlet>worst_inlet",),
        ),
        Step(
            "open_tank",
            "The open tank",
            "Water above the intake where the float closes, where it opens, and where a low-level "
            "switch stops pump 2; 0 if there is no switch.",
            asks=("float_kind", "float_closed", "float_open", "lock_at"),
            caution=cautions.RADON_AIR,
        ),
        Step(
            "house_side",
            "Pump 2 and pressure tank 2",
            "Cut-in and cut-out from the house gauge, size and pre-charge, and the flow of pump 2 "
            "with nothing holding it back.",
            asks=("cut_in", "cut_out", "house_tank", "precharge", "house_drawdown", "pump"),
            caution=cautions.PRESSURE,
        ),
        Step(
            "outlet",
            "Flow out, today",
            "Behind the outlet limit, the house gauge as low as it goes. Note the gauge.",
            asks=("limit", "house_gauge"),
            opens="pail_flow",
            keeps=("flow>outlet",),
        ),
        Step(
            "setting",
            "Does the tank stay wet?",
            "The outlet against the worst inlet. This decides what is done next.",
            asks=("chance",),
            opens="outlet_setting",
        ),
        Step(
            "radon",
            "Radon",
            "Raw water, drawn without a bubble, run until fresh from the well. The household "
            "chooses its target.",
            asks=("raw_radon", "target_radon"),
            opens="radon_sample",
        ),
        Step(
            "leave",
            "Before you leave",
            "Everything shut as it was, caps on, panel closed. Tell the household what was found, "
            "and what not to do until it is balanced. Save the job's file.",
        ),
    ),
)
