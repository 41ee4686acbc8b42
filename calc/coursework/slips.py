"""Slips that any answer of a kind may suffer from. A problem declares its own beside them."""

from typing import NamedTuple

from calc.units import Kind, atm, flow, gal, gauge_pressure, imp_gal, volume


class Common(NamedTuple):
    """A slip that makes of any right answer, SI, that many times it and so much more."""

    hint: str
    marks: float
    factor: float = 1.0
    added: float = 0.0

    def of(self, right: float) -> float:
        """What the slip makes of a right answer."""
        return right * self.factor + self.added


_SIGN = Common("The size is right, the sign is not.", 0.5, -1.0)
_IMPERIAL = "Those are imperial gallons, or taken for such; a US gallon is five sixths of one."
_GALLONS = (Common(_IMPERIAL, 0.4, gal / imp_gal), Common(_IMPERIAL, 0.4, imp_gal / gal))
_SIXTY = "Per second and per minute are mixed: that is off by sixty."
_SECONDS = (Common(_SIXTY, 0.4, 60.0), Common(_SIXTY, 0.4, 1 / 60))
_ABSOLUTE = Common(
    "That is absolute pressure. A gauge counts from the pressure of the air.", 0.4, added=atm
)


def common(kind: Kind) -> tuple[Common, ...]:
    """The slips known for a kind of quantity."""
    if kind is flow:
        return (_SIGN, *_GALLONS, *_SECONDS)
    if kind is volume:
        return (_SIGN, *_GALLONS)
    if kind is gauge_pressure:
        return (_SIGN, _ABSOLUTE)
    return (_SIGN,)
