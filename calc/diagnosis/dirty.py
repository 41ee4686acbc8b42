"""Dirty or colored water."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "Dirty or colored water",
    "Do not drink it until a coliform test is back, above all after rain or a flood.",
    (
        Step(
            "When: after rain, at the start of pumping, at the end of a long draw, or always? "
            "Three glasses: raw at the well, before the open tank, at the tap.",
            (
                Branch(
                    "Raw clear, tap dirty.",
                    "It is made in the house: scale, a filter that sheds, sludge in the open tank.",
                    "Clean the tank: vent running, room aired, pumps locked out. Service the "
                    "filter.",
                    "filter_due",
                    fits=("made_here",),
                ),
                Branch(
                    "Raw dirty in the first minutes of pumping only.",
                    "Sediment that lay in the well, or rust of the drop pipe.",
                    "Note how many minutes. If it grows, a look into the well.",
                    fits=("sediment",),
                ),
                Branch(
                    "Raw dirty after rain.",
                    "Surface water gets in: cap, casing, seal. Germs come with it.",
                    "Coliform test, cap and casing inspected, then disinfection: in this order.",
                    fits=("surface",),
                ),
                Branch(
                    "Raw dirty at the end of a long draw.",
                    "The level falls to where it stirs the bottom, or a screen lets sand through.",
                    "Less flow; sounder; ask a driller about sand.",
                    fits=("stirred",),
                ),
                Branch(
                    "Raw clear, turns brown while it stands.",
                    "Iron, or with black flakes manganese. It was dissolved.",
                    "Water report. Iron fouls an aerator and its filter fast.",
                    "filter_due",
                    fits=("iron",),
                ),
            ),
            name="glasses",
        ),
    ),
    says="The water is dirty.",
    causes={
        "made_here": Cause(
            "It is made in the house: scale, a filter that sheds, sludge in the open tank",
            3,
            "open-tank/filter.md",
        ),
        "sediment": Cause(
            "Sediment that lay in the well, or rust of the drop pipe", 2, "well/pumping-test.md"
        ),
        "surface": Cause("Surface water gets into the well", 2, "well/disinfection.md"),
        "stirred": Cause(
            "The level falls to where it stirs the bottom, or sand comes through",
            1,
            "well/what-it-gives.md",
        ),
        "iron": Cause("Dissolved iron or manganese", 3, "radon/what-else.md"),
    },
)
