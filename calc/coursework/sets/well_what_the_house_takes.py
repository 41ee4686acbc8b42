"""Problems on what the house takes."""

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

_SOME = {
    "lavatories": ("1", "2", "3", "4"),
    "toilets": ("1", "2", "3", "4"),
    "tub_showers": ("0", "1", "2"),
    "showers": ("0", "1", "2"),
    "washers": ("0", "1"),
    "dishwashers": ("0", "1"),
    "laundry_sinks": ("0", "1"),
}
_FIXTURES = (
    "{lavatories} bathroom sinks, {toilets} toilets, {tub_showers} tubs with a shower, {showers} "
    "shower stalls, {tubs} tubs without one, {kitchen_sinks} kitchen sink, {dishwashers} "
    "dishwashers, {washers} clothes washers, {laundry_sinks} laundry sinks"
)

FACTS = Recall(
    name="facts",
    form="recall",
    objective="Name what a figure for a house's water stands for.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "What is the figure that a curve of fixture units gives?",
            "a convention, with its own loads",
            ("a measurement of this house", "the sum of all flows"),
            "Curves disagree with each other.",
            "Common mistakes",
        ),
        Fact(
            "Why does counting leave out moments in which nothing runs?",
            "nobody waits in them",
            ("they are too many", "meters do not see them"),
            "Counted, they push the figure down.",
            "Check yourself",
        ),
        Fact(
            "A day's gallons over 1,440 minutes: what does it tell?",
            "what the well must bring",
            ("what the pump must bring", "how large a pipe must be"),
            "The pump meets the peak, the well the day.",
            "Common mistakes",
        ),
        Fact(
            "Which long draws does a table of fixtures leave out?",
            "the hose and the backwash",
            ("the shower and the tub", "the kitchen sink"),
            "They are the two longest.",
            "Common mistakes",
        ),
        Fact(
            "Which rule of a state is quoted?",
            "the one in force where the house stands",
            ("the strictest one known", "any neighbor's"),
            "Rules carry their day.",
            "Common mistakes",
        ),
    ),
)

DAY = Problem(
    name="day",
    form="one-step",
    objective="Compute a house's water in a day, and in a day of watering.",
    level=1,
    minutes=4,
    text="{people} people take {person_day} each. {garden_area} of garden get {garden_depth} a "
    "week on {garden_days} days. {other_day} go elsewhere.",
    calculator="daily_demand",
    draws={
        "people": ("2", "3", "4", "5", "6"),
        "garden_area": grid("500", "2500", "100", "ft²"),
        "garden_days": ("2", "3", "4"),
        "person_day": grid("40", "80", "5", "gal"),
    },
    parts=(
        Part(
            finds="V_h",
            ask="What do the people take in a day?",
            section="How much in a day",
        ),
        Part(
            finds="V_w",
            ask="What does the garden take on a day of watering?",
            section="How much in a day",
            slips=(
                Slip("That is spread over seven days.", "V_g"),
                Slip("That is the week's.", "V_w * n_g"),
                Slip("A foot is twelve inches.", "V_w * 12"),
            ),
        ),
    ),
)

UNITS = Problem(
    name="units",
    form="multi-step",
    objective="Compute the peak of a house by fixture units.",
    level=2,
    minutes=8,
    text="A house has "
    + _FIXTURES
    + "; meanwhile a hose runs at {hose_flow}. Use the curve of the "
    "{curve}, from the chapter or its calculator.",
    calculator="peak_demand",
    draws={**_SOME, "hose_flow": ("2 gpm", "3 gpm", "4 gpm", "5 gpm")},
    fixed={"kitchen_sinks": "1", "tubs": "0"},
    parts=(
        Part(
            finds="units",
            ask="How many fixture units are that?",
            section="How much at once",
            tolerance="0.2",
            digits=2,
        ),
        Part(
            finds="curve_peak",
            ask="Which peak does the curve give, with the hose?",
            section="How much at once",
            tolerance=0.05,
            digits=2,
            slips=(Slip("The hose runs meanwhile.", "curve_peak - Q_x"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide what flow a house must be given.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. It has " + _FIXTURES + "; a hose runs at "
    "{hose_flow}. In {served} moments in which water runs nobody is to wait. Pump 1 gives 9 gpm. "
    "Use the chapter's calculator.",
    calculator="peak_demand",
    draws={**_SOME, "hose_flow": ("0 gpm", "1 gpm", "2 gpm", "3 gpm")},
    fixed={"kitchen_sinks": "1", "tubs": "0"},
    parts=(
        Part(
            finds="counted_peak",
            ask="Which peak does counting give?",
            section="How much at once",
            tolerance=0.03,
            slips=(
                Slip("That is everything open at once. That moment does not come.", "all_open"),
            ),
        ),
        Part(
            finds="all_open",
            ask="And everything open at once?",
            section="How much at once",
            tolerance=0.03,
        ),
        Pick(
            finds="pump",
            ask="Does the pump meet the counted peak by itself?",
            section="What to do with it",
            options=(
                Option("yes", "Yes.", "counted_peak < 9 * gpm"),
                Option("no", "No: the pressure tank or storage must help."),
            ),
            because="The counted peak is held against the pump.",
        ),
    ),
)

SET = ProblemSet(
    name="well_what_the_house_takes",
    chapter="well/what-the-house-takes.md",
    title="What the house takes",
    revision="2026-11-25",
    problems=(FACTS, DAY, UNITS, FIELD),
)
