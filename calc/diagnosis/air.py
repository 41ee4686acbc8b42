"""Air at the taps."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

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
                    fits=("runs_dry",),
                ),
                Branch(
                    "Well above the intake, but a whirl stands over it.",
                    "Too little water over the intake for this flow.",
                    "A wider intake, or the cut-off set higher.",
                    "intake_depth float_open=4",
                    fits=("whirl",),
                ),
                Branch(
                    "Full, and no whirl.",
                    "Not the open tank's level.",
                    "Next step.",
                    fits=("check_valve", "pumped_down", "gas", "bladder", "bubbles"),
                ),
            ),
            name="level",
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
                    fits=("check_valve",),
                ),
                Branch(
                    "In a draw, and the well's level is at its pump.",
                    "The well is pumped down.",
                    "Less flow or a dry-run switch. The pump is not made for air.",
                    fits=("pumped_down",),
                ),
                Branch(
                    "Always a little; the level is high.",
                    "Gas in the water, or bubbles of the aerator that had no time to rise.",
                    "Next step.",
                    fits=("gas", "bladder", "bubbles"),
                ),
            ),
            name="when",
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
                    fits=("gas",),
                ),
                Branch(
                    "None there.",
                    "It comes in behind: the tank's bladder, or the aerator's bubbles.",
                    "Water at the pressure tank's air valve: bladder. Else more rest over the "
                    "intake.",
                    "intake_depth keep=4",
                    fits=("bladder", "bubbles", "runs_dry", "whirl"),
                ),
            ),
            name="raw",
        ),
        Step(
            "Pump 2 off at the panel and locked, a tap opened until the house gauge is at 0. Then "
            "press the air valve of the house pressure tank.",
            (
                Branch(
                    "Water comes out of it.",
                    "The bladder is torn.",
                    "A new pressure tank; until then it gives air and water as it likes.",
                    fits=("bladder",),
                ),
                Branch(
                    "Only air.",
                    "The bladder holds.",
                    "More rest over the intake, or less air in the aerator's last basin.",
                    fits=("bubbles", "runs_dry", "whirl", "check_valve", "pumped_down", "gas"),
                ),
            ),
            name="valve",
        ),
    ),
    says="Air spits from the taps.",
    causes={
        "runs_dry": Cause(
            "The open tank runs dry: more leaves than enters", 4, "open-tank/outlet.md"
        ),
        "whirl": Cause("Too little water over the intake for this flow", 1, "open-tank/intake.md"),
        "check_valve": Cause(
            "The pipe empties at rest: check valve or drop pipe", 2, "well/pump-and-pipe.md"
        ),
        "pumped_down": Cause("The well is pumped down to its pump", 2, "well/what-it-gives.md"),
        "gas": Cause("Gas comes with the well's water", 1, "well/diagnosis.md"),
        "bladder": Cause("The pressure tank's bladder is torn", 1, "well/pressure-tank.md"),
        "bubbles": Cause("Bubbles of the aerator go with the water", 2, "open-tank/intake.md"),
    },
)
