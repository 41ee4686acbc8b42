"""All symptoms by name. A page brings its own to the browser: it is no part of what runs there."""

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
