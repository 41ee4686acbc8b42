"""The water meter reads high."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "The water meter reads high",
    "Ask for two readings and their dates. A hose left open may be all.",
    (
        Step(
            "All taps shut, ice maker and softener off. Read the meter twice, half an hour apart.",
            (
                Branch(
                    "It stands.",
                    "Nothing leaks now.",
                    "Next step.",
                    fits=("use", "meter"),
                ),
                Branch(
                    "It moves.",
                    "Something takes water.",
                    "Next step.",
                    fits=("toilet", "buried", "overflow", "backwash"),
                ),
            ),
            name="still",
        ),
        Step(
            "A spoon of food color into each toilet tank. Wait a quarter of an hour.",
            (
                Branch(
                    "Color in the bowl.",
                    "The flapper leaks: a gallon a minute is no rare figure (from memory).",
                    "A new flapper, then read the meter again.",
                    fits=("toilet",),
                ),
                Branch(
                    "None.",
                    "The toilets hold.",
                    "Next step.",
                    fits=("use", "buried", "overflow", "backwash", "meter"),
                ),
            ),
            name="dye",
        ),
        Step(
            "The open tank's overflow and the drain of softener and filter, with a light.",
            (
                Branch(
                    "Water runs from the overflow.",
                    "The float does not close.",
                    "Shut the inlet by hand. Float, solenoid, high-level switch.",
                    "interlock_check",
                    fits=("overflow",),
                ),
                Branch(
                    "Water runs from a filter or softener.",
                    "It is stuck in its rinse.",
                    "Bypass it, and note its timer.",
                    "filter_due",
                    fits=("backwash",),
                ),
                Branch(
                    "Both dry.",
                    "Not these.",
                    "Next step.",
                    fits=("toilet", "use", "buried", "meter"),
                ),
            ),
            name="overflow",
        ),
        Step(
            "Shut the valve where the line enters the house, and read the meter twice again.",
            (
                Branch(
                    "It still moves.",
                    "Water is lost between meter and house.",
                    "Walk the line: wet ground, a hiss at the valve. Dig where it is wet.",
                    fits=("buried",),
                ),
                Branch(
                    "It stops.",
                    "The loss is in the house, if there is one.",
                    "Next step.",
                    fits=("toilet", "use", "overflow", "backwash", "meter"),
                ),
            ),
            name="line",
        ),
        Step(
            "Pail and timer at a tap, against the meter, over five gallons.",
            (
                Branch(
                    "They agree within 5 %.",
                    "The meter is right.",
                    "Count the fixtures and ask about the garden.",
                    "daily_demand",
                    fits=("toilet", "use", "buried", "overflow", "backwash"),
                ),
                Branch(
                    "They differ by more.",
                    "Meter or pail is wrong.",
                    "Weigh the pail, then have the meter changed.",
                    "pail_flow",
                    fits=("meter",),
                ),
            ),
            name="pail",
        ),
    ),
    says="The meter reads high.",
    causes={
        "toilet": Cause("A toilet runs", 4, "well/what-the-house-takes.md"),
        "use": Cause(
            "It is used: garden, guests, an old washer", 3, "well/what-the-house-takes.md"
        ),
        "buried": Cause("A buried or hidden pipe leaks", 2, "well/diagnosis.md"),
        "overflow": Cause(
            "The open tank overflows: its float does not close", 2, "open-tank/interlocks.md"
        ),
        "backwash": Cause("A softener or filter rinses without end", 1, "open-tank/filter.md"),
        "meter": Cause("The meter counts wrong", 0.5, "balance.md"),
    },
)
