"""Problems on electricity for the pump."""

from calc.coursework.problem import (
    Fact,
    Option,
    Part,
    Pick,
    Problem,
    ProblemSet,
    Recall,
    Slip,
    grid,
)

FACTS = Recall(
    name="facts",
    form="recall",
    objective="Name what a pump's cable and its start ask for.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Where does a cable to a well begin and end?",
            "at the panel and at the motor: trench and drop together",
            ("at the well's cap and the motor", "at the panel and the well's cap"),
            "The trench may be the longer half.",
            "Common mistakes",
        ),
        Fact(
            "When is the voltage measured that tells of the cable?",
            "while the pump runs",
            ("with the pump off", "with the breaker open"),
            "Nothing flows, nothing is lost.",
            "Common mistakes",
        ),
        Fact(
            "What is a generator's surge figure good for?",
            "seconds",
            ("the whole day", "cold mornings"),
            "Its rating is what it gives all day.",
            "Common mistakes",
        ),
        Fact(
            "A breaker trips. How often is it reset?",
            "once, then look for the cause",
            ("until it holds", "every hour"),
            "It trips because something is wrong.",
            "Common mistakes",
        ),
        Fact(
            "The well is deepened and each start trips the overload. What is reckoned first?",
            "the voltage left at the motor at the moment of a start",
            ("the tank's pre-charge", "the iron in the water"),
            "More wire is in line with a rotor that stands still.",
            "Check yourself",
        ),
    ),
)

_WIRES = ("14", "12", "10", "8")

DROP = Problem(
    name="drop",
    form="one-step",
    objective="Compute the voltage that a cable loses.",
    level=2,
    minutes=5,
    text="A motor takes {running_current} through {cable_length}, one way, of copper of "
    "{wire_gauge}, {wire_temperature} warm; the panel has {supply_volts}. Take the resistance of "
    "the wire from the chapter's calculator or a table.",
    calculator="cable_drop",
    draws={
        "running_current": grid("5", "14", "0.5", "A"),
        "cable_length": grid("150", "600", "25", "ft"),
        "wire_gauge": _WIRES,
    },
    fixed={"locked_current": "60 A"},
    parts=(
        Part(
            finds="V_d",
            ask="How much voltage is lost while the pump runs?",
            section="The cable",
            tolerance=0.03,
            slips=(
                Slip("Current goes there and back: twice the length.", "V_d / 2"),
                Slip("The length is one way already: do not double it twice.", "2 * V_d"),
            ),
        ),
        Part(
            finds="s",
            ask="Which share of the supply is that?",
            section="The cable",
            tolerance=0.03,
            slips=(Slip("That is what is left.", "1 - s"),),
        ),
    ),
)

START = Problem(
    name="start",
    form="multi-step",
    objective="Compute what a motor takes at its start, and the generator for it.",
    level=2,
    minutes=8,
    text="A motor of {motor_power} has the {code_letter}; it takes {running_current} at "
    "{motor_volts} while it runs. Other loads take {other_load}. The generator has a transient "
    "reactance of {reactance}; the motor stands a dip of {dip_limit}.",
    calculator="generator_start",
    draws={
        "motor_power": ("0.5 hp", "0.75 hp", "1 hp", "1.5 hp", "2 hp"),
        "code_letter": ("G", "H", "J", "K", "L"),
        "reactance": grid("15", "30", "1", "%"),
        "dip_limit": ("25 %", "30 %", "35 %"),
        "other_load": grid("0.4", "1.2", "0.2", "kVA"),
    },
    parts=(
        Part(
            finds="S",
            ask="What does it take at the start, at most?",
            section="The generator",
            slips=(
                Slip("That is while it runs.", "S_r"),
                Slip("That is the least by its code letter.", "S_n"),
            ),
        ),
        Part(
            finds="I_l",
            ask="Which current is that?",
            section="The generator",
            slips=(Slip("That is while it runs.", "I"),),
        ),
        Part(
            finds="S_s",
            ask="Which generator starts the pump?",
            section="The generator",
            tolerance=0.03,
            slips=(
                Slip("The dip is over one less the dip.", "X * S / d_m"),
                Slip("That is what the motor takes, with no reactance and no dip.", "S"),
            ),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a cable may stay for a deeper pump.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. Panel {supply_volts} with the pump "
    "running; motor {running_current}, {locked_current} at the moment it starts; {cable_length}, "
    "one way, of copper {wire_gauge}, {wire_temperature} warm. {drop_limit} may be lost. Work here "
    "is for a licensed person; you reckon.",
    calculator="cable_drop",
    draws={
        "running_current": grid("6", "12", "0.5", "A"),
        "cable_length": grid("200", "600", "25", "ft"),
        "wire_gauge": _WIRES,
        "locked_current": ("38 A", "45 A", "52 A", "60 A"),
    },
    parts=(
        Part(
            finds="L_m",
            ask="What is the longest run of this wire?",
            section="The cable",
            tolerance=0.03,
            slips=(Slip("Current goes there and back: twice the length.", "2 * L_m"),),
        ),
        Part(
            finds="U_s",
            ask="What is left at the motor at the moment of a start, at least?",
            section="The cable",
            slips=(Slip("That is while it runs.", "U_m"),),
        ),
        Pick(
            finds="stays",
            ask="May the cable stay?",
            section="The cable",
            options=(
                Option("yes", "Yes: less is lost than may be.", "s < d"),
                Option("no", "No: thicker copper."),
            ),
            because="The share lost is held against the share allowed.",
        ),
    ),
)

SET = ProblemSet(
    name="well_electricity",
    chapter="well/electricity.md",
    title="Electricity for the pump",
    revision="2026-11-25",
    problems=(FACTS, DROP, START, FIELD),
)
