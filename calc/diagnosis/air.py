"""Air at the taps."""

from calc.diagnosis.path import Branch, Step, Symptom

SYMPTOM = Symptom(
    "Air at the taps",
    "With an open aerated tank take it as radon until shown otherwise: air the rooms, draw "
    "nothing, look at the tank. If the air burns or smells of eggs: no flame, out, and call.",
    (
        Step(
            "Level in the open tank the next time it spits, and what had been drawn.",
            (
                Branch(
                    "At the intake.",
                    "The tank runs dry: more leaves than enters. Pump 2 draws radon-laden air.",
                    "Catch both flows and set the outlet. Test the low-level switch.",
                    "tank_draw worst_inlet=3",
                ),
                Branch(
                    "Well above the intake, but a whirl stands over it.",
                    "Too little water over the intake for this flow.",
                    "A wider intake, or the cut-off set higher.",
                    "intake_depth float_open=4",
                ),
                Branch(
                    "Full, and no whirl.",
                    "Not the open tank's level.",
                    "Next step.",
                ),
            ),
        ),
        Step(
            "When does it spit: after rest, or in the middle of a draw? Sounder at the well while "
            "it does.",
            (
                Branch(
                    "Only after rest.",
                    "Air gets into an empty pipe: check valve or drop pipe leaks back.",
                    "Watch the gauge with everything shut.",
                    "pump_check leak_from=60 leak_to=50 leak_time=60",
                ),
                Branch(
                    "In a draw, and the well's level is at its pump.",
                    "The well is pumped down.",
                    "Less flow or a dry-run switch. The pump is not made for air.",
                ),
                Branch(
                    "Always a little; the level is high.",
                    "Gas in the water, or bubbles of the aerator that had no time to rise.",
                    "Next step.",
                ),
            ),
        ),
        Step(
            "Water drawn at the well head, before any tank, into a clear bottle; a bag over its "
            "mouth for the laboratory.",
            (
                Branch(
                    "Gas there already.",
                    "Methane, carbon dioxide or hydrogen sulfide. Air with 5 to 15 % of methane "
                    "explodes.",
                    "Laboratory, and vent the well cap outdoors. Advice of 2001, no limit: watch "
                    "methane from 10 mg/L up, act at once from 28 [eltschlager-2001].",
                ),
                Branch(
                    "None there.",
                    "It comes in behind: the tank's bladder, or the aerator's bubbles.",
                    "Water at the pressure tank's air valve: bladder. Else more rest over the "
                    "intake.",
                    "intake_depth keep=4",
                ),
            ),
        ),
    ),
)
