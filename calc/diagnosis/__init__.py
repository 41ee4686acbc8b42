"""From a symptom to its cause: what to measure, what it shows, what that means, what to do.

Each step ends some branches and leaves others to the next one. A branch may hold a case in the
words of `calc.request`, with the numbers to put in: the chapter links to it.
"""

from calc.diagnosis import (
    air,
    collapses,
    dirty,
    low_pressure,
    milky,
    never_stops,
    no_water,
    short_cycling,
)
from calc.diagnosis.path import Symptom

SYMPTOMS: dict[str, Symptom] = {
    "short_cycling": short_cycling.SYMPTOM,
    "low_pressure": low_pressure.SYMPTOM,
    "never_stops": never_stops.SYMPTOM,
    "no_water": no_water.SYMPTOM,
    "air": air.SYMPTOM,
    "milky": milky.SYMPTOM,
    "dirty": dirty.SYMPTOM,
    "collapses": collapses.SYMPTOM,
}
