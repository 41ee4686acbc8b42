"""Problems on the outlet, as it can be."""

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
    objective="Name the pressure at which an outlet limit is at its worst.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "A limit sits before the house pressure tank. When does it pass most?",
            "with the pressure tank empty",
            ("with the pressure tank at cut-out", "with every tap shut"),
            "Least pressure then stands against it.",
            "Common mistakes",
        ),
        Fact(
            "A limit sits after the house pressure tank. When does it pass most?",
            "with the pressure tank at cut-out",
            ("with the pressure tank empty", "just before pump 2 starts"),
            "The tank's pressure drives it.",
            "Common mistakes",
        ),
        Fact(
            "Why is a quarter-turn valve a poor throttle?",
            "all of its setting lies in its last few degrees",
            ("it passes nothing until it is half open", "it cannot be shut under pressure"),
            "Each degree of the handle moves the flow by several per cent there.",
            "Common mistakes",
        ),
        Fact(
            "What is a compensating device under its threshold?",
            "a plain hole",
            ("a closed valve", "a check valve"),
            "It needs pressure to hold the flow.",
            "Common mistakes",
        ),
        Fact(
            "How does the flow of a worn valve seat move?",
            "it creeps up",
            ("it creeps down", "it stays as set"),
            "So the setting is proved again, and the tag says when.",
            "Common mistakes",
        ),
        Fact(
            "Why is a limit not measured through a tap?",
            "the tap is part of what is then measured",
            ("the tap is always dirty", "the tap's flow is too small for a pail"),
            "A burst pipe or a tub spout takes less than a tap.",
            "Common mistakes",
        ),
    ),
)

AFTER = Problem(
    name="empty",
    form="one-step",
    objective="Compute what a throttle before the pressure tank passes with that tank empty.",
    level=2,
    minutes=5,
    text="A throttled valve sits before the house pressure tank. You caught {outlet} from an open "
    "full-size pipe while the house gauge stood steady at {house_gauge}. Against a closed valve "
    "pump 2 reaches {pump_shut_off}.",
    calculator="outlet_limit",
    draws={
        "outlet": grid("3.5", "6", "0.1", "gpm"),
        "house_gauge": grid("25", "44", "1", "psi"),
        "pump_shut_off": grid("60", "75", "1", "psi"),
    },
    parts=(
        Part(
            finds="p_d",
            ask="What pressure drove the flow in the test?",
            section="Bring the pail to the worst",
            slips=(
                Slip("The house gauge stands against the flow.", "p_t"),
                Slip("The two stand against each other.", "p_0 + p_t"),
            ),
        ),
        Part(
            finds="Q_x",
            ask="What does it pass with the pressure tank empty?",
            section="Bring the pail to the worst",
            slips=(
                Slip("Flow goes with the square root of the pressure.", "Q_x = Q_o * p_x / p_d"),
                Slip("That is what you caught; an empty tank lets more pass.", "Q_o"),
                Slip("The ratio is turned over.", "Q_x = Q_o * sqrt(p_d / p_x)"),
            ),
        ),
    ),
)

VALVE = Problem(
    name="valve",
    form="multi-step",
    objective="Compute the flow coefficient of a valve, and the hole that would do the same.",
    level=2,
    minutes=8,
    text="A valve of {valve_bore} inside is to pass {wanted_flow} with {valve_before} before it "
    "and {valve_after} behind it.",
    calculator="valve_setting",
    draws={
        "valve_bore": ("0.622 in", "0.824 in"),
        "wanted_flow": grid("4", "8", "0.2", "gpm"),
        "valve_before": grid("40", "60", "2", "psi"),
        "valve_after": grid("2", "20", "2", "psi"),
    },
    parts=(
        Part(
            finds="C",
            ask="Which flow coefficient must it have?",
            section="Set the valve",
            slips=(
                Slip("Divide by the root of the drop.", "Q / (p_1 - p_2) * sqrt(psi)"),
                Slip("The pressure behind it stands against the flow.", "C = Q / sqrt(p_1)"),
            ),
        ),
        Part(
            finds="d",
            ask="Which hole in a disk, of a sharp edge (0.61), does the same?",
            section="Set the valve",
            slips=(Slip("That is its radius.", "d / 2"),),
        ),
    ),
    keep=lambda case: bool(case.answer and case.answer.outputs["hole"]),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide between a plain throttle and a compensating device.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. The limit had to be put after the house "
    "pressure tank. From an open full-size pipe {outlet} came while the gauge stood at "
    "{house_gauge}; pump 2 stops at {cut_out}. At worst 5.5 gpm enter the open tank.",
    calculator="outlet_limit",
    draws={
        "outlet": grid("4", "5.4", "0.1", "gpm"),
        "house_gauge": grid("32", "46", "1", "psi"),
        "cut_out": grid("50", "70", "2", "psi"),
    },
    fixed={"limit": "after"},
    parts=(
        Part(
            finds="Q_x",
            ask="What can leave at worst through a plain throttle so set?",
            section="Bring the pail to the worst",
            slips=(
                Slip("Flow goes with the square root of the pressure.", "Q_x = Q_o * p_x / p_d"),
                Slip("That is what you caught; cut-out drives more.", "Q_o"),
            ),
        ),
        Part(
            finds="s",
            ask="How much more is that than you caught, in per cent?",
            section="Bring the pail to the worst",
            tolerance="0.6 %",
            digits=2,
            slips=(Slip("That is the whole of it, not the more.", "Q_x / Q_o"),),
        ),
        Pick(
            finds="enough",
            ask="Is that flow less than what enters at worst?",
            section="Bring the pail to the worst",
            options=(
                Option("yes", "Yes.", "Q_x < 5.5 * gpm"),
                Option("no", "No: more can leave than enters."),
            ),
            because="The worst out is held against the worst in.",
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_outlet",
    chapter="open-tank/outlet.md",
    title="The outlet, as it can be",
    revision="2026-11-25",
    problems=(FACTS, AFTER, VALVE, FIELD),
)
