"""Whether a laboratory's sheet can be right: charges, conductivity, solids and hardness."""

from collections.abc import Iterator
from dataclasses import replace

from calc import cautions, fields
from calc.charts import Bar, Bars
from calc.fields import MG_L, SHEET, water_fields
from calc.fields.water_fields import on_sheet
from calc.levels import LEVELS
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.carbonate import CACO3_EQUIVALENT
from calc.physics.water_report import (
    DRIED,
    IONS,
    NITRATE_FOR_NITROGEN,
    Balance,
    allowed_difference,
    balance,
    charges,
    dissolved_solids,
    ionic_strength,
    strength_of_conductivity,
    strength_of_solids,
)
from calc.physics.water_report import hardness as hardness_of
from calc.units import (
    concentration,
    conducted,
    conductivity,
    equivalents,
    hardness,
    ion_amount,
    molar_mass,
    number,
    share,
    solids_share,
)

# Where a good sheet lies, [standard-methods] 1030 E.
_PER = MG_L / 1e-4  # mg/L for each µS/cm
LEAST_SOLIDS, MOST_SOLIDS = 0.55 * _PER, 0.70 * _PER
LEAST_CHARGES, MOST_CHARGES = 0.9, 1.1
HARDNESS_GAP = 0.05  # from memory, as a share
DILUTE = 1.0  # charges under which hardness and conductivity scatter, meq/L: common practice


def ion_balance(
    calcium: float,
    magnesium: float,
    sodium: float,
    potassium: float,
    total_iron: float,
    alkalinity: float,
    chloride: float,
    sulfate: float,
    nitrate: float,
    silica: float,
    hardness: float,
    solids: float,
    water_conductivity: float,
) -> Answer:
    """The charges of the sheet, and each test that it can be put to."""
    sheet = {
        "calcium": calcium,
        "magnesium": magnesium,
        "sodium": sodium,
        "potassium": potassium,
        "iron": total_iron,
        "alkalinity": alkalinity,
        "chloride": chloride,
        "sulfate": sulfate,
        "nitrate": nitrate,
    }
    found = balance(sheet)
    allowed = allowed_difference(found)
    counted = hardness_of(calcium, magnesium)
    charge_ratio = found.cations / (water_conductivity / 1e-4) * 100
    outputs: dict[str, float | None] = {
        "cations": found.cations,
        "anions": found.anions,
        "balance_error": found.error,
        "charges_apart": found.cations - found.anions,
        "allowed": allowed,
        "counted_hardness": counted,
        "counted_solids": dissolved_solids(sheet, silica),
        "solids_ratio": solids / water_conductivity,
        "charge_ratio": charge_ratio,
        "strength": ionic_strength(sheet),
        "strength_by_solids": strength_of_solids(solids),
        "strength_by_conductivity": strength_of_conductivity(water_conductivity),
    }
    findings = (
        _headline(found, allowed),
        *_doubts(found, solids / water_conductivity, charge_ratio, counted, hardness),
        *_nuisances({"chloride": chloride, "sulfate": sulfate, "solids": solids}),
    )
    return Answer(outputs, findings, _steps(found), (_chart(sheet),))


def _headline(found: Balance, allowed: float) -> Finding:
    if abs(found.cations - found.anions) <= allowed:
        return Finding(
            "good",
            "The charges balance.",
            "Cations and anions differ by {charges_apart}, and a good laboratory may be {allowed} "
            "off. Two mistakes can still hide each other.",
        )
    if found.cations > found.anions:
        return Finding(
            "caution",
            "Anions are missing.",
            "{charges_apart} more cations than anions. Often an anion was not asked for, "
            "alkalinity was read low, nitrate was taken for nitrate-N, or iron was counted that "
            "is rust.",
        )
    return Finding(
        "caution",
        "Cations are missing.",
        "{charges_apart}: fewer cations than anions. Often sodium or potassium was not asked for, "
        "calcium fell out in the bottle, alkalinity is told as bicarbonate, or the sample was "
        "taken behind a softener for one bottle and before it for the other.",
    )


