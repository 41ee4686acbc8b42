"""Steps that every calculator of stripping shows alike."""

from collections.abc import Mapping

from calc.model import Quantity, Step


def at_rest(given: Mapping[str, Quantity]) -> tuple[Step, ...]:
    """How radon shares itself between water and air that have met long enough."""
    return (
        Step(
            "Radon in water over radon in air, at rest",
            "L = 0.105 + 0.405 * e**(-0.0502 * t)",
            given,
        ),
        Step("Radon in air over radon in water, at rest", "H = 1 / L", given),
    )


def stripping_factor(given: Mapping[str, Quantity]) -> tuple[Step, ...]:
    """What the air could carry over what the water brings."""
    return (
        Step("Air for each part of water", "A = G / Q_a", given),
        *at_rest(given),
        Step("Stripping factor", "S = H * A", given),
    )


def filling(given: Mapping[str, Quantity]) -> tuple[Step, ...]:
    """How full of radon a bubble is when it bursts."""
    return (
        Step("How often over a bubble can fill", "u = 6 * c_b * K * z_b / (v * d_b * H)", given),
        Step("How full it bursts", "f = 1 - e**(-u)", given),
    )
