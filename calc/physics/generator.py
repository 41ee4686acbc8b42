"""What a motor asks for in the moment it starts, and whether a generator can give it."""

from calc.units import hp

# kVA for each horsepower with the rotor locked, from and to, by the letter on the nameplate.
# Letters I, O and Q are not used; V has no upper end. [nfpa-70-430-7]
CODE_LETTERS: dict[str, tuple[float, float]] = {
    "A": (0.0, 3.14), "B": (3.15, 3.54), "C": (3.55, 3.99), "D": (4.0, 4.49), "E": (4.5, 4.99),
    "F": (5.0, 5.59), "G": (5.6, 6.29), "H": (6.3, 7.09), "J": (7.1, 7.99), "K": (8.0, 8.99),
    "L": (9.0, 9.99), "M": (10.0, 11.19), "N": (11.2, 12.49), "P": (12.5, 13.99),
    "R": (14.0, 15.99), "S": (16.0, 17.99), "T": (18.0, 19.99), "U": (20.0, 22.39),
}  # fmt: skip


def locked_rotor_power(motor: float, each: float) -> float:
    """Apparent power a motor takes while its rotor stands still, VA.

        S = kVA/hp × P

    motor -- rated power, W, as the nameplate gives it: not what the pump happens to need
    each  -- kVA for each horsepower, from `CODE_LETTERS`

    >>> round(locked_rotor_power(1 * hp, 8.99))
    8990

    Source: [nfpa-70-430-7], read as others print it.
    """
    return each * 1e3 * motor / hp


def locked_rotor_current(power: float, voltage: float) -> float:
    """Current a single-phase motor takes while its rotor stands still, A.

        I = S / U

    power   -- locked-rotor apparent power, VA
    voltage -- the motor's rated voltage, V

    >>> round(locked_rotor_current(8990.0, 230.0), 1)
    39.1

    Source: definition.
    """
    return power / voltage


def starting_dip(start: float, rated: float, reactance: float) -> float:
    """Share of its voltage that a generator loses in the first moment of a start, 0 to 1.

        d = S / (S + S_g / X)

    start     -- locked-rotor apparent power at full voltage, VA
    rated     -- of the generator, running all day, VA. The bigger figure on the carton is for
                 seconds
    reactance -- transient reactance as a share of its own rating, X'd. 0.2 to 0.3 in small sets
                 (from memory); ask for it

    The generator is a source behind its reactance, the rotor another reactance; both in step, which
    is the worst. What is running already is left out: it makes the dip a little different. After
    some tenths of a second the regulator brings the voltage back.

    >>> round(starting_dip(8990.0, 5000.0, 0.25), 3)
    0.31

    Source: voltage divider; form from memory.
    """
    return start / (start + rated / reactance)


def generator_for(start: float, dip: float, reactance: float) -> float:
    """Smallest generator that starts the motor with no more than that dip, VA.

        S_g = X S (1 - d) / d

    start     -- locked-rotor apparent power, VA
    dip       -- accepted share of the voltage, over 0 and under 1
    reactance -- transient reactance as a share of its rating

    >>> round(generator_for(8990.0, 0.35, 0.25))
    4174

    Source: `starting_dip` turned round.
    """
    return reactance * start * (1 - dip) / dip
