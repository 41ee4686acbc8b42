"""Problems on the pressure tank and its switch."""

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
    objective="Name how a pressure tank is charged, checked and misread.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "How is a pre-charge read?",
            "with the tank empty of water and the system without pressure",
            ("at cut-out", "with a tap running"),
            "With water in the tank the gauge shows the water's pressure.",
            "Common mistakes",
        ),
        Fact(
            "The switch is raised by 10 psi. What happens to the pre-charge?",
            "it is raised by 10 psi too",
            ("it stays", "it is let off by 10 psi"),
            "It belongs just under cut-in.",
            "Common mistakes",
        ),
        Fact(
            "What does a bigger tank do about low pressure?",
            "nothing: it holds more of the same pressure",
            ("it raises it", "it raises it at night"),
            "Pressure comes from the switch.",
            "Common mistakes",
        ),
        Fact(
            "How much of a tank's size is water that it gives?",
            "about a quarter",
            ("all of it", "nine tenths"),
            "Air fills most of it.",
            "Common mistakes",
        ),
        Fact(
            "The pump starts all night and nobody is awake. What is done first?",
            "shut the main and watch the gauge",
            ("change the tank", "raise the cut-out"),
            "Water leaves without a tap: in the house, or back into the well.",
            "Check yourself",
        ),
    ),
)

DRAWDOWN = Problem(
    name="drawdown",
    form="one-step",
    objective="Compute the drawdown of a pressure tank.",
    level=2,
    minutes=6,
    text="A tank of {well_tank}, pre-charged to {well_precharge}, works between {well_cut_in} and "
    "{well_cut_out} at {altitude} above the sea, where the air presses with about 14.4 psi.",
    calculator="pressure_tank",
    draws={
        "well_tank": grid("14", "86", "2", "gal"),
        "well_precharge": grid("18", "38", "1", "psi"),
        "well_cut_in": ("30 psi", "40 psi"),
        "well_cut_out": grid("50", "65", "5", "psi"),
    },
    fixed={"altitude": "500 ft"},
    parts=(
        Part(
            finds="dV",
            ask="How much water does it give from cut-out to cut-in?",
            section="Work it out",
            slips=(
                Slip("Boyle's law needs absolute pressures: add that of the air.", "P_a = 0 * P_0"),
                Slip("That is the tank rightly charged.", "dV_r"),
                Slip("That is the whole tank. Air fills most of it.", "V_1"),
            ),
        ),
    ),
)

SIZE = Problem(
    name="size",
    form="multi-step",
    objective="Compute run time, shortest cycle and the tank that a pump wants.",
    level=2,
    minutes=10,
    text="Pump 1 gives {well_pump}. The tank of {well_tank} is pre-charged to {well_precharge} and "
    "works between {well_cut_in} and {well_cut_out} at {altitude} above the sea, where the air "
    "presses with about 14.4 psi. The pump should run for {run_least} at the least.",
    calculator="pressure_tank",
    draws={
        "well_pump": grid("5", "15", "0.5", "gpm"),
        "well_tank": ("14 gal", "20 gal", "26 gal", "32 gal", "44 gal", "62 gal"),
        "well_precharge": grid("30", "38", "1", "psi"),
        "run_least": ("1 min", "1.5 min", "2 min"),
    },
    fixed={"altitude": "500 ft"},
    parts=(
        Part(
            finds="dV",
            ask="How much water does it give from cut-out to cut-in?",
            section="Work it out",
            slips=(
                Slip("Boyle's law needs absolute pressures: add that of the air.", "P_a = 0 * P_0"),
            ),
        ),
        Part(
            finds="t_r",
            ask="How long does the pump run, taps closed?",
            section="Work it out",
        ),
        Part(
            finds="t_c",
            ask="What is the shortest time from start to start?",
            section="What starts the pump most often",
            slips=(
                Slip("That is the run with taps closed.", "t_r"),
                Slip("The worst draw is half of what the pump gives: four times.", "2 * t_r"),
            ),
        ),
        Part(
            finds="V_w",
            ask="Which tank, rightly charged, makes the least run time?",
            section="Choose a tank",
            tolerance=0.03,
            slips=(Slip("That is the water it must give, not the tank.", "Q_1 * t_m"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide from a caught drawdown whether a tank is sound.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. With the pump off at the panel "
    "{well_caught} were caught from cut-out at {well_cut_out} down to cut-in at {well_cut_in}. "
    "The tank holds {well_tank}, its label says a pre-charge of {well_precharge}. The air presses "
    "with 14.7 psi. The pump then filled it again, taps shut, in {fill_time}.",
    calculator="pump_check",
    draws={
        "well_caught": grid("1.4", "6", "0.1", "gal"),
        "well_tank": ("20 gal", "26 gal"),
        "fill_time": grid("20", "60", "2", "s"),
    },
    parts=(
        Part(
            finds="V_b",
            ask="What should a sound tank give?",
            section="Work it out",
            slips=(
                Slip("Boyle's law needs absolute pressures: add that of the air.", "P_a = 0 * P_a"),
            ),
        ),
        Part(
            finds="Q",
            ask="What does the pump give?",
            section="Work it out",
            slips=(Slip("That is the time over the water.", "t / V * gal * gpm"),),
        ),
        Pick(
            finds="sound",
            ask="What about the tank?",
            section="What a wrong pre-charge does",
            options=(
                Option(
                    "lost", "It has lost most of its air: look at charge and bag.", "V < 0.5 * V_b"
                ),
                Option("low", "Its charge is off: empty it and read it.", "V < 0.85 * V_b"),
                Option("sound", "It gives about what it should."),
            ),
            because="What was caught is held against what a sound tank gives.",
        ),
    ),
)

SET = ProblemSet(
    name="well_pressure_tank",
    chapter="well/pressure-tank.md",
    title="The pressure tank and its switch",
    revision="2026-11-25",
    problems=(FACTS, DRAWDOWN, SIZE, FIELD),
)
