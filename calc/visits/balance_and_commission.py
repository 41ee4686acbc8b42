"""Balance and commission: flow in against flow out, proven and locked."""

from calc import cautions
from calc.visits.path import Step, Visit

VISIT = Visit(
    "Balance and commission",
    (
        Step(
            "ready",
            "Ready",
            "Blower running, room aired, pail marked and its mark weighed, two gauges that agree. "
            "Warn the household: no water for an hour.",
            asks=("pail",),
            caution=cautions.RADON_AIR,
        ),
        Step(
            "gauges",
            "Gauges and tanks",
            "Both switches through one whole cycle. Pre-charge with the tank empty, pump off.",
            asks=("well_cut_in", "cut_in", "cut_out", "house_tank", "precharge"),
            caution=cautions.PRESSURE,
        ),
        Step(
            "inlet",
            "Flow in, today",
            "Float held open. Read the gauge before the filter while the pail fills, three times.",
            asks=("inlet_gauge", "rise"),
            opens="pail_flow",
            keeps=("flow>inlet",),
        ),
        Step(
            "service",
            "When will the filter be serviced?",
            "The flow in at which it is serviced at the latest. It is a promise: the setting rests "
            "on it.",
            asks=("service_at",),
        ),
        Step(
            "outlet",
            "Flow out, as found",
            "Behind the outlet limit, the house gauge as low as it goes. Note the gauge.",
            asks=("limit", "house_gauge"),
            opens="pail_flow",
            keeps=("flow>outlet",),
        ),
        Step(
            "setting",
            "The setting",
            "What the pail must show at the outlet, at most. Keep it beside you.",
            asks=("float_open", "chance"),
            opens="outlet_setting",
        ),
        Step(
            "set",
            "Set the limit, and catch again",
            "Turn it down, catch, turn again. Three runs at the last position go into the job.",
            opens="pail_flow",
            keeps=("flow>outlet",),
        ),
        Step(
            "proof",
            "Is it safe now?",
            "The same calculator with the new catch. It must say so before you go on.",
            opens="outlet_setting",
            keeps=("worst_outlet>worst_outlet", "worst_inlet>worst_inlet"),
        ),
        Step(
            "draw",
            "The largest draw",
            "One fill of the washer, or a tub, from a tank at its worst hour.",
            asks=("draw_flow", "draw_volume", "pump", "float_closed", "start"),
            opens="tank_draw",
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
            "A pair of samples",
            "Before and after the aerator, within the hour, all taps open.",
            asks=("raw_radon", "treated_radon", "target_radon"),
            opens="radon_removal",
            caution=cautions.RADON_AIR,
        ),
        Step(
            "lock",
            "Lock and tag",
            "Lock the limit. Its tag: date, flow in and gauge, flow out and gauge, the flow in at "
            "which the filter is due, the words “opening it runs the tank dry”.",
        ),
    ),
)
