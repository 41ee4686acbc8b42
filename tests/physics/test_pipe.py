"""Pipe friction against the fluids library and against Colebrook's equation itself."""

from math import log10, sqrt

import fluids
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.physics.pipe import (
    LAMINAR,
    TURBULENT,
    friction_factor,
    head_loss,
    head_loss_hazen_williams,
    minor_loss,
    velocity,
)
from calc.units import ft, gpm, inch
from tests.model.given import steady

turbulent = st.floats(TURBULENT, 1e8)
roughness = st.one_of(st.just(0.0), st.floats(1e-7, 0.05))


@steady
@given(turbulent, roughness)
def test_colebrook_holds(reynolds: float, relative: float) -> None:
    """[colebrook-1939] put back: both sides agree to rounding."""
    root = 1 / sqrt(friction_factor(reynolds, relative))
    assert root == pytest.approx(-2 * log10(relative / 3.7 + 2.51 / reynolds * root), rel=2e-14)


@steady
@given(turbulent, st.floats(1e-6, 0.05))
def test_colebrook_of_another_hand(reynolds: float, relative: float) -> None:
    """The fluids library: Colebrook solved with Lambert's W."""
    other = fluids.friction.Colebrook(reynolds, relative)
    assert friction_factor(reynolds, relative) == pytest.approx(other, rel=1e-9)


def test_laminar() -> None:
    """Hagen and Poiseuille by hand: 64/Re up to 2000, and no jump there or at 4000."""
    assert friction_factor(1000, 0.01) == pytest.approx(0.064, rel=1e-15)
    for edge in (LAMINAR, TURBULENT):
        below, above = friction_factor(edge * (1 - 1e-9), 1e-4), friction_factor(edge, 1e-4)
        assert below == pytest.approx(above, rel=1e-8)


@steady
@given(st.floats(0.01, 20), st.floats(1.0, 1.2), roughness)
def test_more_flow_costs_more(flow: float, times: float, rough: float) -> None:
    """By reason: head loss rises with flow, through the laminar and the unsure range too."""
    losses = [
        head_loss(q * gpm, 100 * ft, 0.824 * inch, rough * 0.02, 1.3e-6)
        for q in (flow, flow * times)
    ]
    assert losses[0] <= losses[1] * (1 + 1e-12)


def test_darcy_of_another_hand() -> None:
    """The fluids library: pressure drop of one phase, 6 gpm in 100 ft of 0.824 in."""
    speed = velocity(6 * gpm, 0.824 * inch)
    reynolds = fluids.Reynolds(V=speed, D=0.824 * inch, nu=1.31e-6)
    factor = fluids.friction_factor(
        Re=reynolds, eD=1.5e-6 / (0.824 * inch), Method="Colebrook", Darcy=True
    )
    drop = fluids.K_from_f(fd=factor, L=100 * ft, D=0.824 * inch)
    expected = fluids.head_from_K(K=drop, V=speed)
    assert head_loss(6 * gpm, 100 * ft, 0.824 * inch, 1.5e-6, 1.31e-6) == pytest.approx(
        expected, rel=1e-9
    )
    assert minor_loss(6 * gpm, 0.824 * inch, 0.75) == pytest.approx(
        fluids.head_from_K(K=0.75, V=speed), rel=1e-9
    )


def test_hazen_williams_in_metres() -> None:
    """From memory: 10.67 L Q^1.852 / (C^1.852 D^4.871) in metres."""
    metres = 10.67 * 100 * 1e-3**1.852 / (130**1.852 * 0.03**4.871)
    assert head_loss_hazen_williams(1e-3, 100, 0.03, 130) == pytest.approx(metres, rel=1e-3)


def test_nothing_flows_nothing_is_lost() -> None:
    """By reason."""
    assert head_loss(0.0, 10, 0.02, 1e-6, 1e-6) == 0
    assert head_loss_hazen_williams(0.0, 10, 0.02, 130) == 0
    assert minor_loss(0.0, 0.02, 3) == 0
