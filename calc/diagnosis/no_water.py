"""No water at all."""

from calc.diagnosis.path import Branch, Step, Symptom

SYMPTOM = Symptom(
    "No water at all",
    "In a house with an open tank: stop pump 2 first. Run dry it draws radon-laden air into the "
    "pipes.",
    (
        Step(
            "Which side is dry? Gauge before the filter; level in the open tank, seen through its "
            "gauge, lid shut.",
            (
                Branch(
                    "Tank empty, well gauge at 0.",
                    "The well side.",
                    "Next step.",
                ),
                Branch(
                    "Tank empty, well gauge at its usual height.",
                    "The inlet: float stuck, filter plugged or in backwash, limit blocked, frozen.",
                    "Blower running and room aired, hold the float open and catch a pail at the "
                    "inlet.",
                    "inlet_flow bed_dirty=8",
                ),
                Branch(
                    "Water in the tank, house gauge at 0.",
                    "Pump 2: locked out, no power, lost its water, worn.",
                    "Find out why a lock-out tripped before you reset it. It may have saved the "
                    "house's air.",
                    "interlock_check",
                ),
            ),
        ),
        Step(
            "By a licensed person: voltage at the switch, then current on one leg while it should "
            "run.",
            (
                Branch(
                    "No voltage.",
                    "Breaker, low-pressure cut-off, switch, control box.",
                    "Find why a breaker tripped. Reset it once, not twice.",
                ),
                Branch(
                    "Voltage within 10 %, no current.",
                    "An open circuit: cable, splice, winding, overload.",
                    "Ohms of the loop with the power locked out; take the cable's own off.",
                    "cable_drop wire_temperature=50°F",
                ),
                Branch(
                    "Current about half of full load.",
                    "It turns with no water to lift: dry well, broken shaft or pipe.",
                    "Off. Sounder.",
                ),
                Branch(
                    "Three to six times full load.",
                    "It does not turn: jammed, or far too little voltage.",
                    "Off at once. Reckon the voltage that reaches it.",
                    "cable_drop wire_gauge=14 cable_length=500",
                ),
                Branch(
                    "All as it should be, and no pressure.",
                    "Water falls back: broken drop pipe, or the check valve hangs.",
                    "Sounder, and an ear at the well head.",
                ),
            ),
        ),
        Step(
            "On a generator only: does it hum, and does the light go dim as it tries?",
            (
                Branch(
                    "Yes.",
                    "The generator cannot start it.",
                    "Everything else off, then once more. Not a third time.",
                    "generator_start generator_rated=3",
                ),
                Branch(
                    "No.",
                    "It is not the generator.",
                    "The step before.",
                ),
            ),
        ),
    ),
)
