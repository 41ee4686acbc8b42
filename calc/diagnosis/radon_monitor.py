"""The radon monitor reads high."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "The radon monitor reads high",
    "Air the rooms and leave the blower running. Do not open the tank to look. If the blower "
    "stands: no water is drawn until it runs.",
    (
        Step(
            "The blower's pressure gauge against its tag, and a strip of paper at the vent's "
            "mouth.",
            (
                Branch(
                    "As on the tag.",
                    "The aerator breathes.",
                    "Next step.",
                    fits=("soil", "swing", "leak", "untreated"),
                ),
                Branch(
                    "Nothing.",
                    "The blower stands.",
                    "Pump 2 off. Find out why before it runs again.",
                    "interlock_check",
                    fits=("blower",),
                ),
                Branch(
                    "Outside of its band.",
                    "A hose is off, a stone torn or clogged, the vent blocked.",
                    "Find the leak, clean, then a pair of samples.",
                    "aerator_service",
                    fits=("leak", "untreated"),
                ),
            ),
            name="gauge",
        ),
        Step(
            "The mean of seven days, not the figure of an hour.",
            (
                Branch(
                    "Over the level at which you act.",
                    "It is no swing.",
                    "Next step.",
                    fits=("soil", "leak", "untreated", "blower"),
                ),
                Branch(
                    "Under it.",
                    "Wind, weather and windows.",
                    "Go on measuring: a long-term test decides.",
                    fits=("swing",),
                ),
            ),
            name="mean",
            effort=2,
            sure=0.85,
        ),
        Step(
            "A second monitor, or a day each: beside the tank, elsewhere in the basement, in the "
            "bathroom over an hour of showers.",
            (
                Branch(
                    "Alike all over the basement.",
                    "It comes with the soil gas.",
                    "A soil-gas system, by somebody certified for it. The water is a small part.",
                    "radon_in_air",
                    fits=("soil",),
                ),
                Branch(
                    "Much more beside the tank.",
                    "Air of the tank leaks.",
                    "Smoke or soap at lid, vent joints, overflow trap.",
                    "vent_leak",
                    fits=("leak", "blower"),
                ),
                Branch(
                    "Most in the bathroom, after showers.",
                    "It comes with the water.",
                    "A pair of samples.",
                    "shower_air",
                    fits=("untreated",),
                ),
            ),
            name="rooms",
            effort=2,
            sure=0.85,
        ),
        Step(
            "A pair of samples, before and after the aerator, all taps open.",
            (
                Branch(
                    "The after-sample meets the target.",
                    "The water is treated.",
                    "Look for it in the air: leak or ground.",
                    "radon_removal",
                    fits=("soil", "leak", "swing"),
                ),
                Branch(
                    "It does not.",
                    "The aerator does not reach it.",
                    "Flow, air, stones: reckon what it should reach, then clean.",
                    "aeration_removal",
                    fits=("untreated", "blower"),
                ),
            ),
            name="pair",
            effort=3,
        ),
    ),
    says="The radon monitor reads high.",
    causes={
        "soil": Cause("It comes from the ground, not from the water", 4, "radon/does-it-matter.md"),
        "leak": Cause("Lid, vent or trap leaks into the room", 3, "radon/vent.md"),
        "untreated": Cause("The water is not treated enough", 2, "radon/verify.md"),
        "swing": Cause("The swing of a day, no more", 2, "radon/verify.md"),
        "blower": Cause("The blower stood, or stands", 2, "radon/after-an-outage.md"),
    },
)
