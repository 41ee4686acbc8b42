"""Copper between panel and motor: its resistance, the voltage it costs, how far it reaches."""

from calc.units import ft

# Stranded uncoated copper, direct current, 75 °C, ohm for each 1000 ft; gauges in AWG.
# [nfpa-70-table-8]
OHM_PER_KFT = {
    "14": 3.14, "12": 1.98, "10": 1.24, "8": 0.778, "6": 0.491, "4": 0.308, "3": 0.245,
    "2": 0.194, "1": 0.154,
}  # fmt: skip
TABLE_TEMPERATURE = 75 + 273.15  # K
COEFFICIENT = 0.00323  # 1/K, copper, counted from 75 °C [nfpa-70-table-8]


def resistance_for_length(gauge: str, temperature: float) -> float:
    """Resistance of one stranded copper conductor for each length, ohm/m.

        R = R75 [1 + 0.00323 (T - 75 °C)]

    gauge       -- AWG, as printed on the jacket: a bigger number is a thinner wire
    temperature -- of the copper, K. In the well it is as cold as the water, in a hot attic
                   it is not. Codes reckon with 75 °C

    Holds for direct current, and for the alternating current of a house in these sizes:
    from 1 AWG down the difference is under 2 %. A splice or a corroded terminal can cost more
    than a hundred feet of wire.

    Twelve gauge at the water's 10 °C:

    >>> round(resistance_for_length("12", 283.15) * 1000 * ft, 3)
    1.564

    Source: [nfpa-70-table-8], read as others print it; the bound on alternating current from
    memory.
    """
    table = OHM_PER_KFT[gauge] / (1000 * ft)
    return table * (1 + COEFFICIENT * (temperature - TABLE_TEMPERATURE))


def loop_resistance(length: float, each: float) -> float:
    """What an ohmmeter adds to the motor's winding when it is read at the top, ohm.

        R = 2 L r

    length -- of the cable, one way, m: the run from the panel and the drop in the well
    each   -- resistance of one conductor for each length, ohm/m

    >>> round(loop_resistance(300 * ft, 1.98 / (1000 * ft)), 3)
    1.188

    Source: Ohm's law; there and back.
    """
    return 2 * length * each


def voltage_drop(current: float, loop: float) -> float:
    """Voltage lost in the cable of a single-phase motor, V.

        Vd = I R

    current -- A. The running one for the pump at work, the locked-rotor one while it starts
    loop    -- resistance there and back, ohm

    An upper bound: the motor's current lags, so that a little less is lost of what the motor
    feels. On three phases it is √3 / 2 of this.

    1 hp, 8 A, 300 ft of 12 gauge:

    >>> round(voltage_drop(8.0, loop_resistance(300 * ft, 1.98 / (1000 * ft))), 1)
    9.5

    Source: Ohm's law.
    """
    return current * loop


def longest_run(drop: float, current: float, each: float) -> float:
    """Longest cable, one way, that loses no more than `drop`, m.

        L = Vd / (2 I r)

    drop    -- voltage that may be lost, V
    current -- A
    each    -- resistance of one conductor for each length, ohm/m

    >>> round(longest_run(0.05 * 230, 8.0, 1.98 / (1000 * ft)) / ft)
    363

    Source: `voltage_drop` turned round.
    """
    return drop / (2 * current * each)


def starting_voltage(supply: float, locked: float, loop: float) -> float:
    """Voltage that is left at the motor at the moment it starts, at least, V.

        V = U / (1 + R I / U)

    supply -- at the panel, V, with the motor starting: a weak service sags as well
    locked -- locked-rotor current at that voltage, A
    loop   -- resistance of the cable there and back, ohm

    A rotor that stands still is an impedance U / I in line with the cable. The least is left when
    both are in step; a motor's current lags, so that more is left.

    >>> round(starting_voltage(230.0, 39.1, 1.188))
    191

    Source: derived.
    """
    return supply / (1 + loop * locked / supply)
