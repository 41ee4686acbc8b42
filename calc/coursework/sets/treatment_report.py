"""Problems on reading a laboratory's sheet."""

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
    objective="Name what a laboratory's sheet tells and what it hides.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Nitrate is over its level. Does boiling help?",
            "no, it makes the nitrate stronger",
            ("yes, for an infant too", "yes, if it boils for ten minutes"),
            "Steam leaves, nitrate stays.",
            "Common mistakes",
        ),
        Fact(
            "Total coliform is present, E. coli is absent. What comes first?",
            "find the cap, seal or repair that lets it in",
            ("a lamp", "a fine filter"),
            "Mend, disinfect, test again.",
            "Check yourself",
        ),
        Fact(
            "The sheet says < 1.0. What is typed?",
            "0, if the limit of the method lies well under the level",
            ("1.0 always", "nothing: it was not tested"),
            "The method could not see less.",
            "Units that mislead",
        ),
        Fact(
            "What does the yearly test leave out?",
            "the metals",
            ("nitrate", "germs"),
            "It costs little and says little.",
            "Common mistakes",
        ),
        Fact(
            "Why is no sample taken behind the softener?",
            "it shows the softener, and the charges still balance",
            ("it is too warm", "it has no chlorine"),
            "Hardness is gone, sodium has come.",
            "Common mistakes",
        ),
    ),
)

SHARE = Problem(
    name="share",
    form="one-step",
    objective="Compute how near a result is to its level, whatever its unit.",
    level=1,
    minutes=4,
    text="A sheet says nitrate {nitrate} and arsenic {arsenic}. The levels are 10 mg/L as N and, "
    "the strictest one, 5 µg/L. Nitrate is 4.427 times its nitrogen.",
    calculator="water_report",
    draws={
        "nitrate": grid("12", "42", "1", "mg/L as NO3"),
        "arsenic": grid("1.2", "7.2", "0.1", "µg/L"),
    },
    parts=(
        Part(
            finds="s_N",
            ask="Which share of its level is the nitrate?",
            section="Units that mislead",
            slips=(
                Slip("The sheet means nitrate, the level nitrogen.", "s_N = 4.427 * C_N / L_N"),
                Slip("Turn it over: the result over the level.", "s_N = L_N / C_N"),
            ),
        ),
        Part(
            finds="s_As",
            ask="Which share of its level is the arsenic?",
            section="Four kinds of level",
            slips=(
                Slip("That is against 10 µg/L. Take the strictest level.", "L_As = 2 * L_As"),
                Slip("Turn it over: the result over the level.", "s_As = L_As / C_As"),
            ),
        ),
    ),
)

CHARGES = Problem(
    name="charges",
    form="multi-step",
    objective="Find out by its charges whether a sheet can be right.",
    level=2,
    minutes=12,
    text="A sheet says calcium {calcium}, magnesium {magnesium}, sodium {sodium}, potassium "
    "{potassium}, iron {total_iron}; alkalinity {alkalinity}, chloride {chloride}, sulfate "
    "{sulfate}, nitrate {nitrate}. For one charge, in g/mol: Ca 20.04, Mg 12.15, Na 22.99, K "
    "39.10, Fe 27.92, CaCO3 50.04, Cl 35.45, sulfate 48.03, nitrogen 14.01.",
    calculator="ion_balance",
    draws={
        "calcium": grid("12", "30", "1", "mg/L"),
        "sodium": grid("6", "16", "1", "mg/L"),
        "alkalinity": grid("40", "80", "5", "mg/L as CaCO3"),
        "chloride": grid("8", "30", "2", "mg/L"),
    },
    parts=(
        Part(
            finds="k",
            ask="How many charges do the cations carry, in meq/L?",
            section="Can the sheet be right?",
            slips=(Slip("Calcium carries two charges: halve its weight.", "E_Ca = 2 * E_Ca"),),
        ),
        Part(
            finds="a",
            ask="How many do the anions carry?",
            section="Can the sheet be right?",
            slips=(
                Slip(
                    "Alkalinity is told as calcium carbonate, not as bicarbonate.",
                    "E_A = 61.02 / 50.04 * E_A",
                ),
            ),
        ),
        Part(
            finds="D",
            ask="What is the difference, cations less anions? Give its sign.",
            section="Can the sheet be right?",
            tolerance="0.06 meq/L",
            digits=1,
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide by which pH a bed of stone is sized.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. The meter at the well shows pH {raw_ph}, "
    "the laboratory's sheet {lab_ph}. Alkalinity {alkalinity}, water of {water_temperature}. The "
    "calculator of the chapter may be used.",
    calculator="field_ph",
    draws={
        "raw_ph": grid("5.8", "6.6", "0.1", ""),
        "lab_ph": grid("6.7", "7.3", "0.1", ""),
        "alkalinity": grid("20", "100", "2", "mg/L as CaCO3"),
    },
    parts=(
        Part(
            finds="c_f",
            ask="How much carbon dioxide is in the well's water?",
            section="pH is measured at the well",
            tolerance=0.05,
            slips=(Slip("That is by the sheet. The bottle has lost gas.", "c_l"),),
        ),
        Part(
            finds="f",
            ask="Which share of it was lost on the way?",
            section="pH is measured at the well",
            tolerance=0.05,
            slips=(
                Slip("That is what was left.", "10 ** (pH_w - pH_l)"),
                Slip("pH is a logarithm: one step is ten times.", "1 - pH_w / pH_l"),
            ),
        ),
        Pick(
            finds="size",
            ask="What would come of a bed sized by the sheet?",
            section="pH is measured at the well",
            options=(
                Option(
                    "far", "It would be less than a quarter of what is needed.", "4 * c_l < c_f"
                ),
                Option("some", "It would be too small, but not by so much."),
            ),
            because="Stone is reckoned by the carbon dioxide, and the sheet shows what was left of "
            "it.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_report",
    chapter="treatment/report.md",
    title="Reading the report",
    revision="2026-11-25",
    problems=(FACTS, SHARE, CHARGES, FIELD),
)
