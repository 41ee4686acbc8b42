"""Problems on sediment and cartridges."""

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
    objective="Explain what a cartridge's drop tells, and when.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "The outlet was set behind a dirty house-side cartridge. What happens at the change?",
            "the outlet opens by itself, and more may leave than enters",
            ("less leaves", "nothing"),
            "Measure and set it again.",
            "Check yourself",
        ),
        Fact(
            "Which cartridge catches iron that comes clear from the well?",
            "one behind the open tank",
            ("one at the well", "any that is fine enough"),
            "Air has made rust of it there.",
            "Check yourself",
        ),
        Fact(
            "A drop is written down without a flow. What is it worth?",
            "nothing: nobody can compare it",
            ("enough, at the same tap", "it shows the life left"),
            "The drop goes with the flow.",
            "Common mistakes",
        ),
        Fact(
            "A cartridge before the pressure switch?",
            "never",
            ("always", "if it is coarse"),
            "The switch would no longer see the tank.",
            "Common mistakes",
        ),
        Fact(
            "Where does the finest element stand?",
            "last",
            ("first", "anywhere"),
            "A finer one fouls sooner: coarse first.",
            "Common mistakes",
        ),
    ),
)

NEW = Problem(
    name="new",
    form="one-step",
    objective="Compute the resistance of an element from two readings.",
    level=1,
    minutes=4,
    text="At {drop_flow} a housing takes {clean_drop} with a new element and {empty_drop} without "
    "one.",
    calculator="cartridge",
    draws={
        "drop_flow": grid("4", "8", "0.2", "gpm"),
        "clean_drop": grid("2.4", "4", "0.1", "psi"),
        "empty_drop": ("0.5 psi", "0.8 psi", "1 psi", "1.2 psi"),
    },
    fixed={"dirty_drop": "12 psi", "dirty_flow": "4 gpm", "spare_drop": "30 psi"},
    parts=(
        Part(
            finds="R_0",
            ask="What is the resistance of the element, in psi for each gpm?",
            section="Measure",
            slips=(
                Slip("The housing's own drop is no part of it.", "R_0 = p_k / Q_k"),
                Slip("Drop over flow, not flow over drop.", "psi ** 2 / gpm ** 2 / R_0"),
            ),
        ),
    ),
)

DIRTY = Problem(
    name="dirty",
    form="multi-step",
    objective="Compute the drop of a new and of a dirty element at another flow.",
    level=2,
    minutes=12,
    text="At {drop_flow} a housing takes {clean_drop} with a new element and {empty_drop} without "
    "one. Today it takes {dirty_drop} at {dirty_flow}. {filter_flow} must pass. The element's drop "
    "goes with the flow, the housing's with its square.",
    calculator="cartridge",
    draws={
        "dirty_drop": grid("4.6", "6", "0.1", "psi"),
        "dirty_flow": grid("4", "5.4", "0.2", "gpm"),
        "filter_flow": grid("6.6", "8", "0.2", "gpm"),
        "clean_drop": ("2.5 psi", "2.8 psi", "3 psi", "3.2 psi"),
    },
    fixed={"spare_drop": "30 psi", "drop_flow": "6 gpm", "empty_drop": "1 psi"},
    parts=(
        Part(
            finds="R_0",
            ask="What is the resistance of the new element?",
            section="Measure",
            slips=(Slip("The housing's own drop is no part of it.", "R_0 = p_k / Q_k"),),
        ),
        Part(
            finds="R_n",
            ask="And that of the element today?",
            section="Measure",
            tolerance=0.03,
            slips=(Slip("The housing's own drop is no part of it.", "R_n = p_d / Q_d"),),
        ),
        Part(
            finds="p_t",
            ask="What does it take today at the flow that must pass?",
            section="The calculator",
            tolerance=0.03,
            slips=(
                Slip("That is the drop at another flow.", "p_d"),
                Slip("That is a new element.", "p_0"),
            ),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether an element is due.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. One housing behind pump 2 took "
    "{clean_drop} at {drop_flow} with its new element, and takes {empty_drop} without one. Today "
    "it takes {dirty_drop} at {dirty_flow}, after {water_passed}; {daily_use} are used. "
    "{filter_flow} must still pass, and {spare_drop} may be lost there. The element's drop goes "
    "with the flow, the housing's with its square.",
    calculator="cartridge",
    draws={
        "dirty_drop": grid("4.4", "7.4", "0.1", "psi"),
        "dirty_flow": grid("4", "5.6", "0.2", "gpm"),
        "spare_drop": ("8 psi", "9 psi", "10 psi", "11 psi"),
    },
    parts=(
        Part(
            finds="R_n",
            ask="What is the resistance of the element today?",
            section="Measure",
            tolerance=0.03,
            slips=(Slip("The housing's own drop is no part of it.", "R_n = p_d / Q_d"),),
        ),
        Part(
            finds="R_m",
            ask="How much may it have at the most?",
            section="The calculator",
            slips=(Slip("The housing's own drop is no part of it.", "R_m = p_s / (Q_f / N)"),),
        ),
        Pick(
            finds="due",
            ask="Is more than half of what it may have used up?",
            section="Worked case",
            options=(
                Option("no", "No: take a third reading in time.", "R_n < R_m / 2"),
                Option("yes", "Yes: lay a new element ready."),
            ),
            because="The resistance today is held against the most that the spare pressure allows.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_cartridges",
    chapter="treatment/cartridges.md",
    title="Sediment and cartridges",
    revision="2026-11-25",
    problems=(FACTS, NEW, DIRTY, FIELD),
)
