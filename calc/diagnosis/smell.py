"""Water that smells."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "Smell",
    "Gas that burns or makes dizzy, or a smell of fuel: no flame, no switch, out, and call for "
    "help. No one drinks it.",
    (
        Step(
            "Fill a clean glass and carry it into another room. Smell there, with the tap shut.",
            (
                Branch(
                    "Nothing in the glass.",
                    "It is the drain: a dry trap, slime in the overflow.",
                    "Water and hot soap into the trap, and look at its vent.",
                    fits=("drain",),
                ),
                Branch(
                    "The glass smells.",
                    "It is the water.",
                    "Next step.",
                    fits=("sulfide", "heater", "growth", "chlorine", "fuel"),
                ),
            ),
            name="glass",
        ),
        Step(
            "Hot and cold, in two glasses.",
            (
                Branch(
                    "Only hot.",
                    "The heater.",
                    "Heat it through once by its sheet, flush it, ask a plumber about another "
                    "anode. Scalding: warn the house.",
                    fits=("heater",),
                ),
                Branch(
                    "Both.",
                    "Not the heater.",
                    "Next step.",
                    fits=("sulfide", "growth", "chlorine", "fuel", "drain"),
                ),
            ),
            name="hot",
        ),
        Step(
            "What does it smell of? Ask a second nose.",
            (
                Branch(
                    "Rotten eggs.",
                    "Hydrogen sulfide.",
                    "Air takes it out; so does the aerator, with its vent outdoors.",
                    fits=("sulfide", "heater", "drain"),
                ),
                Branch(
                    "Earth, mold or fish.",
                    "Growth.",
                    "Coliform test, then disinfection.",
                    "disinfection",
                    fits=("growth",),
                ),
                Branch(
                    "Swimming pool.",
                    "Chlorine.",
                    "Flush to where it does no harm, not into the septic tank, and test before "
                    "anyone drinks.",
                    "disinfection",
                    fits=("chlorine",),
                ),
                Branch(
                    "Fuel, paint, sweet solvent.",
                    "The well is contaminated.",
                    "Stop using it, for showers as well. Call the health department today.",
                    fits=("fuel",),
                ),
            ),
            name="kind",
            sure=0.8,
        ),
        Step(
            "Raw water at the well head, then behind each filter, in glasses with a lid.",
            (
                Branch(
                    "Raw water smells.",
                    "It comes with the water.",
                    "Laboratory; vent the well cap outdoors.",
                    fits=("sulfide", "fuel"),
                ),
                Branch(
                    "Raw does not; it begins behind a filter or tank.",
                    "It is made in the house.",
                    "Clean and disinfect that filter or tank.",
                    "disinfection",
                    fits=("growth", "heater", "chlorine"),
                ),
            ),
            name="raw",
            sure=0.85,
        ),
    ),
    says="The water smells.",
    causes={
        "sulfide": Cause("Hydrogen sulfide in the well's water", 3, "radon/what-else.md"),
        "heater": Cause("The water heater: bacteria at its anode", 3, "well/disinfection.md"),
        "drain": Cause("The drain, not the water", 2, "well/diagnosis.md"),
        "growth": Cause("Growth in the well, a filter or a tank", 2, "well/disinfection.md"),
        "chlorine": Cause("Chlorine left from a disinfection", 1, "well/disinfection.md"),
        "fuel": Cause("Fuel or solvent in the well", 0.5, "well/diagnosis.md"),
    },
)
