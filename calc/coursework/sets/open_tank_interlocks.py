"""Problems on interlocks."""

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

_STATES = ("passed", "failed", "untested", "missing")
_SEVERAL = ("blower_proof", "vent_proof", "restart", "high_float", "overflow", "alarm")
_TOLD = (
    "Low-level switch stops pump 2: {low_float}. Blower stopped, inlet shut and pump 2 off: "
    "{blower_proof}. Vent open to the outdoors: {vent}. Vent blocked, blower's switch trips: "
    "{vent_proof}. After a power failure pump 2 waits for the blower: {restart}. Power off, inlet "
    "shuts: {power_failure}. High-level float shuts a second valve: {high_float}. Overflow carries "
    "the whole flow in: {overflow}. Pump 2's check valve holds: {pump_check}. Outlet limit locked "
    "and tagged: {limit_locked}. Alarm heard, and stays on: {alarm}. Bypass shut, locked and "
    "labeled: {bypass}."
)

FACTS = Recall(
    name="facts",
    form="recall",
    objective="Name the way in which a protection must fail.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "A low-level switch opens its contact when the level is low. Its wire is cut. What "
            "must pump 2 do?",
            "stop: no water is the loud way to fail",
            ("run on, so that the house has water", "run at half its speed"),
            "A switch that closes on trouble would take a cut wire for peace.",
            "Check yourself",
        ),
        Fact(
            "Why is a contact of the blower's relay no proof of air?",
            "it shows only that the blower was told to run",
            ("it opens too late", "it carries too little current"),
            "A broken belt, a burnt motor or a loose hose leave it closed.",
            "Check yourself",
        ),
        Fact(
            "Mains come back after a failure. What must start first?",
            "the blower, proven",
            ("pump 2", "the well pump"),
            "Then pump 2.",
            "Check yourself",
        ),
        Fact(
            "How is a low-level float tested?",
            "by moving the float itself",
            ("by the button on the box", "by looking at its lamp"),
            "The button tests the lamp.",
            "Common mistakes",
        ),
        Fact(
            "What keeps the basement dry if the inlet sticks open?",
            "a high-level float on a second valve, and an overflow for the whole flow in",
            ("the first valve's own coil", "the low-level switch"),
            "Two things, and neither hangs on the one that stuck.",
            "Check yourself",
        ),
    ),
)

PLAY = Problem(
    name="play",
    form="one-step",
    objective="Compute what water a low-level lock-out waits for.",
    level=1,
    minutes=2,
    text="The low-level switch stopped pump 2 with {lock_off} over the intake and let it go again "
    "with {lock_on}.",
    calculator="interlock_check",
    draws={
        "lock_off": grid("3", "7", "0.1", "gal"),
        "lock_on": grid("8", "14", "0.1", "gal"),
    },
    parts=(
        Part(
            finds="V_w",
            ask="For how much water does the lock-out wait?",
            section="The tests",
            slips=(
                Slip("It has that much already when it stops.", "V_r"),
                Slip("One is taken off the other.", "V_r + V_l"),
            ),
        ),
    ),
)

COUNT = Problem(
    name="count",
    form="multi-step",
    objective="Read a test sheet: count what protects and what does not.",
    level=2,
    minutes=5,
    text="A test sheet. " + _TOLD,
    calculator="interlock_check",
    draws=dict.fromkeys(_SEVERAL, _STATES),
    parts=(
        Part(
            finds="N_u",
            ask="How many have not been tested?",
            section="The check",
            tolerance="0.4",
            digits=1,
        ),
        Part(
            finds="N_o",
            ask="How many do not act, or are not there?",
            section="The check",
            tolerance="0.4",
            digits=1,
            slips=(Slip("Not tested is not failed: it is not known.", "N_o + N_u"),),
        ),
        Part(
            finds="N_p",
            ask="How many have passed?",
            section="The check",
            tolerance="0.4",
            digits=1,
            slips=(Slip("Only a test passed counts.", "N_p + N_u"),),
        ),
    ),
    keep=lambda case: bool(
        case.answer and case.answer.outputs["open_hazards"] and case.answer.outputs["untested"]
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a house may be left as its test sheet stands.",
    level=3,
    minutes=8,
    text="Invented: the Quarry Road house at Alder Ledge. The switch stopped pump 2 at {lock_off} "
    "and let it go at {lock_on}. " + _TOLD,
    calculator="interlock_check",
    draws={
        "lock_off": grid("3", "6", "0.1", "gal"),
        "lock_on": grid("7", "10", "0.1", "gal"),
        **dict.fromkeys(("blower_proof", "restart"), _STATES[:3]),
    },
    fixed={"vent_proof": "passed", "overflow": "passed", "alarm": "passed"},
    parts=(
        Part(
            finds="N_o",
            ask="How many protections do not act, or are not there?",
            section="The check",
            tolerance="0.4",
            digits=1,
        ),
        Part(
            finds="V_w",
            ask="For how much water does the lock-out wait?",
            section="The tests",
        ),
        Pick(
            finds="leave",
            ask="What now?",
            section="Which first",
            options=(
                Option(
                    "mend", "Something does not act: mend it before the water is used.", "0.5 < N_o"
                ),
                Option(
                    "test",
                    "All that is known acts, but not all is known: test the rest.",
                    "0.5 < N_u",
                ),
                Option("go", "All has passed: lock, tag, and tell the household."),
            ),
            because="What fails comes first, what is not known next.",
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_interlocks",
    chapter="open-tank/interlocks.md",
    title="Interlocks",
    revision="2026-11-25",
    problems=(FACTS, PLAY, COUNT, FIELD),
)
