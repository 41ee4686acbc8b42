"""A new installation: from what the house takes to parts and sizes."""

from calc import cautions
from calc.visits.path import Step, Visit

VISIT = Visit(
    "New installation",
    (
        Step(
            "survey",
            "The survey is there",
            "Go the first survey before this one: whatever it lacks is missing here too.",
        ),
        Step(
            "takes",
            "What the house takes",
            "In a day, and at its busiest minute.",
            asks=("people", "bedrooms"),
            opens="peak_demand",
        ),
        Step(
            "gives",
            "What the well gives",
            "From a pumping test, not from the driller's five minutes.",
            asks=("static_level", "pump_depth", "pump_cover", "well_inflow"),
            opens="well_supply",
            caution=cautions.WELL_OPEN,
        ),
        Step(
            "head",
            "The head that pump 1 needs",
            "Lowest water, lift, pipe and pressure added up. Then a pump from its sheet.",
            opens="total_head",
        ),
        Step(
            "tank_1",
            "Pressure tank 1",
            "A minute of running at least, so that the pump lasts.",
            opens="pressure_tank",
            caution=cautions.PRESSURE,
        ),
        Step(
            "aerator",
            "The aerator",
            "At the largest flow it will ever see, with the radon of the highest sample.",
            asks=("raw_radon", "target_radon", "aerator_flow", "aerator_air", "aerator_stages"),
            opens="aeration_removal",
            caution=cautions.RADON_AIR,
        ),
        Step(
            "vent",
            "Blower and vent",
            "Vent outdoors, above the roof, away from windows, sloped so that water runs back, "
            "and warm enough not to ice up.",
            asks=("vent_length", "vent_bore", "vent_fittings", "blower_gives"),
            opens="blower_and_vent",
            caution=cautions.ELECTRICITY,
        ),
        Step(
            "inlet",
            "The inlet limit",
            "So that the aerator reaches its target, and the worst inlet is still enough.",
            asks=("inlet_limit", "limit_flow", "limit_drop"),
            opens="inlet_flow",
            keeps=("worst_inlet>worst_inlet",),
        ),
        Step(
            "intake",
            "Intake and float levels",
            "Enough water over the intake that it draws no air; the overflow clear of the inlet.",
            asks=("intake_bore", "tank_area", "overflow_height", "float_open", "float_closed"),
            opens="intake_depth",
        ),
        Step(
            "house_side",
            "Pump 2, its limit and pressure tank 2",
            "The limit sits before the pressure tank unless there is a reason.",
            asks=("limit", "house_tank", "precharge", "cut_in", "cut_out"),
            opens="system_run",
            caution=cautions.PRESSURE,
        ),
        Step(
            "switches",
            "The protective switches",
            "Low level stops pump 2. A blower that stands shuts the inlet and stops pump 2. High "
            "level shuts a second valve. No power shuts the inlet. An alarm that stays on.",
            caution=cautions.ELECTRICITY,
        ),
        Step(
            "disinfect",
            "Disinfect, flush, test",
            "Well, tanks and pipes. Nobody drinks until the coliform test is back.",
            opens="disinfection",
            caution=cautions.CHLORINE,
        ),
        Step(
            "next",
            "Then balance and commission",
            "Nothing is handed over before it is balanced: go that visit next, with this job.",
        ),
    ),
)
