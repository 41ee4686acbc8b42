"""What the tests of the model and the views are given: cases, texts, and values in range."""

import os

from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st

from calc.calculators import calculator, names
from calc.model import Calculator, Choice, Input, Typed

# Of all calculators together they are thousands. Set it to ten before a release.
THOROUGH = int(os.environ.get("THOROUGH", "1"))

# The same examples on every run, and no clock that a busy machine could fail.
steady = settings(
    derandomize=True,
    deadline=None,
    max_examples=60,
    database=None,
    phases=[Phase.explicit, Phase.generate, Phase.shrink],
    report_multiple_bugs=False,
)
patient = settings(
    steady,
    max_examples=25 * THOROUGH,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)

CALCULATORS = [calculator(name) for name in names()]

NASTY = (
    "", " ", "\t\n", "abc", "1e999", "1e-999", "nan", "inf", "-inf", "-1", "1/0", "0", "0/5",
    "1,234", "1,2,3", "1.2.3", "--5", "5-", "+", ".", ",", "½½", "1 1/2 1/2", "\N{DROPLET}", "五",
    "٣", "²", "9" * 5_000, "1/" + "9" * 5_000, "9" * 5_000 + " 1/2", "5 " * 3_000, "5 psi",
    "5 gal 3 qt", "5 gal; 6 gal", "5 %", "1:02", "1:99", "99999:00", "12' 6\"", "5 furlongs",
    "5 gpm gpm", "gpm", "'; drop table wells; --", "<script>alert(1)</script>", "שלום 5", "\u202e5",
    "5\x00", "5\u00a0gal", "5\ud800", "{inlet}", "before", "BEFORE", "\\", "1_000", "0x10", ";;;",
    "±", "5 ±", "± 5", "5 ± x", "5 ± -1", "5 ± 1e999", "5 ± 3 %", "5 ± 1 ± 1", "5 +/- 0.1",
    "5 ± 1/0", "5 ± 1,234", "5 gal ± 1 psi", "5 ± " + "9" * 5_000,
)  # fmt: skip


def named(text: str) -> str:
    """A short name for a test of one text."""
    return ascii(text if len(text) < 40 else f"{text[:6]}...{text[-6:]}")


texts = st.one_of(
    st.sampled_from([text for text in NASTY if len(text) < 100]),
    st.text(max_size=30),
    st.from_regex(
        r"[-+]?[0-9 .,/:;eE½-]{0,12} ?(gal|L|gpm|psi|s|min|ft|in|%|'|\")?", fullmatch=True
    ),
)


def _as_text(each: Input, values: list[float]) -> str:
    """Values as they stand in a field, in the usual unit of the US set."""
    unit = each.usual("us")
    return "; ".join(f"{unit.out_of_si(value):.9g} {unit.symbol}" for value in values)


def _within(each: Input | Choice, between: bool) -> st.SearchStrategy[Typed]:
    if isinstance(each, Choice):
        return st.sampled_from(list(each.options)).map(Typed)
    one = st.sampled_from([float(each.low), float(each.high)])
    if between:
        one = st.one_of(one, st.floats(each.low, each.high, allow_subnormal=False))
    many = st.lists(one, min_size=1, max_size=each.several)
    return many.map(lambda values: Typed(_as_text(each, values)))


def anywhere(declared: Calculator) -> st.SearchStrategy[dict[str, Typed]]:
    """Every input somewhere in the range that it declares, the ends among them."""
    return st.fixed_dictionaries({each.name: _within(each, True) for each in declared.inputs})


def corners(declared: Calculator) -> st.SearchStrategy[dict[str, Typed]]:
    """Every input at one end of its range."""
    return st.fixed_dictionaries({each.name: _within(each, False) for each in declared.inputs})


def typed(declared: Calculator) -> st.SearchStrategy[dict[str, Typed]]:
    """What a person might type for every input: a likely value in any unit of its kind.

    Likely means within a factor of three of the default, several readings all by about as
    much: far from it most sets of inputs contradict each other, and a test of answers would
    see few.
    """
    many = st.integers(1, 5)  # readings that belong together are as many
    return many.flatmap(
        lambda count: st.fixed_dictionaries(
            {each.name: _typed(each, count) for each in declared.inputs}
        )
    )


def _typed(each: Input | Choice, count: int) -> st.SearchStrategy[Typed]:
    if isinstance(each, Choice):
        return st.sampled_from(list(each.options)).map(Typed)
    usual = each.take(Typed(each.default), "us")[0]
    readings = usual if isinstance(usual, tuple) else (float(usual),)

    @st.composite
    def typed(draw: st.DrawFn) -> Typed:
        unit = draw(st.sampled_from(each.kind.units))
        like = draw(st.floats(1 / 3, 3))
        off = st.floats(0.9, 1.1) if each.several > 1 else st.just(1.0)
        values = [min(max(one * like * draw(off), each.low), each.high) for one in readings[:count]]
        return Typed("; ".join(f"{unit.out_of_si(one):.6g}" for one in values), unit.symbol)

    return typed()
