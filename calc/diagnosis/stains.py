"""Stains on sinks and laundry."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "Stains",
    "Ask when it began, and whether hot and cold stain alike.",
    (
        Step(
            "The stain in daylight, on white enamel.",
            (
                Branch(
                    "Brown or red.",
                    "Iron, from the ground or from pipe.",
                    "Next step.",
                    fits=("iron", "slime", "rust"),
                ),
                Branch(
                    "White crust that vinegar makes fizz.",
                    "Lime.",
                    "Hardness on the next water report; a softener is for comfort, not for health.",
                    fits=("hard",),
                ),
                Branch(
                    "Blue-green, below a dripping tap.",
                    "Copper: the water is acid.",
                    "First-draw lead and copper to the laboratory, pH at the well and at the tap. "
                    "Let the tap run before anyone drinks, until it answers.",
                    "aerated_ph",
                    fits=("acid",),
                ),
                Branch(
                    "Black or dark brown specks.",
                    "Manganese.",
                    "Laboratory. Infants should have other water until it answers: ask the health "
                    "department for its level.",
                    fits=("manganese",),
                ),
            ),
            name="colour",
        ),
        Step(
            "Raw water from the well head after ten minutes of pumping, in a white pail, an hour "
            "in the open.",
            (
                Branch(
                    "Clear, then brown while it stands.",
                    "Dissolved iron falls out as it meets air.",
                    "Iron to the laboratory. It fouls an aerator and its filter fast: reckon how "
                    "fast.",
                    "aerator_iron",
                    fits=("iron",),
                ),
                Branch(
                    "Brown from the first minute.",
                    "Rust or slime on its way.",
                    "Next step.",
                    fits=("rust", "slime"),
                ),
                Branch(
                    "Stays clear.",
                    "No iron to speak of.",
                    "pH and hardness decide.",
                    fits=("acid", "hard", "manganese"),
                ),
            ),
            name="pail",
            sure=0.85,
        ),
        Step(
            "Lift the lid of a toilet tank and wipe the wall with a finger.",
            (
                Branch(
                    "Slippery brown jelly.",
                    "Iron bacteria. No illness, but a home for others.",
                    "Coliform test, then disinfection of the well, then the filter.",
                    "disinfection",
                    fits=("slime",),
                ),
                Branch(
                    "Dry rust, or clean.",
                    "No slime.",
                    "Look at the pipe: a magnet tells steel from the rest.",
                    fits=("iron", "rust", "acid", "hard", "manganese"),
                ),
            ),
            name="cistern",
            sure=0.85,
        ),
        Step(
            "pH of raw water, fresh, with a strip or a meter.",
            (
                Branch(
                    "Under 6.5.",
                    "Acid enough to eat copper.",
                    "Neutralizer. Until then run each tap before drinking.",
                    "aerated_ph",
                    fits=("acid",),
                ),
                Branch(
                    "6.5 or more.",
                    "Not acid.",
                    "It is not the pH. Iron, manganese and hardness to the laboratory.",
                    fits=("iron", "manganese", "slime", "hard", "rust"),
                ),
            ),
            name="ph",
            sure=0.85,
        ),
    ),
    says="It stains the sink and the laundry.",
    causes={
        "iron": Cause("Dissolved iron", 4, "radon/what-else.md"),
        "manganese": Cause("Dissolved manganese", 1, "radon/what-else.md"),
        "slime": Cause("Iron bacteria", 1, "well/disinfection.md"),
        "acid": Cause("Acid water that eats copper pipe", 2, "radon/what-else.md"),
        "hard": Cause("Hardness: lime", 2, "radon/what-else.md"),
        "rust": Cause("Rust of old steel pipe or of the drop pipe", 1, "well/pumping-test.md"),
    },
)
