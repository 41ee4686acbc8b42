"""The yearly service: what has drifted, what is cleaned, and when next."""

from calc import cautions
from calc.visits.path import Step, Visit

VISIT = Visit(
    "Yearly service",
    (
        Step(
            "before",
            "Before you touch anything",
            "Start a new job, so that two visits can be compared. Ask what has changed in the "
            "house. Read the tags. Read the alarm: was it ever on?",
            asks=("people", "daily_use"),
        ),
        Step(
            "blower",
            "Blower and vent",
            "Its pressure against the tag. Vent open outdoors, no ice, no nest. Trap full.",
            asks=("blower_clean", "blower_now", "blower_limit"),
            caution=cautions.RADON_AIR,
        ),
        Step(
            "interlocks",
            "The switches, tried one by one",
            "Make each fault happen and see what shuts. Not tried is not passed.",
            opens="interlock_check",
            caution=cautions.ELECTRICITY,
        ),
        Step(
            "pair",
            "A pair of samples, before cleaning",
            "All taps open, within the hour. The dirty unit is the one people drink from.",
            asks=("raw_radon", "treated_radon", "target_radon"),
            opens="radon_removal",
        ),
        Step(
            "inlet_dirty",
            "Flow in, before the filter is serviced",
            "Float held open, gauge noted. Put the reading with the earlier ones: meter, flow, "
            "gauge.",
            asks=("pail", "inlet_gauge", "filter_meter", "filter_flows", "filter_gauges"),
            opens="pail_flow",
            keeps=("flow>inlet",),
        ),
        Step(
            "due",
            "Was it serviced in time?",
            "The filter's date from its own readings, and the next one.",
            asks=("rise", "well_cut_in", "inlet_coefficient", "guard", "daily_use", "worst_outlet"),
            opens="filter_due",
            keeps=("service_flow>service_at",),
        ),
        Step(
            "service",
            "Service the filter",
            "By its sheet: backwash, or refill a neutralizer to its mark, or a new cartridge. "
            "Bypass shut again, locked and labeled.",
            caution=cautions.PRESSURE,
        ),
        Step(
            "inlet_clean",
            "Flow in, afterwards",
            "Catch again with the same gauge reading. It is the first reading of the next year.",
            opens="pail_flow",
            keeps=("flow>inlet",),
        ),
        Step(
            "outlet",
            "Flow out",
            "The seal on the limit unbroken? Catch all the same: a seat wears.",
            asks=("limit", "house_gauge", "cut_in", "cut_out", "house_tank", "precharge"),
            opens="pail_flow",
            keeps=("flow>outlet",),
        ),
        Step(
            "setting",
            "Does the tank still stay wet?",
            "Yesterday's setting with today's flows.",
            asks=("service_at", "float_open", "chance"),
            opens="outlet_setting",
        ),
        Step(
            "aerator",
            "Clean the aerator",
            "Pumps locked out, vent running, room aired. Rust out, stones cleaned or changed, then "
            "disinfected. Gauge noted afterwards.",
            asks=("iron", "iron_falls", "floc_allowed"),
            opens="aerator_service",
            caution=cautions.RADON_AIR,
        ),
        Step(
            "coliform",
            "Coliform bacteria",
            "A sample from the tap after any tank was open. Nobody drinks until it is back.",
        ),
        Step(
            "leave",
            "Before you leave",
            "Tags with today's date. Compare this job with the last one, and tell the household "
            "what drifted. Save the job's file.",
        ),
    ),
)
