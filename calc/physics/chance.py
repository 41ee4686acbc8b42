"""What counts tell of a chance: an interval around it, and the bound when nothing was seen."""

from math import exp, lgamma, log, pow


def chance_interval(seen: int, tried: int, sureness: float = 0.95) -> tuple[float, float]:
    """Lowest and highest chance that a count leaves possible.

    Below the lowest, `seen` or more in `tried` would happen in fewer than (1 - sureness) / 2
    of all series; above the highest, `seen` or fewer.

    seen     -- in how many trials it happened
    tried    -- trials, each independent of the others and alike
    sureness -- share of all series whose interval holds the true chance, at least

    Exact, so rather too wide than too narrow. Where nothing was seen the lowest is 0 and
    `chance_bound` says more.

    >>> [round(end, 4) for end in chance_interval(4, 40)]
    [0.0279, 0.2366]

    Source: [clopper-1934].
    """
    tail = (1 - sureness) / 2
    low = _beta_middle(tail, seen, tried - seen + 1) if seen else 0.0
    high = _beta_middle(1 - tail, seen + 1, tried - seen) if seen < tried else 1.0
    return low, high


def chance_bound(tried: int, sureness: float = 0.95) -> float:
    """Highest chance that is still possible when nothing was seen in so many trials.

        p = 1 - (1 - sureness)^(1 / n)

    tried    -- n, trials, each independent of the others and alike
    sureness -- as in `chance_interval`

    About 3 / n for a sureness of 95 %, which is called the rule of three.

    >>> round(chance_bound(40), 4), 3 / 40
    (0.0722, 0.075)

    Source: [hanley-1983]; the same from (1 - p)^n = 1 - sureness.
    """
    return 1 - pow(1 - sureness, 1 / tried)


def at_least_once(chance: float, times: float) -> float:
    """Chance that something happens at least once in so many independent trials.

        1 - (1 - p)^n

    Source: the product of the chances that it does not.
    """
    return 1 - pow(1 - chance, times)


def _beta_middle(share: float, a: float, b: float) -> float:
    """The x below which a share of the beta distribution lies."""
    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if _beta_below(middle, a, b) < share else (low, middle)
    return (low + high) / 2


def _beta_below(x: float, a: float, b: float) -> float:
    """The regularized incomplete beta function. Source: [dlmf] 8.17.22, a continued fraction."""
    if x > (a + 1) / (a + b + 2):
        return 1 - _beta_below(1 - x, b, a)
    if not x:
        return 0.0
    front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log(1 - x)) / a
    # Lentz's way with it, [dlmf] 3.10(iii): the ratios of two neighbours, never 0
    c, d = 1.0, 1 / _not_zero(1 - (a + b) * x / (a + 1))
    value = d
    for m in range(1, 10_000):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for term in (even, odd):
            d = 1 / _not_zero(1 + term * d)
            c = _not_zero(1 + term / c)
            value *= c * d
        if abs(c * d - 1) < 1e-15:
            break
    return front * value


def _not_zero(value: float) -> float:
    return value or 1e-300
