"""Which cause it is likely to be, and which measurement tells most: Bayes' rule on one table.

The table is the symptom itself: each cause with its weight, each reading with the causes it fits.
Readings are taken as independent of each other once the cause is given. One cause at a time.
"""

from collections.abc import Container, Mapping
from math import log2

from calc.diagnosis.path import Branch, Step, Symptom

ENOUGH = 0.8  # of the chance on one cause: then it is named. Judgement
LEAST_GAIN = 0.05  # bits; a measurement that tells less is not worth the walk. Judgement

type Seen = Mapping[str, int]


def likelihood(step: Step, reading: int, cause: str) -> float:
    """Chance of a reading if that is the cause.

        P(reading | cause) = s / k where it fits, (1 - s) / (n - k) where it does not

    n readings, of which k fit the cause, each set of them with the step's sureness s. A step
    that fits a cause nowhere says nothing about it: 1 / n.

    >>> from calc.diagnosis.path import Branch
    >>> step = Step("Gauge", (Branch("falls", "", "", fits=("leak",)), Branch("stands", "", "")))
    >>> likelihood(step, 0, "leak"), round(likelihood(step, 1, "leak"), 2)
    (0.9, 0.1)

    Source: plain probability; the sureness is judgement.
    """
    n = len(step.branches)
    fits = sum(cause in branch.fits for branch in step.branches)
    if fits in (0, n):
        return 1 / n
    if cause in step.branches[reading].fits:
        return step.sure / fits
    return (1 - step.sure) / (n - fits)


def chances(symptom: Symptom, seen: Seen) -> dict[str, float]:
    """Chance of each cause after what was seen: step's name -> place of the reading."""
    steps = {step.name: step for step in symptom.steps}
    odds = {name: cause.weight for name, cause in symptom.causes.items()}
    for name, reading in seen.items():
        odds = {c: weight * likelihood(steps[name], reading, c) for c, weight in odds.items()}
    whole = sum(odds.values())
    return {cause: weight / whole for cause, weight in odds.items()}


def gain(step: Step, now: Mapping[str, float]) -> float:
    """Bits that a measurement is expected to tell, with the chances as they are now.

    I = H(cause) - sum over readings of P(reading) H(cause | reading)
    """
    expected = 0.0
    for reading in range(len(step.branches)):
        joint = [chance * likelihood(step, reading, cause) for cause, chance in now.items()]
        shown = sum(joint)
        expected += shown * _bits([each / shown for each in joint])
    return _bits(list(now.values())) - expected


def _bits(chances_: list[float]) -> float:
    return -sum(each * log2(each) for each in chances_ if each > 0)


def best_steps(symptom: Symptom, seen: Seen, left_out: Container[str] = ()) -> list[Step]:
    """The measurements not taken yet that are worth it, the one that tells most first.

    What each is expected to tell is held against its effort. `left_out`: what cannot be taken.
    """
    now = chances(symptom, seen)
    open_ = [each for each in symptom.steps if each.name not in seen and each.name not in left_out]
    gains = {step.name: gain(step, now) for step in open_}
    worth = [step for step in open_ if gains[step.name] >= LEAST_GAIN]
    return sorted(worth, key=lambda step: -gains[step.name] / step.effort)


def found(symptom: Symptom, seen: Seen, left_out: Container[str] = ()) -> str:
    """The cause once it is likely enough, or once nothing is left that would tell; else nothing."""
    now = chances(symptom, seen)
    likeliest = max(now, key=lambda cause: now[cause])
    is_found = now[likeliest] >= ENOUGH or not best_steps(symptom, seen, left_out)
    return likeliest if seen and is_found else ""


def fix(symptom: Symptom, seen: Seen, cause: str) -> Branch:
    """The reading whose advice fits the cause best: one that was seen, one that means it alone."""
    ways = [
        (step.name in seen and step.branches[seen[step.name]] is branch, -len(branch.fits), branch)
        for step in symptom.steps
        for branch in step.branches
        if cause in branch.fits and branch.do != "Next step."
    ]
    return max(ways, key=lambda way: way[:2])[2]
