"""Problems on what is wrong: find it by measuring."""

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
    objective="Choose the measurement that tells two causes apart.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which part is dearest and seldom the cause?",
            "the pump",
            ("the pressure switch", "the filter"),
            "Measure before it is pulled.",
            "Common mistakes",
        ),
        Fact(
            "How many things are changed at once?",
            "one",
            ("two", "as many as are old"),
            "Else nobody knows which one helped.",
            "Common mistakes",
        ),
        Fact(
            "How is the water in a pressure tank found?",
            "by catching its drawdown",
            ("by tapping on its wall", "by its weight"),
            "It is a number.",
            "Common mistakes",
        ),
        Fact(
            "A low-level lock-out has tripped. What now?",
            "find why the tank ran low",
            ("reset it and leave", "take it out"),
            "It did what it is for.",
            "Common mistakes",
        ),
        Fact(
            "The pump runs on at a steady gauge under cut-out. The valve behind the tank is shut "
            "and the gauge rises. What was it?",
            "somebody or something draws as much as it gives",
            ("a worn pump", "a low well"),
            "Look for the leak.",
            "Check yourself",
        ),
    ),
)

GIVES = Problem(
    name="gives",
    form="one-step",
    objective="Compute what a pump gives from its own tank.",
    level=1,
    minutes=3,
    text="With the pump off {well_caught} came from cut-out down to cut-in. With all taps shut the "
    "pump filled that again in {fill_time}.",
    calculator="pump_check",
    draws={
        "well_caught": grid("4", "12", "0.2", "gal"),
        "fill_time": grid("30", "110", "2", "s"),
    },
    fixed={"well_tank": "50 gal"},
    parts=(
        Part(
            finds="Q",
            ask="What does the pump give?",
            section="What to measure",
            slips=(Slip("That is the time over the water.", "t / V * gal * gpm"),),
        ),
    ),
)

LEAK = Problem(
    name="leak",
    form="multi-step",
    objective="Compute how much water leaves with everything shut.",
    level=2,
    minutes=8,
    text="A pressure tank of {well_tank}, pre-charged to {well_precharge}, stood at {leak_from} "
    "with everything shut, and at {leak_to} after {leak_time}. The air presses with 14.7 psi.",
    calculator="pump_check",
    draws={
        "well_tank": ("20 gal", "32 gal", "44 gal", "62 gal"),
        "leak_from": grid("54", "60", "1", "psi"),
        "leak_to": grid("42", "50", "1", "psi"),
        "leak_time": grid("10", "60", "10", "min"),
    },
    parts=(
        Part(
            finds="V_l",
            ask="How much water has left?",
            section="What to measure",
            slips=(
                Slip("Boyle's law needs absolute pressures: add that of the air.", "P_a = 0 * P_a"),
            ),
        ),
        Part(
            finds="Q_l",
            ask="What is that in a day?",
            section="What to measure",
            slips=(Slip("A day has twenty-four hours.", "Q_l / 24"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide between pump, tank and leak from three measurements.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. {well_caught} caught from {well_cut_out} "
    "to {well_cut_in}, filled again in {fill_time}; tank {well_tank}, label {well_precharge}. Shut "
    "off, the gauge stood at {leak_from}, and at {leak_to} after {leak_time}. The air presses with "
    "14.7 psi.",
    calculator="pump_check",
    draws={
        "well_caught": ("1.6 gal", "2 gal", "2.4 gal", "4.8 gal", "5 gal", "5.2 gal"),
        "fill_time": grid("30", "60", "2", "s"),
        "leak_from": ("58 psi", "59 psi", "60 psi"),
        "leak_to": ("48 psi", "50 psi", "52 psi", "54 psi", "56 psi"),
        "leak_time": ("20 min", "30 min", "40 min"),
    },
    parts=(
        Part(
            finds="Q",
            ask="What does the pump give?",
            section="What to measure",
            slips=(Slip("That is the time over the water.", "t / V * gal * gpm"),),
        ),
        Part(
            finds="V_l",
            ask="How much water left with everything shut, if the tank is as on its label?",
            section="What to measure",
            tolerance=0.03,
            slips=(
                Slip("Boyle's law needs absolute pressures: add that of the air.", "P_a = 0 * P_a"),
            ),
        ),
        Pick(
            finds="first",
            ask="Water leaves. What else needs work?",
            section="The pump starts and stops all the time",
            options=(
                Option("tank", "The tank: it gives less than half of what it should.", "s_V < 0.5"),
                Option("leak", "Nothing but the leak: the tank gives what it should."),
            ),
            because="What was caught is held against what a sound tank gives.",
        ),
    ),
)

SET = ProblemSet(
    name="well_diagnosis",
    chapter="well/diagnosis.md",
    title="What is wrong: find it by measuring",
    revision="2026-11-25",
    problems=(FACTS, GIVES, LEAK, FIELD),
)
