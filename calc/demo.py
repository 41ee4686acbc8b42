"""The worked house: Quarry Road at Alder Ledge, invented, as it was found and as it was left.

Its figures are the defaults of the calculators, so that a chapter, a test and a screenshot that
show it show one house. Only what the work changed stands here.
"""

from collections.abc import Mapping

from calc import EDITION
from calc.house.parts import PARTS
from calc.job import Job, kept
from calc.model import Choice, Typed
from calc.vocabulary import words

HOUSE = "Quarry Road house at Alder Ledge (invented)"
FOUND, LEFT = "2026-03-10", "2026-05-19"

# What a first survey found, where calculators show different houses or another day: the well as
# its test gave it, the limit as it stood, the old blower and what it left in the water.
_AS_FOUND = {
    "well_inflow": "0.02 gpm/ft",
    "worst_outlet": "6 gpm",
    "treated_radon": "653 pCi/L",
    "fill": "25 gal",
}
# What was done: the outlet limit set by pail and locked, a bigger blower, then a pair of samples.
_AS_LEFT = {
    "outlet": "4.63 gpm",
    "worst_outlet": "4.63 gpm",
    "aerator_air": "21.5 cfm",
    "treated_radon": "180 pCi/L",
    "lock_at": "2 gal",
}
_COMPUTED = {
    "worst_inlet": "inlet_flow",
    "service_at": "filter_due",
    "worst_outlet": "outlet_setting",
}
_MORE = ("fill", "fill_flow", "loads", "wash_days", "hose_days", "entering_ph")


def as_found() -> Job:
    """The job of the first survey: the outlet passes more than the worst inlet brings."""
    return _job(FOUND, _defaults() | _AS_FOUND)


def as_left() -> Job:
    """The job after balancing and a new blower."""
    return _job(LEFT, _defaults() | _AS_FOUND | _AS_LEFT)


def _defaults() -> dict[str, str]:
    known = words()
    names = dict.fromkeys((*(name for part in PARTS for name in part.values), *_MORE))
    return {name: known[name].default for name in names}


def _job(date: str, texts: Mapping[str, str]) -> Job:
    job, known = Job(name=HOUSE, date=date, handbook=EDITION), words()
    for name, text in texts.items():
        each = known[name]
        if isinstance(each, Choice) or each.several > 1:
            given = Typed(text)
        else:
            given = Typed(*each.kind.apart(text))
        origin = _COMPUTED.get(name) or ("assumed" if name == "target_radon" else "measured")
        job = kept(job, name, given, origin, f"{date}T15:00:00Z")
    return job
