"""Problems on pump and pipe."""

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
    objective="Name what a pump works against.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which level does a pump lift from?",
            "the level while it pumps",
            ("the level at rest", "the bottom of the well"),
            "It never sees the level at rest for long.",
            "Common mistakes",
        ),
        Fact(
            "Which pressure decides whether the pump stops?",
            "cut-out",
            ("cut-in", "the pre-charge"),
            "Cut-in decides what it can take from the well.",
            "Common mistakes",
        ),
        Fact(
            "Which bore is reckoned with?",
            "the pipe's own inside diameter, by its kind",
            ("the nominal size", "the outside diameter"),
            "Three-quarter-inch pipe of one kind loses more than twice what another kind does.",
            "Common mistakes",
        ),
        Fact(
            "What does a bigger pump do for a weak well?",
            "it empties it sooner",
            ("it makes it give more", "it keeps its level up"),
            "The well gives what it gives.",
            "Common mistakes",
        ),
        Fact(
            "The flow falls. What is checked before the pump is called worn?",
            "the level, then the volts, then leaks",
            ("the color of the water", "the size of the tank"),
            "Wear is told by head, not by flow alone.",
            "Common mistakes",
        ),
    ),
)

PIPE = Problem(
    name="pipe",
    form="one-step",
    objective="Compute the speed of water in a pipe and what its fittings take.",
    level=2,
    minutes=8,
    text="{loss_flow} run through {pipe_run} of {pipe_kind}, with {elbows} elbows, {tees} tee "
    "turned into, {checks} swing check valve, {gates} gate valve and K {other_k} besides, in water "
    "of {water_coldest}. Use the chapter's calculator for the friction.",
    calculator="pipe_loss",
    draws={
        "loss_flow": grid("4", "12", "0.5", "gpm"),
        "pipe_run": grid("40", "120", "5", "ft"),
        "pipe_kind": ("pe-1", "pe-1.25", "pe-0.75"),
        "elbows": ("6", "8", "10", "12"),
    },
    parts=(
        Part(
            finds="v",
            ask="How fast is the water?",
            section="The pipe first",
            slips=(
                Slip("That takes the bore for a radius.", "D = 2 * D"),
                Slip("That takes half the bore for the bore.", "D = D / 2"),
            ),
        ),
        Part(
            finds="p_l",
            ask="Which pressure is lost?",
            section="The pipe first",
            tolerance=0.04,
            slips=(Slip("That is the pipe alone.", "w * h_f"),),
        ),
    ),
)

ENERGY = Problem(
    name="energy",
    form="multi-step",
    objective="Compute what pumped water costs.",
    level=2,
    minutes=8,
    text="The well pump gives {well_pump} against {pump_head}. Pump {pump_efficiency}, motor "
    "{motor_efficiency}. There is a second pump of {second_head} of head and {second_efficiency}, "
    "wire to water. The house uses {daily_use}; a kilowatt-hour costs {energy_price} dollars.",
    calculator="pump_energy",
    draws={
        "well_pump": grid("6", "12", "0.5", "gpm"),
        "pump_head": grid("150", "350", "10", "ft"),
        "pump_efficiency": ("40 %", "45 %", "50 %", "55 %"),
        "motor_efficiency": ("60 %", "65 %", "70 %"),
        "energy_price": ("0.12", "0.15", "0.20", "0.30"),
    },
    parts=(
        Part(
            finds="P_e",
            ask="What power does the well pump draw?",
            section="What it costs",
            slips=(
                Slip("That is the water's power: the losses come on top.", "P_w"),
                Slip("That is at the shaft: the motor loses too.", "P_s"),
            ),
        ),
        Part(
            finds="E_y",
            ask="How much electricity do both pumps take in a year?",
            section="What it costs",
            slips=(Slip("That is in a day.", "E_y / 365.25"),),
        ),
        Part(
            finds="C_y",
            ask="What does that cost?",
            section="What it costs",
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a pump is worn.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. With the valve after the pump shut the "
    "gauge stood at {shut_off_gauge}, the water {water_below} below it. {well_caught} caught from "
    "cut-out at {well_cut_out} to cut-in at {well_cut_in} were filled again in {fill_time}, taps "
    "shut. Its sheet says {curve_heads} at {curve_flows}. Take 0.4335 psi for each foot of water.",
    calculator="pump_check",
    draws={
        "shut_off_gauge": grid("50", "90", "1", "psi"),
        "water_below": grid("60", "110", "5", "ft"),
        "well_caught": grid("4", "6", "0.2", "gal"),
        "fill_time": grid("30", "60", "2", "s"),
    },
    parts=(
        Part(
            finds="Q",
            ask="What does the pump give?",
            section="Is it worn?",
            slips=(Slip("That is the time over the water.", "t / V * gal * gpm"),),
        ),
        Part(
            finds="H",
            ask="Which head does it make at no flow?",
            section="Is it worn?",
            slips=(
                Slip("The water must be lifted to the gauge too.", "p_s / w"),
                Slip("A psi is 2.31 feet of water.", "p_s / psi * ft + h_n"),
            ),
        ),
        Pick(
            finds="worn",
            ask="By its head at no flow, what is it?",
            section="Is it worn?",
            options=(
                Option("worn", "Worn, or short of volts: under nine tenths.", "s_H < 0.9"),
                Option("sound", "Sound: nine tenths or more."),
            ),
            because="The head at no flow is held against the sheet's.",
        ),
    ),
)

SET = ProblemSet(
    name="well_pump_and_pipe",
    chapter="well/pump-and-pipe.md",
    title="Pump and pipe",
    revision="2026-11-25",
    problems=(FACTS, PIPE, ENERGY, FIELD),
)
