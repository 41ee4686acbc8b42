"""Figures as people write and read them: read one, write one, compare with a printed one."""

import re
from math import floor, isfinite, log10

from calc.errors import Refused

THIN_SPACE = "\u202f"  # between thousands: no reader takes it for a decimal mark
MINUS = "\u2212"
LONGEST = 40  # characters of a number; no measurement has more

_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_GROUPED = re.compile(r"\d{1,3}(?:[ \u2009\u202f\u00a0]\d{3})+(?!\d)")
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})*,\d{3}\.\d+|\d{1,3}(?:,\d{3}){2,}")
_AMBIGUOUS = re.compile(r"[1-9]\d{0,2},\d{3}")
_MIXED = re.compile(r"(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*/\s*(\d+)", re.ASCII)
NUMBER = re.compile(
    r"""[-+]?\s*(?:
        (?:\d+(?:\s+|\s*-\s*))?\d+\s*/\s*\d+        # 1 1/2, 3/4
      | \d{1,3}(?:[ \u2009\u202f\u00a0]\d{3})+(?:[.,]\d+)?(?!\d)
      | (?:\d+(?:[.,]\d+)*[.,]?|[.,]\d+)(?:[eE][-+]?\d+)?
    )""",
    re.VERBOSE | re.ASCII,  # other scripts' digits are told to be no number, not half read
)


def plain(text: str) -> str:
    """`text` with typographic minus signs and fractions turned into typewriter ones."""
    text = text.strip()
    if text.isascii():  # as nearly all are: there is nothing to look for
        return text
    for typeset, typed in (
        (MINUS, "-"), ("–", "-"), ("⁄", "/"), ("′", "'"), ("’", "'"), ("″", '"'), ("”", '"')
    ):  # fmt: skip
        text = text.replace(typeset, typed)
    for sign, fraction in _VULGAR.items():
        text = text.replace(sign, f" {fraction}")
    return text.strip()


def read_number(text: str) -> float:
    """The number a person wrote.

    Takes 5, .5, 5,5 (decimal comma), 1 1/2, 1-1/2, ½, −5, 1.2e3, 1 234 and 1,234.5.

    >>> read_number("1 1/2"), read_number("−0,5"), read_number("17 688")
    (1.5, -0.5, 17688.0)

    Raises Refused "ambiguous" for 1,234, which may mean 1234 or 1.234, and
    "unreadable" for the rest.
    """
    written_ = plain(text)
    sign, body = 1.0, written_
    if written_[:1] in ("-", "+"):
        sign = -1.0 if written_[0] == "-" else 1.0
        body = written_[1:].strip()
    if _AMBIGUOUS.fullmatch(body):
        raise Refused("ambiguous", text=text)
    value = _unsigned(body)
    if value is None or not isfinite(value):
        raise Refused("unreadable", text=text)
    return sign * value


def _unsigned(body: str) -> float | None:
    if len(body) > LONGEST:
        return None
    if mixed := _MIXED.fullmatch(body):
        whole, over, under = (int(part or 0) for part in mixed.groups())
        return whole + over / under if under else None
    if _THOUSANDS.fullmatch(body):
        body = body.replace(",", "")
    body = _GROUPED.sub(lambda group: re.sub(r"\D", "", group[0]), body).replace(",", ".")
    if not re.fullmatch(r"(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?", body, re.IGNORECASE | re.ASCII):
        return None
    return float(body)


def written(value: float, digits: int = 3) -> str:
    """`value` rounded to `digits` significant figures, thousands apart, a true minus sign.

    Digits before the decimal point are never thrown away below ten thousand: 1 440
    gallons stay 1 440 at three figures.

    >>> written(5.34527), written(17688.2), written(1440.3), written(-0.0656, 2)
    ('5.35', '17\\u202f700', '1\\u202f440', '\\u22120.066')
    """
    decimals, rounded = _rounded(value, digits)
    text = f"{abs(rounded):,.{max(decimals, 0)}f}".replace(",", THIN_SPACE)
    return f"{MINUS}{text}" if rounded < 0 else text


def plainly_written(value: float, digits: int = 6) -> str:
    """`value` as a person types it back into a field: no grouping, no trailing zeros.

    >>> plainly_written(21.198312), plainly_written(5.0), plainly_written(0.000123)
    ('21.1983', '5', '0.000123')
    """
    decimals, rounded = _rounded(value, digits)
    text = f"{rounded:.{max(decimals, 0)}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _rounded(value: float, digits: int) -> tuple[int, float]:
    if value == 0:
        return 0, 0.0
    decimals = digits - 1 - floor(log10(abs(value)))
    if abs(value) < 1e4:
        decimals = max(decimals, 0)
    rounded = round(value, decimals)
    if rounded and floor(log10(abs(rounded))) > floor(log10(abs(value))) and decimals > 0:
        decimals -= 1  # 9.996 becomes 10.0, not 10.00
    return decimals, rounded + 0.0


def agrees(value: float, printed: str) -> bool:
    """Whether `value` rounds to the figure printed.

    >>> agrees(725.8, "726"), agrees(725.4, "726"), agrees(17688, "17 688")
    (True, False, True)
    """
    body = re.sub(r"\s", "", plain(printed))
    decimals = len(body.partition(".")[2])
    # a hair more than half a unit: 0.125 must agree with "0.13" however it is stored
    return abs(value - float(body)) <= 0.5 * 10.0**-decimals * (1 + 1e-9)
