"""Pipe as it is sold: real inside diameters, each with its standard."""

from collections.abc import Mapping
from typing import NamedTuple

from calc.fields import INVENTED
from calc.model import Choice
from calc.physics.pipe import ROUGHNESS_DRAWN
from calc.physics.pump_system import Line
from calc.units import ft, inch


class Make(NamedTuple):
    """One kind of pipe. Roughness in m when new, C of Hazen and Williams, bores in inches by
    nominal size. `standard` is the source of the bores."""

    label: str
    standard: str
    roughness: float
    smoothness: float
    bores: Mapping[float, float]


class Pipe(NamedTuple):
    """One pipe: bore and roughness in m, C of Hazen and Williams, and the factor that turns a
    fitting's length over its diameter into its K."""

    bore: float
    roughness: float
    smoothness: float
    turbulent: float
    standard: str


STEEL = 1.5e-4 * ft  # [moody-1944]
GALVANIZED = 5e-4 * ft  # [moody-1944]
# C: plastic 150 as in [iac-906-i]; the others common practice, no source
_SCHEDULE_40 = {0.5: 0.622, 0.75: 0.824, 1: 1.049, 1.25: 1.380, 1.5: 1.610, 2: 2.067}
MAKES = {
    "pe": Make(
        "polyethylene (PE), inside diameter controlled",
        "astm-d2239", ROUGHNESS_DRAWN, 150, {k: _SCHEDULE_40[k] for k in (0.75, 1, 1.25, 1.5, 2)},
    ),
    "pvc40": Make(
        "PVC schedule 40", "astm-d1785", ROUGHNESS_DRAWN, 150, _SCHEDULE_40 | {3: 3.068}
    ),
    "pvc80": Make(
        "PVC schedule 80", "astm-d1785", ROUGHNESS_DRAWN, 150,
        {0.5: 0.546, 0.75: 0.742, 1: 0.957, 1.25: 1.278, 1.5: 1.500, 2: 1.939},
    ),
    "copperK": Make(
        "copper type K", "astm-b88", ROUGHNESS_DRAWN, 140,
        {0.5: 0.527, 0.75: 0.745, 1: 0.995, 1.25: 1.245, 1.5: 1.481, 2: 1.959},
    ),
    "copperL": Make(
        "copper type L", "astm-b88", ROUGHNESS_DRAWN, 140,
        {0.5: 0.545, 0.75: 0.785, 1: 1.025, 1.25: 1.265, 1.5: 1.505, 2: 1.985},
    ),
    "copperM": Make(
        "copper type M", "astm-b88", ROUGHNESS_DRAWN, 140,
        {0.5: 0.569, 0.75: 0.811, 1: 1.055, 1.25: 1.291, 1.5: 1.527, 2: 2.009},
    ),
    "pex": Make(
        "PEX, SDR 9", "astm-f876", ROUGHNESS_DRAWN, 150, {0.5: 0.485, 0.75: 0.681, 1: 0.875}
    ),
    "cpvc": Make(
        "CPVC, SDR 11", "astm-d2846", ROUGHNESS_DRAWN, 150, {0.5: 0.485, 0.75: 0.713, 1: 0.921}
    ),
    "steel": Make("new steel schedule 40", "asme-b36-10", STEEL, 140, _SCHEDULE_40),
    "galvanized": Make(
        "galvanized steel schedule 40", "asme-b36-10", GALVANIZED, 120, _SCHEDULE_40
    ),
}  # fmt: skip
# Friction factor of clean steel pipe in full turbulence, by nominal size: [mott-2006]
TURBULENT = {0.5: 0.027, 0.75: 0.025, 1: 0.023, 1.25: 0.022, 1.5: 0.021, 2: 0.019, 3: 0.018}
_SIZES = {0.5: "½", 0.75: "¾", 1: "1", 1.25: "1¼", 1.5: "1½", 2: "2", 3: "3"}


def _name(make: str, nominal: float) -> str:
    return f"{make}-{nominal:g}"


PIPES = {
    _name(key, nominal): Pipe(
        bore * inch, make.roughness, make.smoothness, TURBULENT[nominal], make.standard
    )
    for key, make in MAKES.items()
    for nominal, bore in make.bores.items()
}
_OPTIONS = {
    _name(key, nominal): f"{_SIZES[nominal]} in {make.label}: {bore:.3f} in inside"
    for key, make in MAKES.items()
    for nominal, bore in make.bores.items()
}
STANDARDS = tuple(dict.fromkeys(make.standard for make in MAKES.values()))


def pipe_choice(name: str, label: str, default: str, group: str, once: bool = True) -> Choice:
    """An input that picks one pipe of the table."""
    return Choice(
        name=name,
        label=label,
        options=_OPTIONS,
        default=default,
        origin=INVENTED,
        measure="Read the print on the pipe: material, size, standard. Old iron is narrower and "
        "rougher than any table: measure what it loses.",
        group=group,
        once=once,
    )


def line_of(name: str, length: float, fittings: float = 0.0) -> Line:
    """A run of the pipe of that name, of a length in m, with the K of its fittings."""
    pipe = PIPES[name]
    return Line(length, pipe.bore, pipe.roughness, fittings)
