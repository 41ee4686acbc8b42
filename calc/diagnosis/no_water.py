"""No water at all."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

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
                    fits=(
                        "breaker",
                        "open_circuit",
                        "dry_well",
                        "jammed",
                        "falls_back",
                        "generator",
                    ),
                ),
                Branch(
                    "Tank empty, well gauge at its usual height.",
                    "The inlet: float stuck, filter plugged or in backwash, limit blocked, frozen.",
                    "Blower running and room aired, hold the float open and catch a pail at the "
                    "inlet.",
                    "inlet_flow bed_dirty=8",
                    fits=("inlet",),
                ),
                Branch(
                    "Water in the tank, house gauge at 0.",
                    "Pump 2: locked out, no power, lost its water, worn.",
                    "Find out why a lock-out tripped before you reset it. It may have saved the "
                    "house's air.",
                    "interlock_check",
                    fits=("pump_2",),
                ),
            ),
            name="side",
        ),
        Step(
            "By a licensed person: voltage at the switch, then current on one leg while it should "
            "run.",
            (
                Branch(
                    "No voltage.",
                    "Breaker, low-pressure cut-off, switch, control box.",
                    "Find why a breaker tripped. Reset it once, not twice.",
                    fits=("breaker",),
                ),
                Branch(
                    "Voltage within 10 %, no current.",
                    "An open circuit: cable, splice, winding, overload.",
                    "Ohms of the loop with the power locked out; take the cable's own off.",
                    "cable_drop wire_temperature=50°F",
                    fits=("open_circuit",),
                ),
                Branch(
                    "Current about half of full load.",
                    "It turns with no water to lift: dry well, broken shaft or pipe.",
                    "Off. Sounder.",
                    fits=("dry_well",),
                ),
                Branch(
                    "Three to six times full load.",
                    "It does not turn: jammed, or far too little voltage.",
                    "Off at once. Reckon the voltage that reaches it.",
                    "cable_drop wire_gauge=14 cable_length=500",
                    fits=("jammed", "generator"),
                ),
                Branch(
                    "All as it should be, and no pressure.",
                    "Water falls back: broken drop pipe, or the check valve hangs.",
                    "Sounder, and an ear at the well head.",
                    fits=("falls_back",),
                ),
            ),
            name="volts",
            effort=2,
        ),
        Step(
            "On a generator only: does it hum, and does the light go dim as it tries?",
            (
                Branch(
                    "Yes.",
                    "The generator cannot start it.",
                    "Everything else off, then once more. Not a third time.",
                    "generator_start generator_rated=3",
                    fits=("generator",),
                ),
                Branch(
                    "No.",
                    "It is not the generator.",
                    "The step before.",
                    fits=(
                        "breaker",
                        "open_circuit",
                        "dry_well",
                        "jammed",
                        "falls_back",
                        "inlet",
                        "pump_2",
                    ),
                ),
            ),
            name="generator",
        ),
    ),
    says="There is no water at all.",
    causes={
        "breaker": Cause(
            "No power to the well pump: breaker, cut-off or switch", 3, "well/electricity.md"
        ),
        "inlet": Cause("The inlet is shut: float, filter, limit or frost", 3, "open-tank/inlet.md"),
        "pump_2": Cause(
            "Pump 2 stands: locked out, no power, or worn", 3, "open-tank/interlocks.md"
        ),
        "open_circuit": Cause(
            "An open circuit: cable, splice or winding", 1, "well/electricity.md"
        ),
        "dry_well": Cause("The pump turns with no water to lift", 2, "well/what-it-gives.md"),
        "jammed": Cause("The pump does not turn", 1, "well/electricity.md"),
        "falls_back": Cause("Water falls back in the well", 1, "well/pump-and-pipe.md"),
        "generator": Cause("The generator cannot start the pump", 1, "well/electricity.md"),
    },
)