def _doubts(
    found: Balance, solids_ratio: float, charge_ratio: float, counted: float, told: float
) -> Iterator[Finding]:
    soft = min(found.cations, found.anions) < DILUTE
    gap = abs(counted - told) / max(counted, told, 1e-12)
    if gap > HARDNESS_GAP and abs(counted - told) > 2 * MG_L:
        yield Finding(
            "caution",
            "Hardness does not fit.",
            "Calcium and magnesium make {counted_hardness}, the sheet says {hardness}. One of them "
            "is told in another unit, or iron was counted as hardness.",
        )
    if not LEAST_SOLIDS <= solids_ratio <= MOST_SOLIDS:
        yield Finding(
            "caution",
            "Solids and conductivity do not fit.",
            "{solids_ratio}: a good sheet has 0.55 to 0.70. Silica and loose clay raise it, acid "
            "lowers it; far off, one of them is wrong.",
        )
    if not (soft or LEAST_CHARGES <= charge_ratio <= MOST_CHARGES):
        yield Finding(
            "caution",
            "Charges and conductivity do not fit.",
            "{charge_ratio}: a hundred times the cations over conductivity is 0.9 to 1.1 on a good "
            "sheet. Which side it lies on says whether a cation is wrong or the conductivity.",
        )
    if soft:
        yield Finding(
            "good",
            "Very soft: judge by the difference.",
            "With less than 1 meq/L an error of 5 to 10 % is usual. Go by {charges_apart} against "
            "{allowed}.",
        )


def _nuisances(results: dict[str, float]) -> Iterator[Finding]:
    words = {"chloride": "Chloride", "sulfate": "Sulfate", "solids": "Dissolved solids"}
    for name, value in results.items():
        (level,) = LEVELS[name]
        if value >= level.value:
            yield Finding(
                "caution",
                f"{words[name]} at or over a level.",
                f"{{{name}}}; {level.body}: {{level}} ({level.words}).",
                {"level": Quantity(level.value, concentration)},
            )


def _steps(found: Balance) -> tuple[Step, ...]:
    weights = {"calcium": "E_Ca", "magnesium": "E_Mg", "sodium": "E_Na", "potassium": "E_K"}
    weights |= {"iron": "E_Fe", "alkalinity": "E_A", "chloride": "E_Cl", "sulfate": "E_S"}
    weights |= {"nitrate": "E_N"}
    given = {
        letter: Quantity(IONS[name].equivalent, molar_mass, 5, f"mass of one charge of {name}")
        for name, letter in weights.items()
    }
    given |= {
        "d": Quantity(DRIED, number, 3, "what is left of alkalinity when dried"),
        "n": Quantity(NITRATE_FOR_NITROGEN, number, 4, "nitrate for its nitrogen"),
        "e": Quantity(CACO3_EQUIVALENT, molar_mass, 5, "calcium carbonate for one charge"),
        "h": Quantity(0.01, conducted, 3, "what one meq/L of each sort conducts"),
    }
    cations = "k = c_Ca / E_Ca + C_Mg / E_Mg + C_Na / E_Na + C_K / E_K + C_Fe / E_Fe"
    anions = "a = A_k / E_A + C_Cl / E_Cl + C_S / E_S + C_N / E_N"
    twice = "I = (k + a + c_Ca / E_Ca + C_Mg / E_Mg + C_Fe / E_Fe + C_S / E_S) / 2"
    solids = "S = d * A_k + c_Ca + C_Mg + C_Na + C_K + C_Fe + C_Cl + C_S + n * C_N + C_Si"
    return (
        Step("Charges of the cations", cations, given),
        Step("Charges of the anions", anions, given),
        Step("Difference", "D = k - a"),
        Step("Error", "B = D / (k + a)"),
        *_allowance(found),
        Step("Hardness of calcium and magnesium", "H = (c_Ca / E_Ca + C_Mg / E_Mg) * e", given),
        Step("Solids of the parts", solids, given),
        Step("Solids over conductivity", "R = s / G"),
        Step("A hundred times the cations over conductivity", "Z = h * k / G", given),
        Step("Ionic strength: two charges count twice", twice, given),
    )


def _allowance(found: Balance) -> tuple[Step, ...]:
    """The step that gives the difference allowed, where it is no constant."""
    rate = Quantity(0.02 if found.anions <= 10 else 0.05, share, 2, "allowed of all charges")
    if found.anions <= 3:
        constant = {"w": Quantity(0.2, equivalents, 2, "allowed up to 3 meq/L of anions")}
        return (Step("Difference allowed [standard-methods]", "W = w", constant),)
    return (Step("Difference allowed [standard-methods]", "W = w * (k + a)", {"w": rate}),)


def _chart(sheet: dict[str, float]) -> Bars:
    bars = [
        Bar(name.capitalize(), charges(name, value), "+" if IONS[name].charge > 0 else "-")
        for name, value in sheet.items()
    ]
    return Bars(
        title="Charges of the sheet, ion by ion",
        says="Those with a plus and those with a minus should add up to the same.",
        like=equivalents,
        bars=tuple(bars),
    )


