"""Bores, fittings and friction of pipe as it is sold, against printed tables and another hand."""

import fluids
import pytest
from fluids.piping import nearest_pipe

from calc.physics.pipe import ROUGHNESS_DRAWN, head_loss, head_loss_hazen_williams, minor_loss
from calc.pipes import MAKES, PIPES, TURBULENT, line_of
from calc.units import ft, gpm, inch
from tests.model.given import named

# [iac-906-i], ft in 100 ft at C 150, by flow: 1, 1¼, 1½, 2 and 3 in; None where nothing stands
TABLE: dict[int, tuple[float | None, ...]] = {
    3: (0.60, 0.16), 4: (1.01, 0.25), 5: (1.52, 0.39), 6: (2.14, 0.55, 0.25),
    7: (2.89, 0.76, 0.36), 8: (3.63, 0.97, 0.46), 9: (4.57, 1.21, 0.58), 10: (5.50, 1.46, 0.70),
    11: (None, 1.77, 0.84), 12: (None, 2.09, 1.01, 0.30), 13: (None, 2.42, 1.17, 0.35),
    14: (None, 2.74, 1.33, 0.39), 15: (None, 3.06, 1.45, 0.44), 16: (None, 3.49, 1.65, 0.50),
    17: (None, 3.93, 1.86, 0.56), 18: (None, 4.37, 2.07, 0.62), 19: (None, 4.81, 2.28, 0.68),
    20: (None, 5.23, 2.46, 0.74), 25: (None, None, 3.75, 1.10), 30: (None, None, 5.22, 1.54),
    40: (None, None, None, 2.62, 0.39), 50: (None, None, None, 3.98, 0.58),
    100: (None, None, None, None, 2.09),
}  # fmt: skip
NAMES = ("pvc40-1", "pvc40-1.25", "pvc40-1.5", "pvc40-2", "pvc40-3")
PRINTED = [
    (flow, name, value)
    for flow, row in TABLE.items()
    for name, value in zip(NAMES, row, strict=False)
    if value is not None
]


@pytest.mark.parametrize(("flow", "name", "printed"), PRINTED)
def test_the_table_of_a_law(flow: float, name: str, printed: float) -> None:
    """[iac-906-i], check set A10 and A11: Hazen and Williams at C 150.

    To 3 % up to 11 gpm and from 18 gpm on, printed figures of two digits to half of the last more.
    Between, it rises in even steps where friction does not, and prints up to 6 % too much.
    """
    pipe = PIPES[name]
    found = head_loss_hazen_williams(flow * gpm, 100 * ft, pipe.bore, 150) / ft
    even = 11 < flow < 18
    assert abs(found - printed) <= 0.032 * printed + (0.03 * printed if even else 0) + 0.0075


def test_the_table_is_short_in_cold_water() -> None:
    """Check set A13, EPANET 2.2 and Colebrook at 10 °C: 6.16 ft and 0.754 ft in 1 in pipe.

    The table prints 5.50 and 0.60.
    """
    for flow, expected, printed in ((10, 6.157, 5.50), (3, 0.754, 0.60)):
        found = head_loss(flow * gpm, 100 * ft, 1.049 * inch, ROUGHNESS_DRAWN, 1.3063e-6) / ft
        assert found == pytest.approx(expected, rel=2e-3)
        assert found > 1.1 * printed


@pytest.mark.parametrize(
    ("name", "losses"),
    [
        ("pe-1", (0.754, 1.827, 4.158, 6.157)), ("pe-1.25", (0.206, 0.498, 1.128, 1.668)),
        ("pvc40-0.75", (2.363, 5.753, 13.14, 19.49)), ("pvc80-1", (1.164, 2.825, 6.438, 9.539)),
        ("copperL-0.75", (2.973, 7.245, 16.56, 24.58)), ("copperL-1", (0.841, 2.040, 4.642, 6.875)),
        ("pex-0.75", (5.833, 14.25, 32.65, 48.51)), ("pex-1", (1.778, 4.324, 9.866, 14.63)),
        ("steel-1", (0.800, 1.986, 4.654, 7.010)), ("galvanized-1", (0.899, 2.311, 5.603, 8.577)),
    ],
)  # fmt: skip
def test_friction_of_every_kind(name: str, losses: tuple[float, ...]) -> None:
    """The fluids library's Colebrook at 10 °C, ft in 100 ft at 3, 5, 8 and 10 gpm: by it now and
    as it was tabulated by others with it."""
    pipe = PIPES[name]
    for flow, printed in zip((3, 5, 8, 10), losses, strict=True):
        speed = flow * gpm / (3.141592653589793 * pipe.bore**2 / 4)
        reynolds = fluids.Reynolds(V=speed, D=pipe.bore, nu=1.3063e-6)
        factor = fluids.friction.Colebrook(reynolds, pipe.roughness / pipe.bore)
        other = fluids.head_from_K(K=fluids.K_from_f(fd=factor, L=100 * ft, D=pipe.bore), V=speed)
        found = head_loss(flow * gpm, 100 * ft, pipe.bore, pipe.roughness, 1.3063e-6)
        assert found == pytest.approx(other, rel=1e-9)
        assert found / ft == pytest.approx(printed, rel=5e-3)


