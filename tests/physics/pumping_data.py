"""Pumping tests as published, and a well with casing storage computed by another method.

fetter    -- [fetter-2001], table 5.1: minutes and feet, 824 ft from a well of 220 gpm
todd      -- recovery in [todd-1980], also in Batu's Aquifer Hydraulics, 1998, example 4-12: minutes
             since the stop and metres, 2500 m³ a day for 240 minutes
korendijk -- Oude Korendijk, [kruseman-1990]: minutes and metres, 30 m from a well of 788 m³ a day
"""

from math import factorial, log, pi, sqrt

from scipy.special import k0, k1

FETTER = (
    (3, 0.3), (5, 0.7), (8, 1.3), (12, 2.1), (20, 3.2), (24, 3.6), (30, 4.1), (38, 4.7), (47, 5.1),
    (50, 5.3), (60, 5.7), (70, 6.1), (80, 6.3), (90, 6.7), (100, 7.0), (130, 7.5), (160, 8.3),
    (200, 8.5), (260, 9.2), (320, 9.7), (380, 10.2), (500, 10.9),
)  # fmt: skip
TODD = (
    (1, 0.89), (2, 0.81), (3, 0.76), (5, 0.68), (7, 0.64), (10, 0.56), (15, 0.49), (20, 0.45),
    (30, 0.38), (40, 0.34), (60, 0.28), (80, 0.24), (100, 0.21), (140, 0.17), (180, 0.14),
)  # fmt: skip
KORENDIJK = (
    (0.1, 0.04), (0.25, 0.08), (0.5, 0.13), (0.7, 0.18), (1, 0.23), (1.4, 0.28), (1.9, 0.33),
    (2.33, 0.36), (2.8, 0.39), (3.36, 0.42), (4, 0.45), (5.35, 0.50), (6.8, 0.54), (8.3, 0.57),
    (8.7, 0.58), (10, 0.60), (13.1, 0.64), (18, 0.68), (27, 0.742), (33, 0.753), (41, 0.779),
    (48, 0.793), (59, 0.819), (80, 0.855), (95, 0.873), (139, 0.915), (181, 0.935), (245, 0.966),
    (300, 0.990), (360, 1.007), (480, 1.05), (600, 1.053), (728, 1.072), (830, 1.088),
)  # fmt: skip

TERMS = 12  # of Stehfest's sum: more of them lose to rounding


def _weight(i: int) -> float:
    half = TERMS // 2
    total = sum(
        k**half * factorial(2 * k)
        / (factorial(half - k) * factorial(k) * factorial(k - 1)
           * factorial(i - k) * factorial(2 * k - i))
        for k in range((i + 1) // 2, min(i, half) + 1)
    )  # fmt: skip
    return float((-1) ** (i + half) * total)


WEIGHTS = [_weight(i) for i in range(1, TERMS + 1)]


def drawdown_in_a_real_well(
    flow: float, transmissivity: float, storativity: float, radius: float, time: float
) -> float:
    """Drawdown in the pumped well with casing storage: the answer of Papadopulos and Cooper, as
    its Laplace transform turned back by Stehfest's sum."""
    total = 0.0
    for place, weight in enumerate(WEIGHTS, 1):
        p = place * log(2) / time
        x = radius * sqrt(p * storativity / transmissivity)
        lost = 2 * pi * transmissivity * x * k1(x) + pi * radius**2 * p * k0(x)
        total += weight * flow * k0(x) / (p * lost)
    return float(total * log(2) / time)
