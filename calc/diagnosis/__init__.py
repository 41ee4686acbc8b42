"""From a symptom to its cause: what to measure, what it shows, what that means, what to do.

Each step ends some branches and leaves others to the next one. A branch may hold a case in the
words of `calc.request`, with the numbers to put in: the chapter links to it.

The same table serves the trouble call (`calc.diagnosis.evidence`). How likely a cause is, and how
surely it shows a reading, is judgement of this handbook: edit it where you know better.
"""

from calc.diagnosis import (
    air,
    collapses,
    dirty,
    low_pressure,
    milky,
    never_stops,
    no_water,
    radon_monitor,
    short_cycling,
    smell,
    stains,
    water_meter,
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
    "stains": stains.SYMPTOM,
    "smell": smell.SYMPTOM,
    "radon_monitor": radon_monitor.SYMPTOM,
    "water_meter": water_meter.SYMPTOM,
}