@pytest.mark.parametrize("make", ["steel", "galvanized", "pvc40", "pvc80", "pe"])
def test_bores_of_schedules(make: str) -> None:
    """The fluids library's schedule 40 and 80: nominal sizes and bores."""
    schedule = "80" if make == "pvc80" else "40"
    for nominal, bore in MAKES[make].bores.items():
        inside = nearest_pipe(NPS=nominal, schedule=schedule)[1]  # type: ignore[arg-type]  # takes 0.75, too
        assert inside / inch == pytest.approx(bore, abs=0.006), named(f"{make} {nominal}")


COPPER = {
    "copperK": (0.049, 0.065, 0.065, 0.065, 0.072, 0.083),
    "copperL": (0.040, 0.045, 0.050, 0.055, 0.060, 0.070),
    "copperM": (0.028, 0.032, 0.035, 0.042, 0.049, 0.058),
}


@pytest.mark.parametrize("make", COPPER)
def test_bores_of_copper(make: str) -> None:
    """[astm-b88]: an eighth of an inch over nominal outside, less twice the wall printed."""
    for (nominal, bore), wall in zip(MAKES[make].bores.items(), COPPER[make], strict=True):
        assert bore == pytest.approx(nominal + 0.125 - 2 * wall, abs=1e-9)


def test_bores_of_pex() -> None:
    """[astm-f876]: the same outside as copper, less twice the least wall."""
    walls = zip(MAKES["pex"].bores.items(), (0.070, 0.097, 0.125), strict=True)
    for (nominal, bore), wall in walls:
        assert bore == pytest.approx(nominal + 0.125 - 2 * wall, abs=1e-9)


def test_fittings_of_another_hand() -> None:
    """The fluids library: the factor of clean steel in full turbulence, and K from a length.

    It computes from the bore what the table rounds: 6 % apart in ½ in pipe, less in wider."""
    for nominal, factor in TURBULENT.items():
        bore = nearest_pipe(NPS=nominal, schedule="40")[1]  # type: ignore[arg-type]  # takes 0.75, too
        assert factor == pytest.approx(fluids.ft_Crane(bore), rel=0.06)
    elbow = fluids.K_from_L_equiv(L_D=30, fd=TURBULENT[1])
    assert elbow == pytest.approx(0.69, abs=1e-9)
    assert minor_loss(10 * gpm, 1.049 * inch, elbow) / ft == pytest.approx(0.148, abs=5e-4)


@pytest.mark.parametrize(
    ("nominal", "elbow", "tee", "check", "gate"),
    [(1, 2.62, 5.25, 8.74, 0.70), (0.75, 2.06, 4.12, 6.87, 0.55), (1.25, 3.45, 6.90, 11.5, 0.92),
     (2, 5.17, 10.3, 17.2, 1.38)],
)  # fmt: skip
def test_equivalent_lengths(
    nominal: float, elbow: float, tee: float, check: float, gate: float
) -> None:
    """A table of equivalent lengths, ft, as the notes print it: bores times 30, 60, 100 and 8."""
    bore = PIPES[f"pvc40-{nominal:g}"].bore
    for times, printed in ((30, elbow), (60, tee), (100, check), (8, gate)):
        assert bore * times / ft == pytest.approx(printed, rel=6e-3)


def test_a_line_is_of_its_pipe() -> None:
    """By reason."""
    line = line_of("copperL-0.75", 30.0, 4.0)
    assert (line.length, line.fittings) == (30.0, 4.0)
    assert line.bore == pytest.approx(0.785 * inch)
