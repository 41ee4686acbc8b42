"""What a treatment takes out, how sure that is, and whether the target is met."""

from math import hypot
from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import INVENTED, RADON, radon_fields
from calc.model import Answer, Calculator, Choice, Finding, Output, Quantity, Step
from calc.physics.removal import removal, removal_doubt, removal_needed
from calc.units import radon, share

# A bedrock well through a year: 35 620 ± 6 717 pCi/L, one standard deviation [kinner-1990].
SWINGS = 1.96 * 6717 / 35620


class _Pair(NamedTuple):
    taken: float
    doubt: float
    most: float
    least: float


def radon_removal(
    raw_radon: float,
    treated_radon: float,
    treated_seen: str,
    pair: str,
    target_radon: float,
    raw_radon_sure: float,
    treated_radon_sure: float,
) -> Answer:
    """Removal from one pair of samples, with its plus-or-minus, against the target."""
    swings = SWINGS if pair == "apart" else 0.0
    raw_share = hypot(raw_radon_sure, swings)
    raw_doubt = raw_share * raw_radon
    treated_doubt = treated_radon_sure * treated_radon if treated_seen == "found" else 0.0
    taken = removal(raw_radon, treated_radon)
    doubt = removal_doubt(raw_radon, treated_radon, raw_doubt, treated_doubt)
    found = _Pair(
        taken, doubt, treated_radon + treated_doubt, max(treated_radon - treated_doubt, 0.0)
    )
    given = {
        "u_1": Quantity(raw_share, share, label="doubt of the raw water, as a share"),
        "U_2": Quantity(treated_doubt, radon, label="doubt of the treated water"),
    }
    return Answer(
        outputs={
            "removal": taken,
            "removal_doubt": doubt,
            "needed": removal_needed(raw_radon, target_radon),
            "treated_most": found.most,
            "target_margin": target_radon - found.most,
        },
        findings=_findings(found, raw_radon, target_radon, treated_seen, pair),
        steps=(
            Step("Taken out", "R = 1 - C_w / C_r", given),
            Step("Plus or minus", "U = sqrt((C_w * u_1 / C_r)**2 + (U_2 / C_r)**2)", given),
            Step("Needed", "R_t = 1 - C_t / C_r", given),
            Step("At most left", "C_u = C_w + U_2", given),
            Step("Margin", "M = C_t - C_u"),
        ),
        charts=(
            Bars(
                title="Before, after and the target",
                says="The bar of the treated water ends at its upper end.",
                like=radon_fields.raw_radon,
                bars=(
                    Bar("raw water", raw_radon),
                    Bar("treated water, at most", found.most),
                    Bar("target", target_radon),
                ),
            ),
        ),
    )


def _findings(found: _Pair, raw: float, target: float, seen: str, pair: str) -> tuple[Finding, ...]:
    findings = [_headline(found, raw, target, seen)]
    if pair == "apart":
        findings.append(
            Finding(
                "caution",
                "Not a pair.",
                "The two were drawn on different days. One bedrock well swung by {swing} of its "
                "mean through a year [kinner-1990]; that is counted in.",
                {"swing": Quantity(SWINGS, share, 2)},
            )
        )
    findings.append(
        Finding(
            "caution",
            "Water is not air.",
            "A unit can take all radon out of the water and blow it into the basement. Test the "
            "air, long-term, in the room of the unit and where people sleep.",
        )
    )
    return tuple(findings)


def _headline(found: _Pair, raw: float, target: float, seen: str) -> Finding:
    at_least = "at least " if seen == "less" else ""
    took = f"It takes out {at_least}{{removal}}, give or take {{removal_doubt}}. "
    if found.taken <= 0:
        return Finding(
            "danger",
            "No removal.",
            "The treated water holds as much as the raw water or more: {treated_radon} against "
            "{raw_radon}. Vials swapped, bypass open, blower off, or a bed that gives back.",
        )
    if found.most <= target:
        return Finding(
            "good",
            "Meets the target.",
            took + "Even at its upper end the treated water, {treated_most}, is under "
            "{target_radon}.",
        )
    if found.least <= target:
        return Finding(
            "caution",
            "Too close to tell.",
            took
            + "The target lies within the doubt of {treated_radon}. Draw more pairs, or a more "
            "exact count.",
        )
    return Finding(
        "danger",
        "Misses the target.",
        took + "{needed} would be needed to reach {target_radon}.",
    )


CALCULATOR = Calculator(
    name="radon_removal",
    title="Removal, before and after",
    question="How much radon does the treatment take out, and does it meet the target?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.treated_radon,
        Choice(
            name="treated_seen",
            label="What the report says of the treated water",
            options={"found": "a figure", "less": "less than this figure"},
            default="found",
            origin=INVENTED,
            measure="A report of '< 100' is no zero: put 100 in the field and choose 'less than'.",
            group=RADON,
            once=False,
        ),
        Choice(
            name="pair",
            label="When the two were drawn",
            options={"hour": "within the hour", "apart": "on different days"},
            default="hour",
            origin=INVENTED,
            measure="From the two forms.",
            group=RADON,
            once=False,
        ),
        radon_fields.target_radon,
    ),
    outputs=(
        Output(name="removal", label="Removal", symbol="R", kind=share, digits=4),
        Output(
            name="removal_doubt",
            label="Plus or minus, 19 times in 20",
            symbol="U",
            kind=share,
            digits=2,
        ),
        Output(
            name="needed",
            label="Removal that the target needs",
            symbol="R_t",
            kind=share,
            digits=4,
        ),
        Output(name="treated_most", label="Treated water, upper end", symbol="C_u", kind=radon),
        Output(
            name="target_margin",
            label="Margin: target less upper end",
            symbol="M",
            kind=radon,
            low=0.0,
            outside="The target is not surely met.",
        ),
    ),
    work=radon_removal,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.RADON_HEALTH,
        cautions.LOCAL_CODE,
    ),
    sources=("jcgm-100", "kinner-1990", "mw-rn-2020", "epa-1999-proposal"),
)
