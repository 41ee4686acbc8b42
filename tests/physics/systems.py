"""Systems that both our own code and the reference are put through, in gal, gpm, psi and min."""

from calc.physics import pressure_run, tank_run
from calc.physics.pressure_plant import Inlet, PressurePlant, Pump, Tank
from calc.physics.tank_switches import FREE, Draw, Run, Stop
from calc.units import Cv, gal, gpm, minute, psi
from tests.physics.reference_system import ENDLESS, FEET, Air, Curve, System, Tap, Way

type Start = tuple[float, float, float]
AIR = 14.696 * psi


def free(number: float, unit: float) -> float:
    return FREE if number >= ENDLESS else number * unit


def draws(system: System) -> list[Draw]:
    return [
        Draw(t.start * minute, t.flow * gpm, free(t.volume, gal), free(t.lasts, minute), t.open_tap)
        for t in system.taps
    ]


def stops(system: System) -> list[Stop]:
    return [Stop(what, start * minute, end * minute) for what, start, end in system.stops]


def steady_plant(system: System) -> tank_run.Plant:
    """Ours, of constant flows."""
    assert isinstance(system.inlet, float | int)
    assert isinstance(system.pump, float | int)
    assert not isinstance(system.house, Air)
    assert not isinstance(system.well, Air)
    assert not isinstance(system.pump_1, Curve)
    well = system.well or (ENDLESS, 0.0)
    return tank_run.Plant(
        system.inlet * gpm, system.pump * gpm, free(system.limit, gpm), system.opens * gal,
        system.closes * gal, system.house[0] * gal, system.house[1] * gal, system.modulating,
        system.pump_1 * gpm, free(well[0], gal), well[1] * gal, system.lock * gal,
        system.reset * gal, system.proves,
    )  # fmt: skip


def pump(curve: Curve) -> Pump:
    foot = psi / FEET
    bend = curve.loss * foot / gpm**2 + (0.0 if curve.cv >= ENDLESS else (curve.cv * Cv) ** -2)
    return Pump(curve.head * foot, bend, free(curve.limit, gpm))


def tank(air: Air) -> Tank:
    return Tank(air.size * gal, air.pre * psi, air.low * psi, air.high * psi, AIR)


def pressure_plant(system: System) -> PressurePlant:
    """Ours, of flows that follow the pressures."""
    assert isinstance(system.house, Air)
    assert isinstance(system.pump, Curve)
    well: tuple[Tank, Pump, Inlet] | float
    if isinstance(system.inlet, Way):
        assert isinstance(system.well, Air)
        assert isinstance(system.pump_1, Curve)
        way = system.inlet
        quadratic = way.quadratic * psi / gpm**2 + (way.cv * Cv) ** -2
        inlet = Inlet(
            way.feet / FEET * psi, way.linear * psi / gpm, quadratic, free(way.limit, gpm)
        )
        well = tank(system.well), pump(system.pump_1), inlet
    else:
        well = system.inlet * gpm
    return PressurePlant(
        system.opens * gal, system.closes * gal, tank(system.house), pump(system.pump), well,
        free(system.limit, Cv), system.lock * gal, system.reset * gal, system.proves,
    )  # fmt: skip


def ours(system: System, start: Start, until: float) -> Run:
    """The run of ours, whichever the system asks for."""
    level, stored, well = (each * gal for each in start)
    ends, out, drawn = until * minute, stops(system), draws(system)
    if isinstance(system.pump, Curve):
        plant = pressure_plant(system)
        return pressure_run.run(plant, drawn, level, stored, ends, well=well, stops=out)
    steady = steady_plant(system)
    return tank_run.run(steady, drawn, level, stored, ends, well=well, stops=out)


SHOWER = Tap(2, 2.1, lasts=8)
WASHER = Tap(1, 6, volume=25)
HOUSE = (5.9, 0.9)
WELL = (6.4, 1.0)
# name: system, volumes at the start (open tank, house and well pressure tank), minutes
STEADY: dict[str, tuple[System, Start, float]] = {
    "a shower and a washer": (
        System(9.5, 11, 6.0, 4.8, (WASHER, SHOWER), HOUSE), (11, 5.9, 0), 40),
    "a draw by time, held back": (
        System(9.5, 11, 12.0, 3.7, (Tap(1, 9, lasts=7.3), Tap(3, 4, lasts=9)), HOUSE, limit=5),
        (11, 5.9, 0), 40),
    "a draw by time, dry": (
        System(9.5, 11, 6.0, 2.2, (Tap(1, 8, lasts=13),), HOUSE), (11, 5.9, 0), 40),
    "modulating float": (
        System(8, 11, 6.0, 7.1, (WASHER, SHOWER), HOUSE, modulating=True), (11, 5.9, 0), 30),
    "modulating float, outrun": (
        System(8, 11, 6.0, 4.3, (Tap(1, 6, volume=40), SHOWER), HOUSE, modulating=True),
        (11, 5.9, 0), 30),
    "pump 1 keeps up": (
        System(9.5, 11, 6.0, 4.8, (WASHER, SHOWER), HOUSE, WELL, 9.0), (11, 5.9, 6.4), 40),
    "pump 1 too weak": (
        System(9.5, 11, 6.0, 5.6, (Tap(1, 6, volume=48),), HOUSE, WELL, 3.1), (11, 5.9, 2.2), 60),
    "pump 1 too weak for a modulating float": (
        System(8, 11, 6.0, 7.3, (Tap(1, 6, volume=41), SHOWER), HOUSE, WELL, 3.1,
               modulating=True), (11, 5.9, 3.0), 40),
    "lock-out": (
        System(9.5, 11, 6.0, 2.4, (Tap(1, 6, volume=61),), HOUSE, lock=1.5, reset=5),
        (11, 5.9, 0), 60),
    "lock-out with every tap open": (
        System(9.5, 11, 12.0, 3.3, (Tap(1, 7, lasts=23), SHOWER), HOUSE, limit=6, lock=2, reset=9),
        (11, 5.9, 0), 60),
    "the blower stops the inlet": (
        System(9.5, 11, 6.0, 5.1, (Tap(1, 5, volume=70),), HOUSE, lock=2, reset=5.3,
               proves="inlet", stops=(("blower", 4.2, 17.7),)), (11, 5.9, 0), 60),
    "the blower stops inlet and pump 2": (
        System(9.5, 11, 6.0, 5.1, (Tap(1, 5, volume=70),), HOUSE, proves="both",
               stops=(("blower", 4.2, 17.7),)), (11, 5.9, 0), 60),
    "backwash, then the well rests": (
        System(9.5, 11, 6.0, 5.1, (Tap(1, 5, volume=38),), HOUSE, WELL, 6.3,
               stops=(("inlet", 2.2, 7.3), ("well", 8.1, 16.4))), (11, 5.9, 6.4), 60),
    "the power fails": (
        System(9.5, 11, 6.0, 4.7, (Tap(1, 5, volume=38),), HOUSE, WELL, 7.3,
               stops=(("power", 3.3, 12.6),)), (11, 5.9, 6.4), 60),
}  # fmt: skip

