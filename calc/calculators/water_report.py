"""What a laboratory's sheet says: each result beside its levels, and which tests come next."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import INVENTED, MG_L, SHEET, water_fields
from calc.fields.water_fields import on_sheet
from calc.levels import LEVELS, READ, Level, health, nuisance, sources_of, strictest
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.water_report import times_level
from calc.quantity import Kind
from calc.units import concentration, hardness, nitrate, number, share

YEARLY, METALS = "yearly", "no metals"
BINDING = ("enforceable", "action")  # kinds of level that bind a public supply
HARD = 120 * MG_L  # [usgs-hardness]: over it water is hard


class _Parameter(NamedTuple):
    """What is told of one result: its name in a sentence, and what follows from it."""

    word: str
    kind: Kind
    advice: str


PARAMETERS: Mapping[str, _Parameter] = {
    "nitrate": _Parameter(
        "Nitrate",
        nitrate,
        "No bottle for an infant with this water. Boiling makes it stronger. It comes from a "
        "septic field, manure or fertilizer, and germs may come the same way.",
    ),
    "arsenic": _Parameter(
        "Arsenic",
        concentration,
        "It comes from the rock. Boiling does not help. Use other water to drink and cook until "
        "the state's office has advised.",
    ),
    "uranium": _Parameter(
        "Uranium",
        concentration,
        "It harms the kidneys. Where it is, radon and radium often are too.",
    ),
    "lead": _Parameter(
        "Lead",
        concentration,
        "It comes from solder, brass and old pipe more than from the well, and acid water "
        "dissolves it. Children suffer most. Run the tap before you drink, and never make a bottle "
        "with it.",
    ),
    "copper": _Parameter(
        "Copper",
        concentration,
        "It comes from the pipe: the water is acid, or new pipe has no skin yet. It upsets the "
        "stomach.",
    ),
    "fluoride": _Parameter(
        "Fluoride",
        concentration,
        "It stains the teeth of children and in the long run harms bones. Tell the dentist.",
    ),
    "manganese": _Parameter(
        "Manganese",
        concentration,
        "Much of it is bad for an infant's brain, less of it makes black stains. A softener or an "
        "oxidizing filter takes it out.",
    ),
    "iron": _Parameter(
        "Iron",
        concentration,
        "It stains, tastes and clogs. It is no matter of health.",
    ),
    "sodium": _Parameter(
        "Sodium",
        concentration,
        "It matters to people on a diet without salt: ask their doctor. A softener adds more.",
    ),
}


def water_report(
    panel: str,
    coliform: str,
    infant: str,
    nitrate: float,
    arsenic: float,
    uranium: float,
    lead: float,
    copper: float,
    fluoride: float,
    manganese: float,
    total_iron: float,
    sodium: float,
    hardness: float,
    lab_ph: float,
) -> Answer:
    """Which results are at or over which level, and what to test next."""
    metals = {"arsenic": arsenic, "uranium": uranium, "lead": lead, "copper": copper}
    metals["fluoride"] = fluoride
    stains = {"manganese": manganese, "iron": total_iron, "sodium": sodium}
    tested = {"nitrate": nitrate}
    tested |= {} if panel == YEARLY else stains
    tested |= metals if panel == "whole" else {}
    missing = [each for each in PARAMETERS if each not in tested]
    shares = {
        name: times_level(value, strictest(name).value)
        for name, value in tested.items()
        if health(name)
    }
    over = {name: list(_over(name, value)) for name, value in tested.items()}
    sick = [name for name, many in over.items() if any(map(_is_health, many))]
    binding = any(each.kind in BINDING for many in over.values() for each in many)
    ugly = [name for name, many in over.items() if not all(map(_is_health, many))]
    ph_out = not LEVELS["low_ph"][0].value <= lab_ph <= _HIGH_PH
    return Answer(
        outputs={
            "over_health": float(len(sick)),
            "over_nuisance": float(len(ugly) + ph_out),
            "nearest": max(shares.values()),
            "not_tested": float(len(missing) + (coliform == "untested")),
            "nitrate_as_no3": nitrate,
            "hardness_grains": hardness,
        },
        findings=(
            _headline(coliform, bool(sick), binding, bool(missing), bool(ugly) or ph_out),
            *sorted(
                (_told(name, many) for name, many in over.items() if many),
                key=lambda finding: finding.level != "danger",
            ),
            *_others(infant, shares, ph_out, hardness),
            _next(coliform, missing, shares, lab_ph),
        ),
        steps=_steps(panel, shares),
        charts=_charts(tested, shares),
    )


def _over(name: str, value: float) -> Iterator[Level]:
    return (level for level in LEVELS[name] if value >= level.value)


def _is_health(level: Level) -> bool:
    return level.kind != "nuisance"


def _headline(coliform: str, sick: bool, binding: bool, gaps: bool, ugly: bool) -> Finding:
    if coliform == "fecal":
        return Finding(
            "danger",
            "Do not drink this water.",
            "E. coli comes from the bowels of people or animals, and sickness comes with it. Tell "
            "everyone in the house now. Drink bottled water, or water kept at a rolling boil for a "
            "minute where nothing else below is over its level. Call the health department today.",
        )
    if binding:
        return Finding(
            "danger",
            "Ask before you drink it.",
            "A result is at or over a level that law sets for public supplies. Use other water for "
            "drinking and cooking, tell the household, and call the health department. Test again "
            "before anything is bought.",
        )
    if coliform == "total":
        return Finding(
            "caution",
            "Something comes in.",
            "Coliform bacteria live in soil, not in sound wells: rain, a loose cap or a repair let "
            "them in. Boil what you drink, find the way in, disinfect, and test again.",
        )
    return _milder(sick, gaps or coliform == "untested", ugly)


def _milder(sick: bool, gaps: bool, ugly: bool) -> Finding:
    if sick:
        return Finding(
            "caution",
            "Over advised levels.",
            "Results at or over a level that is advised for health, for some people or for a "
            "lifetime: {over_health}. Read below for whom, and ask the health department.",
        )
    if gaps:
        return Finding(
            "caution",
            "Not judged yet.",
            "What was tested is under the levels for health. {not_tested} that can harm were not: "
            "nobody can say that this water is fit to drink.",
        )
    if ugly:
        return Finding(
            "caution",
            "A nuisance, by this sheet.",
            "Nothing on it is at a level for health. {over_nuisance} will stain, taste, scale or "
            "eat at pipe.",
        )
    return Finding(
        "good",
        "Under every level listed.",
        "On that day, in that bottle. Levels looked up in " + READ + ".",
    )


def _told(name: str, many: list[Level]) -> Finding:
    """A result that is at or over levels, each with its figure, its kind and its year."""
    parameter = PARAMETERS[name]
    given = {f"l{i}": Quantity(each.value, _shown(name), 2) for i, each in enumerate(many)}
    listed = [f"{each.body}, {{l{i}}} ({each.words})" for i, each in enumerate(many)]
    return Finding(
        "danger" if any(each.kind in BINDING for each in many) else "caution",
        f"{parameter.word} is at or over a level.",
        f"The sheet says {{{_INPUT.get(name, name)}}}. Levels: {'; '.join(listed)}. "
        f"{parameter.advice}",
        given,
    )


def _shown(name: str) -> Input:
    found = CALCULATOR.input(_INPUT.get(name, name))
    assert isinstance(found, Input)
    return found


def _others(
    infant: str, shares: Mapping[str, float], ph_out: bool, hard: float
) -> Iterator[Finding]:
    for_bottles = [shares.get(name, 0.0) for name in ("nitrate", "manganese", "lead", "arsenic")]
    if infant == "yes" and max(for_bottles) >= 0.5:
        yield Finding(
            "danger",
            "Other water for the bottle.",
            "Nitrate, manganese, lead or arsenic is at half its level for health or more, and "
            "these levels leave an infant little room. Ask the child's doctor, and do not boil it "
            "down.",
        )
    if ph_out:
        yield Finding(
            "caution",
            "pH is out of the usual range.",
            "{lab_ph} on the sheet; 6.5 to 8.5 is US EPA's goal for taste and pipe "
            f"({LEVELS['low_ph'][0].words}). Acid water dissolves copper and lead. "
            "Measure it at the well before you size anything.",
        )
    if hard > HARD:
        yield Finding(
            "caution",
            "Hard water.",
            "{hardness}, {hardness_grains}: scale in the heater and on UV sleeves. There is no "
            "level for health.",
        )


def _next(coliform: str, missing: list[str], shares: Mapping[str, float], lab_ph: float) -> Finding:
    tests = list(_tests(coliform, missing, shares, lab_ph))
    every = (
        "Every year total coliform with E. coli, nitrate, pH and dissolved solids, and the whole "
        "sheet every three years; at once after a flood, a repair, or an illness nobody can "
        "explain [epa-private-wells]."
    )
    if tests:
        return Finding("caution", "Test next.", f"{'. '.join(tests)}. {every}")
    return Finding("good", "Keep testing.", every)


def _tests(
    coliform: str, missing: list[str], shares: Mapping[str, float], lab_ph: float
) -> Iterator[str]:
    if coliform == "untested":
        yield "Total coliform and E. coli, before anything else"
    elif coliform != "absent":
        yield "Germs again a week after the well was disinfected, and once more a month on"
    if missing:
        yield "Not on the sheet: " + ", ".join(PARAMETERS[name].word.lower() for name in missing)
    if max(shares.get("lead", 0.0), shares.get("copper", 0.0)) >= 0.5:
        yield "Lead and copper twice: the first draw after six hours of rest, and a flushed sample"
    if max(shares.get("uranium", 0.0), shares.get("arsenic", 0.0)) >= 0.5:
        yield "Radon, radium and gross alpha, and arsenic again in another season"
    if shares["nitrate"] >= 0.5:
        yield "Nitrate each season, and pesticides where fields are near"
    if lab_ph < 7:
        yield "pH, alkalinity and carbon dioxide at the well itself"


def _steps(panel: str, shares: Mapping[str, float]) -> tuple[Step, ...]:
    """The share of the strictest level for health, for each result that has one."""
    lines = {
        "nitrate": "s_N = C_N / L_N",
        "manganese": "s_Mn = C_Mn / L_Mn",
        "sodium": "s_Na = C_Na / L_Na",
        "arsenic": "s_As = C_As / L_As",
        "uranium": "s_U = C_U / L_U",
        "lead": "s_Pb = C_Pb / L_Pb",
        "copper": "s_Cu = C_Cu / L_Cu",
        "fluoride": "s_F = C_F / L_F",
    }
    nearest = {
        YEARLY: (1, "s = s_N"),
        METALS: (3, "s = max(s_N, s_Mn, s_Na)"),
        "whole": (8, "s = max(s_N, s_Mn, s_Na, s_As, s_U, s_Pb, s_Cu, s_F)"),
    }
    count, last = nearest[panel]
    asked = dict(list(lines.items())[:count])
    found = {
        formula.split()[0]: Quantity(shares[name], share, 4, f"share of {_body(name)}")
        for name, formula in asked.items()
    }
    steps = [
        Step(
            f"{PARAMETERS[name].word}: share of the strictest level for health",
            formula,
            found
            | {formula.split()[-1]: Quantity(strictest(name).value, _shown(name), 3, _body(name))},
        )
        for name, formula in asked.items()
    ]
    return (*steps, Step("Nearest to its level", last, found))


def _body(name: str) -> str:
    return f"level of {strictest(name).body} for {PARAMETERS[name].word.lower()}"


def _charts(tested: Mapping[str, float], shares: Mapping[str, float]) -> tuple[Bars, ...]:
    ugly = {
        name: value / min(level.value for level in nuisance(name))
        for name, value in tested.items()
        if nuisance(name)
    }
    health_bars = Bars(
        title="Results as a share of the strictest level for health",
        says=f"Over 100 % is over that level. Levels looked up in {READ}; none binds a private "
        f"well.",
        like=share,
        bars=tuple(
            Bar(PARAMETERS[name].word, value, f"{strictest(name).body}: {strictest(name).words}")
            for name, value in shares.items()
        ),
    )
    if not ugly:
        return (health_bars,)
    return (
        health_bars,
        Bars(
            title="Results as a share of the level for taste and stains",
            says="Over 100 % people notice it. It does not make them ill.",
            like=share,
            bars=tuple(Bar(PARAMETERS[name].word, value) for name, value in ugly.items()),
        ),
    )


_INPUT = {"iron": "total_iron"}
_HIGH_PH = LEVELS["high_ph"][0].value
_MICRO = MG_L / 1e3
CALCULATOR = Calculator(
    name="water_report",
    title="Reading a laboratory's sheet",
    question="Which results matter for health, which are a nuisance, and what is to be tested "
    "next?",
    inputs=(
        Choice(
            name="panel",
            label="What the sheet has",
            options={
                "whole": "all that is asked below",
                METALS: "all but arsenic, uranium, lead, copper and fluoride",
                YEARLY: "the yearly tests only: germs, nitrate, pH, hardness",
            },
            default="whole",
            origin=INVENTED,
            measure="What was not tested is left out of the answer, whatever stands in its field. "
            "A yearly test costs little and says little.",
            group=SHEET,
        ),
        Choice(
            name="coliform",
            label="Germs",
            options={
                "absent": "total coliform absent",
                "total": "total coliform present, E. coli absent",
                "fecal": "E. coli or fecal coliform present",
                "untested": "not tested",
            },
            default="absent",
            origin=INVENTED,
            measure="Sterile bottle, cold, at the laboratory within the day. Flame or wipe the "
            "tap, and touch nothing inside. A dirty tap finds germs that the well has not.",
            group=SHEET,
        ),
        Choice(
            name="infant",
            label="An infant or a pregnancy in the house",
            options={"no": "no", "yes": "yes, or expected"},
            default="no",
            origin=INVENTED,
            measure="Ask, and say why: nitrate, lead and manganese harm the smallest first.",
            group=SHEET,
        ),
        water_fields.nitrate,
        on_sheet(
            "arsenic",
            "Arsenic",
            "C_As",
            "3 µg/L",
            "Unfiltered. Bedrock wells swing between seasons: take the highest.",
            10000 * _MICRO,
        ),
        on_sheet(
            "uranium",
            "Uranium",
            "C_U",
            "12 µg/L",
            "Some sheets give pCi/L: divide by 0.67 for µg/L of natural uranium, from memory.",
            10000 * _MICRO,
        ),
        on_sheet(
            "lead",
            "Lead, first draw",
            "C_Pb",
            "3 µg/L",
            "One litre, the first that comes after six hours of rest, aerator of the tap left on.",
            10000 * _MICRO,
        ),
        on_sheet(
            "copper",
            "Copper, first draw",
            "C_Cu",
            "0.9 mg/L",
            "The same bottle as for lead. A flushed sample hides the pipe.",
            100 * MG_L,
        ),
        on_sheet(
            "fluoride", "Fluoride", "C_F", "0.4 mg/L", "From the sheet, raw water.", 50 * MG_L
        ),
        water_fields.manganese,
        water_fields.total_iron,
        water_fields.sodium,
        replace(
            water_fields.hardness,
            low=0,
            high=3000 * MG_L,
            measure="From the sheet, as calcium carbonate, or in grains a gallon. Raw water.",
            group=SHEET,
        ),
        water_fields.lab_ph,
    ),
    outputs=(
        Output(
            name="over_health",
            label="Results at or over a level for health",
            kind=number,
            digits=2,
            high=0.5,
            outside="Ask the health department before anybody drinks it.",
        ),
        Output(
            name="over_nuisance",
            label="Results at or over a level for taste and stains",
            kind=number,
            digits=2,
        ),
        Output(
            name="nearest",
            label="Nearest to its level for health, as a share of it",
            symbol="s",
            kind=share,
            digits=2,
        ),
        Output(name="not_tested", label="Not tested, of ten", kind=number, digits=2),
        Output(
            name="nitrate_as_no3",
            label="Nitrate, told as NO3",
            kind=nitrate,
            us="mg/L as NO3",
            si="mg/L as NO3",
        ),
        Output(
            name="hardness_grains",
            label="Hardness in grains",
            kind=hardness,
            us="gpg",
            si="gpg",
        ),
    ),
    work=water_report,
    cautions=(cautions.UNSAFE_WATER, cautions.NO_CERTIFICATE, cautions.LOCAL_CODE),
    sources=("epa-private-wells", "usgs-hardness", *sources_of(*PARAMETERS, "low_ph", "high_ph")),
)
