"""Milky water."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "Milky water",
    "Fill a clear glass, stand it on the table, watch the clock.",
    (
        Step(
            "The glass.",
            (
                Branch(
                    "Clears from the bottom up, in one to three minutes.",
                    "Small bubbles of air or gas.",
                    "Does raw water do it too? Then gas from the well: see air at the taps. Only "
                    "treated water? Bubbles go with it out of the aerated tank.",
                    "intake_depth keep=4",
                    fits=("bubbles", "gas"),
                ),
                Branch(
                    "Clears from the top down, over half an hour or more.",
                    "Solids: lime, clay, fine iron.",
                    "Keep the glass. What lies at the bottom, white, gray or brown, goes to the "
                    "laboratory with the next sample.",
                    fits=("solids",),
                ),
                Branch(
                    "Does not clear.",
                    "Very fine clay or organic matter.",
                    "Laboratory: turbidity, iron, coliform bacteria. Drink other water until it "
                    "answers.",
                    fits=("clay",),
                ),
            ),
            name="glass",
        ),
        Step(
            "If it clears from the bottom up: the same glass with raw water from the well head.",
            (
                Branch(
                    "Only treated water is milky.",
                    "Bubbles of the aerator.",
                    "More rest over the intake.",
                    fits=("bubbles",),
                ),
                Branch(
                    "Raw water is milky too, and clears alike.",
                    "Gas from the well: methane, carbon dioxide or air.",
                    "Laboratory, and vent the well cap outdoors; see air at the taps.",
                    fits=("gas",),
                ),
            ),
            name="raw",
        ),
    ),
    says="The water is milky.",
    causes={
        "bubbles": Cause("Bubbles of the aerator go with the water", 3, "open-tank/intake.md"),
        "gas": Cause("Gas comes with the well's water", 2, "well/diagnosis.md"),
        "solids": Cause("Lime, clay or fine iron", 2, "well/diagnosis.md"),
        "clay": Cause("Very fine clay or organic matter", 1, "well/diagnosis.md"),
    },
)