TANK_2, TANK_1 = Air(20, 28, 30, 50), Air(20, 38, 40, 60)
PUMP_2, PUMP_1 = Curve(150, 0.45), Curve(180, 1.2)  # 300 ft less a lift of 120
FULL = TANK_2.above(50), TANK_1.above(60)
CLEAN, FOUL = Way(6, 0.3, 0.02, 1.1), Way(6, 6.0, 0.02, 1.1)


def tap(start: float, flow: float, lasts: float) -> Tap:
    return Tap(start, flow, lasts=lasts, open_tap=True)


THREE_TAPS = (tap(1, 8, 8), tap(9, 2.5, 8), tap(17, 5, 8))
PRESSURES: dict[str, tuple[System, Start, float]] = {
    "steady in, Cv after": (
        System(9.5, 11, PUMP_2, 4.0, (tap(2, 12, 12),), TANK_2, limit=1.0), (11, FULL[0], 0), 20),
    "both sides, bed 6x": (
        System(9.5, 11, PUMP_2, CLEAN._replace(linear=1.8), THREE_TAPS, TANK_2, TANK_1, PUMP_1,
               limit=1.0), (11, *FULL), 70),
    "unthrottled": (
        System(9.5, 11, PUMP_2, 5.0, (Tap(1, 5, lasts=10),), TANK_2), (11, FULL[0], 0), 30),
    "throttled before": (
        System(9.5, 11, Curve(150, 0.45, 0.9), 5.0, (Tap(1, 5, lasts=10),), TANK_2),
        (11, FULL[0], 0), 30),
    "foul bed, lock-out": (
        System(9.5, 11, PUMP_2, FOUL, (tap(1, 7, 14),), TANK_2, TANK_1, PUMP_1, limit=1.1,
               lock=1.5, reset=5), (11, *FULL), 30),
    "foul bed, dry": (
        System(9.5, 11, PUMP_2, FOUL, (Tap(1, 6, volume=60),), TANK_2, TANK_1, PUMP_1),
        (11, *FULL), 30),
    "washer held back by its throttle": (
        System(9.5, 11, PUMP_2, CLEAN, (Tap(1, 6, volume=33), tap(2.3, 3, 6)), TANK_2, TANK_1,
               PUMP_1, limit=0.8), (11, *FULL), 25),
    "compensating limits on both sides": (
        System(9.5, 11, Curve(150, 0.45, limit=6.0), CLEAN._replace(limit=7.0),
               (tap(1, 9, 9),), TANK_2, TANK_1, PUMP_1), (11, *FULL), 25),
    "house tank runs empty": (
        System(9.5, 11, Curve(150, 0.45, 0.7), CLEAN, (tap(1, 16, 8),), TANK_2, TANK_1, PUMP_1),
        (11, *FULL), 20),
    "well tank runs empty": (
        System(9.5, 11, PUMP_2, CLEAN, (tap(0.5, 9, 9),), TANK_2, TANK_1, Curve(180, 9.0),
               limit=1.0), (11, FULL[0], 3.0), 25),
    "the pump nearly rests": (
        System(9.5, 11, PUMP_2, CLEAN, (Tap(1, 10.95, lasts=9), tap(12, 2, 4)), TANK_2, TANK_1,
               PUMP_1), (11, *FULL), 25),
    "the level turns between two events": (
        System(9.5, 11, Curve(150, 0.45, 0.75), 3.5, (Tap(0.2, 2.1, lasts=14),), TANK_2),
        (9.6, 0.4, 0), 16),
    "power fails, then the filter backwashes": (
        System(9.5, 11, PUMP_2, CLEAN, (tap(1, 6, 12),), TANK_2, TANK_1, PUMP_1, limit=1.0,
               stops=(("power", 4.1, 6.2), ("inlet", 8.3, 10.9))), (11, *FULL), 25),
}  # fmt: skip