def _amount(name: str, label: str, symbol: str, *, digits: int = 3) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=equivalents, digits=digits)


CALCULATOR = Calculator(
    name="ion_balance",
    title="Is the sheet credible?",
    question="Do the figures of this sheet fit each other?",
    inputs=(
        on_sheet(
            "calcium",
            "Calcium in the water",
            "c_Ca",
            "13 mg/L",
            "As calcium, Ca. If the sheet gives calcium hardness, divide by 2.497.",
            2000 * MG_L,
            sure="5 %",
        ),
        on_sheet(
            "magnesium",
            "Magnesium",
            "C_Mg",
            "3 mg/L",
            "As magnesium, Mg. If the sheet gives magnesium hardness, divide by 4.118.",
            2000 * MG_L,
            sure="5 %",
        ),
        water_fields.sodium,
        on_sheet(
            "potassium",
            "Potassium",
            "C_K",
            "1.2 mg/L",
            "Little in most wells. 0 where the sheet has none.",
            1000 * MG_L,
        ),
        water_fields.total_iron,
        replace(
            water_fields.alkalinity,
            low=1 * MG_L,
            high=2000 * MG_L,
            group=SHEET,
            sure="5 %",
            measure="As calcium carbonate. If the sheet gives bicarbonate, multiply it by 0.820.",
        ),
        on_sheet(
            "chloride",
            "Chloride",
            "C_Cl",
            "12 mg/L",
            "Road salt and a softener's brine raise it.",
            10000 * MG_L,
            sure="5 %",
        ),
        on_sheet(
            "sulfate",
            "Sulfate",
            "C_S",
            "9 mg/L",
            "As sulfate, SO4. If the sheet gives sulfur, multiply by 2.996.",
            5000 * MG_L,
            sure="5 %",
        ),
        water_fields.nitrate,
        on_sheet(
            "silica",
            "Silica",
            "C_Si",
            "12 mg/L",
            "As SiO2. Sheets leave it out; rock gives 10 to 30. It bears no charge.",
            200 * MG_L,
        ),
        replace(
            water_fields.hardness,
            low=0,
            high=3000 * MG_L,
            group=SHEET,
            sure="5 %",
            measure="Total hardness as the sheet gives it, as calcium carbonate.",
        ),
        replace(water_fields.solids, group=SHEET, sure="10 %"),
        Input(
            name="water_conductivity",
            label="Conductivity",
            symbol="G",
            kind=conductivity,
            default="135 µS/cm",
            origin=fields.INVENTED,
            low=1e-3,
            high=2.0,
            measure="At 25 °C, or by a meter that corrects to it. Calibrate with the standard that "
            "lies nearest.",
            group=SHEET,
            sure="5 %",
        ),
    ),
    outputs=(
        _amount("cations", "Charges of the cations", "k", digits=4),
        _amount("anions", "Charges of the anions", "a", digits=4),
        Output(
            name="balance_error", label="Error of the balance", symbol="B", kind=share, digits=2
        ),
        _amount("charges_apart", "Cations less anions", "D"),
        _amount("allowed", "Difference allowed", "W", digits=2),
        Output(
            name="counted_hardness",
            label="Hardness of calcium and magnesium",
            symbol="H",
            kind=hardness,
        ),
        Output(name="counted_solids", label="Solids of the parts", symbol="S", kind=concentration),
        Output(
            name="solids_ratio",
            label="Solids over conductivity",
            symbol="R",
            kind=solids_share,
            low=LEAST_SOLIDS,
            high=MOST_SOLIDS,
            outside="A good sheet has 0.55 to 0.70.",
        ),
        Output(
            name="charge_ratio",
            label="A hundred times the cations over conductivity",
            symbol="Z",
            kind=number,
        ),
        Output(name="strength", label="Ionic strength", symbol="I", kind=ion_amount),
        Output(
            name="strength_by_solids",
            label="Ionic strength guessed from solids",
            kind=ion_amount,
            digits=2,
        ),
        Output(
            name="strength_by_conductivity",
            label="Ionic strength guessed from conductivity",
            kind=ion_amount,
            digits=2,
        ),
    ),
    work=ion_balance,
    cautions=(cautions.NO_CERTIFICATE, cautions.LOCAL_CODE),
    sources=("standard-methods", "langelier-1936", "russell-1976", "cfr-143-3"),
)
