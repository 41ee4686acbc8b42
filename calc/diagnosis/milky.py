"""Milky water."""

from calc.diagnosis.path import Branch, Step, Symptom

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
                ),
                Branch(
                    "Clears from the top down, over half an hour or more.",
                    "Solids: lime, clay, fine iron.",
                    "Keep the glass. What lies at the bottom, white, grey or brown, goes to the "
                    "laboratory with the next sample.",
                ),
                Branch(
                    "Does not clear.",
                    "Very fine clay or organic matter.",
                    "Laboratory: turbidity, iron, coliform bacteria. Drink other water until it "
                    "answers.",
                ),
            ),
        ),
    ),
)
