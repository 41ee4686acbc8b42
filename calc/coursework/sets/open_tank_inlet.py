"""Problems on the inlet, as it will be."""

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
    objective="Name what makes the worst hour of an inlet.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "What does the label of an inlet limit not tell?",
            "the least that enters",
            ("the most that enters", "the flow that it is made for"),
            "It bounds from above; a dirty bed or a low gauge lets less enter.",
            "Common mistakes",
        ),
        Fact(
            "What does cold water do to a filter bed?",
            "it takes a fifth to a third more pressure in winter",
            ("nothing: a bed knows no season", "it takes a little less pressure in winter"),
            "Cold water is thicker. Summer tests of a bed flatter.",
            "Common mistakes",
        ),
        Fact(
            "Which gauge do you reckon with at the worst hour?",
            "cut-in of the well pump's switch",
            ("cut-out of the well pump's switch", "the mean of cut-in and cut-out"),
            "Cut-out lasts for seconds.",
            "Common mistakes",
        ),
        Fact(
            "Which water level in the well does the pump see?",
            "the level while it pumps",
            ("the level at rest", "the level that the driller wrote down"),
            "The level at rest is soon gone.",
            "Common mistakes",
        ),
        Fact(
            "What does a bigger well pump do about a dirty filter?",
            "it pays for the dirt with electricity",
            ("it washes the dirt out", "it makes the filter last longer"),
            "The dirt stays where it is.",
            "Common mistakes",
        ),
    ),
)

SPEND = Problem(
    name="least",
    form="one-step",
    objective="Compute the least that an inlet limit passes, by its label.",
    level=1,
    minutes=3,
    text="A pressure-compensating inlet limit, good to 15 % of its label, is for {limit_flow} "
    "from a drop of {limit_drop} on. The well pump starts at {well_cut_in}, the spout lies {rise} "
    "above the gauge. Take 0.433 psi for each foot of water.",
    calculator="inlet_flow",
    draws={
        "limit_flow": grid("5", "9", "0.25", "gpm"),
        "limit_drop": grid("12", "18", "1", "psi"),
        "well_cut_in": grid("34", "50", "2", "psi"),
        "rise": grid("10", "24", "2", "ft"),
    },
    parts=(
        Part(
            finds="Q_m",
            ask="What is the least that it passes, by its label?",
            section="Why the worst hour is worse than you think",
            slips=(
                Slip("That is what the label says, not the least of it.", "Q_l"),
                Slip("The least is 15 % under the label, not over it.", "Q_l * 1.15"),
                Slip("That is what is taken off, not what is left.", "Q_l * 0.15"),
            ),
        ),
        Part(
            finds="p_t",
            ask="How much pressure is there to spend at cut-in?",
            section="Why the worst hour is worse than you think",
            slips=(
                Slip("The lift is missing.", "p_c"),
                Slip("A foot of water is 0.433 psi, not one.", "p_c - h / ft * psi"),
                Slip("The water is lifted: that is taken off.", "p_c + w * h"),
            ),
        ),
    ),
)

WHICH = Problem(
    name="cold",
    form="multi-step",
    objective="Compute the flow in through a dirty bed, and compare it with the clean one.",
    level=3,
    minutes=15,
    text="The filter bed has {bed_clean} clean and {bed_dirty} when it is serviced at the latest, "
    "in water of {water_now}; the water gets as cold as {water_coldest}. The inlet limit passes, "
    "good to 15 %, {limit_flow} from {limit_drop} on. {pipe_length} of {pipe_bore} pipe with "
    "fittings of K {fittings} lead to a spout {rise} above the gauge. The well pump, rated "
    "{well_pump_flow} at {well_pump_head}, starts at {well_cut_in} and stops at {well_cut_out}, "
    "the lowest water lies {well_level} below the gauge. Use the chapter's calculator.",
    calculator="inlet_flow",
    draws={
        "bed_clean": grid("0.4", "0.8", "0.1", "psi/gpm"),
        "bed_dirty": grid("3", "5", "0.2", "psi/gpm"),
        "limit_flow": grid("6", "8", "0.5", "gpm"),
        "rise": grid("4", "12", "2", "ft"),
    },
    parts=(
        Part(
            finds="worst_inlet",
            ask="What is the worst flow in?",
            section="Work it out",
            slips=(
                Slip("That is with a clean filter.", "inlet_clean"),
                Slip("That is the best hour: clean, and at cut-out.", "best_inlet"),
            ),
        ),
        Part(
            finds="best_inlet",
            ask="And the best, just after service, at cut-out, with water as today?",
            section="Work it out",
            slips=(Slip("That is the worst.", "worst_inlet"),),
        ),
    ),
    keep=lambda case: bool(case.answer and case.answer.outputs["worst_inlet"]),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide what an outlet of a given flow meets at the inlet's worst hour.",
    level=3,
    minutes=15,
    text="Invented: the Quarry Road house at Alder Ledge. Bed {bed_clean} clean, {bed_dirty} at "
    "service, water {water_now} today and {water_coldest} at its coldest; limit {limit_flow} from "
    "{limit_drop}, good to 15 %; {pipe_length} of {pipe_bore} pipe, K {fittings}, spout {rise} "
    "up; pump {well_pump_flow} at {well_pump_head}, cut-in {well_cut_in}, cut-out {well_cut_out}, "
    "water {well_level} down. The owner has set the outlet to 5 gpm on a day after service. Use "
    "the chapter's calculator.",
    calculator="inlet_flow",
    draws={
        "bed_clean": grid("0.3", "0.7", "0.05", "psi/gpm"),
        "bed_dirty": grid("2.4", "5.2", "0.2", "psi/gpm"),
        "well_cut_in": grid("34", "46", "2", "psi"),
        "rise": grid("4", "10", "1", "ft"),
    },
    parts=(
        Part(
            finds="worst_inlet",
            ask="What enters at the worst hour?",
            section="Work it out",
            slips=(Slip("That is with a clean filter.", "inlet_clean"),),
        ),
        Pick(
            finds="sure",
            ask="Is the tank sure to keep its water?",
            section="Worked case",
            options=(
                Option("yes", "Yes: more enters at worst than leaves.", "5 * gpm < worst_inlet"),
                Option("no", "No: more can leave than enters."),
            ),
            because="The outlet is held against the worst inlet, not against today's.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_inlet",
    chapter="open-tank/inlet.md",
    title="The inlet, as it will be",
    revision="2026-11-25",
    problems=(FACTS, SPEND, WHICH, FIELD),
)
