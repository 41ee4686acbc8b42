"""The train of treatment against the pages of its boxes, and told in its two drawings."""

import pytest

from calc.charts import Train
from calc.model import Case
from calc.physics.carbonate import from_ph
from calc.request import case_of

ALONE = "place_1=none place_3=none place_4=none"


def answered(words: str) -> Case:
    case = case_of(words.split())
    assert case.answer, case.errors
    return case


def outputs(words: str) -> dict[str, float | None]:
    case = answered(words)
    assert case.answer
    return dict(case.answer.outputs)


def trains(words: str) -> list[Train]:
    case = answered(words)
    assert case.answer
    return [chart for chart in case.answer.charts if isinstance(chart, Train)]


def test_a_neutralizer_alone_does_what_its_page_says() -> None:
    """The page on neutralizers: same tank, bed and grains; all hardness taken as calcium."""
    train = outputs(f"treatment_train {ALONE} hardness=45")
    page = outputs("neutralizer calcium=18.02")
    assert train["tap_ph"] == pytest.approx(page["running_ph"], abs=2e-3)


def test_soda_ash_alone_does_what_its_page_says() -> None:
    """The page on soda ash: the sodium of a feed set for 7.2."""
    train = outputs(f"treatment_train {ALONE} place_2=soda_ash")
    page = outputs("soda_ash target_ph=7.2 calcium=18.02")
    assert train["tap_ph"] == pytest.approx(7.2, abs=1e-6)
    assert train["sodium_brought"] == pytest.approx(page["sodium_added"], rel=1e-6)


def test_strong_aeration_is_what_the_page_on_ph_finds() -> None:
    """The worked case of the page on pH after the aerator: of the carbon dioxide over what the air
    brings, 98 % and a little more is gone."""
    page = outputs("aerated_ph")
    moles, kelvin = 40e-3 / 50.04e-3, 283.15
    left, rest, before = (
        from_ph(float(ph or 0), moles, kelvin, 2 * moles).co2
        for ph in (page["expected_ph"], page["rest_ph"], 6.3)
    )
    assert 0.98 <= 1 - (left - rest) / (before - rest) < 0.99


def test_the_mission_is_followed_to_the_house() -> None:
    """By hand: from the well through stone and air to pump 2 and the house, figures behind each."""
    (train,) = trains("treatment_train")
    assert [place.symbol for place in train.places] == [
        "well", "sediment", "neutralizer", "tank", "pump", "cartridge", "house",
    ]  # fmt: skip
    phs = [place.figures[0] for place in train.places]
    assert phs == sorted(phs)
    assert all(place.why for place in train.places if place.symbol not in ("well", "pump", "house"))
    assert not any(place.wrong for place in train.places)


def test_out_of_order_it_is_drawn_anew() -> None:
    """By hand: a softener before stone; then the same boxes in order, none of them wrong."""
    found, best = trains("treatment_train place_1=softener")
    assert [place.symbol for place in found.places if place.wrong] == ["neutralizer"]
    assert [place.symbol for place in best.places] == [
        "well", "neutralizer", "tank", "pump", "softener", "cartridge", "house",
    ]  # fmt: skip
    assert not any(place.wrong for place in best.places)


def test_a_narrow_tank_may_stand_behind_the_air() -> None:
    """By hand: 8 gpm/ft² of a 10 in tank is less than enters, of a 12 in tank more. Then air goes
    first, the stone falls to what is left, and iron has no filter that needs the pH before it."""
    ahead = "place_1=neutralizer place_2=tank_strong place_3=cartridge place_4=none raw_iron=0.1"
    wide, narrow = (trains(f"treatment_train {ahead} tank_diameter={bore}") for bore in (12, 10))
    assert (len(wide), len(narrow)) == (1, 2)
    behind = ahead.replace("1=neutralizer", "1=tank_strong").replace(
        "2=tank_strong", "2=neutralizer"
    )
    before = outputs(f"treatment_train {ahead} tank_diameter=10")
    after = outputs(f"treatment_train {behind} tank_diameter=10")
    assert float(after["stone_here"] or 0) < 0.2 * float(before["stone_here"] or 0)
    assert float(after["stone_here"] or 0) <= float(before["stone_after_air"] or 0)
