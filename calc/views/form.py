"""A calculator as a form. Without a script it still shows the example and prints."""

from calc.figures import plainly_written
from calc.model import UNIT_SETS, Calculator, Case, Choice, Input
from calc.units import Unit
from calc.views.html import Safe, cited, joined, tag
from calc.views.timer import timer
from calc.views.words import with_unit

SIDE_BY_SIDE = 7  # options shown at once; more are a list to open


def shown_text(case: Case, name: str) -> str:
    """What the field shows: the typed text itself in the unit it was typed in."""
    typed, each = case.typed[name], case.calculator.input(name)
    if name not in case.values or isinstance(each, Choice):
        return typed.text
    unit = case.units[name]
    if unit.symbol == typed.unit or (typed.unit and unit == case.given[name]):
        return typed.text
    return "; ".join(plainly_written(unit.out_of_si(one), 4) for one in _all(case, name))


def reading(case: Case, name: str) -> str:
    """The value in another unit, so that a wrong unit shows at once: the unit beside the
    field if the text brought its own, else the usual one of the other unit set."""
    each = case.calculator.input(name)
    if name not in case.values or isinstance(each, Choice) or each.several > 1:
        return ""
    unit, given = case.units[name], case.given[name]
    typed_own = given != unit and case.typed[name].unit == unit.symbol
    other = unit if typed_own else _other(each, unit)
    if other is None:
        return ""
    (value,) = _all(case, name)
    return f"=\u00a0{with_unit(plainly_written(other.out_of_si(value), 3), other)}"


def shown_sure(case: Case, name: str) -> str:
    """The plus-or-minus as the field shows it: as typed, else in the unit the field shows."""
    each, typed = case.calculator.input(name), case.typed[name]
    if isinstance(each, Choice) or each.several > 1:
        return ""
    text = (typed.sure or each.sure).strip()
    if name not in case.sures or text.endswith("%"):
        return text
    unit = case.units[name]
    if typed.sure and unit.symbol == typed.unit:
        return text
    return f"{plainly_written(case.sures[name] / unit.scale, 4)} {unit.symbol}" if text else ""


def _other(each: Input, unit: Unit) -> Unit | None:
    usual = (each.usual(unit_set) for unit_set in UNIT_SETS)
    return next((one for one in usual if one != unit), None)


def _all(case: Case, name: str) -> tuple[float, ...]:
    value = case.values[name]
    return value if isinstance(value, tuple) else (float(value),)


def form(case: Case, key: str, root: str) -> Safe:
    """The form of a case. `key` makes its ids the page's own."""
    calculator = case.calculator
    groups = list(dict.fromkeys(each.group for each in calculator.inputs))
    return tag(
        "form",
        tag("h3", calculator.title, class_="calc-title"),
        tag("p", calculator.question, class_="calc-question"),
        _cautions(calculator, root),
        _unit_set(case, key),
        *(
            tag(
                "fieldset",
                tag("legend", group),
                *(_field(case, e, key) for e in calculator.inputs if e.group == group),
                class_="calc-group",
            )
            for group in groups
        ),
        class_="calc-fields",
        novalidate=True,
        autocomplete="off",
    )


def _cautions(calculator: Calculator, root: str) -> Safe:
    heads = ", ".join(text.partition(".")[0].lower() for text in calculator.cautions[:-1])
    return tag(
        "details",
        tag("summary", f"Cautions: {heads}"),
        tag("ul", *(tag("li", cited(text, root)) for text in calculator.cautions)),
        class_="calc-cautions",
    )


def _unit_set(case: Case, key: str) -> Safe:
    return tag(
        "fieldset",
        tag("legend", "Units"),
        *(
            tag(
                "label",
                tag(
                    "input",
                    type="radio",
                    name=f"{key}.units",
                    value=value,
                    checked=case.unit_set == value,
                    data_units=value,
                ),
                tag("span", label),
            )
            for value, label in (("us", "US"), ("si", "SI"))
        ),
        class_="calc-set",
    )


def _field(case: Case, each: Input | Choice, key: str) -> Safe:
    id_ = f"{key}-{each.name}"
    help_ = tag(
        "details",
        tag("summary", "How?", aria_label=f"How? {each.label}"),
        tag("p", each.measure, id=f"{id_}-help"),
        class_="calc-help",
    )
    error = tag("p", class_="calc-error", id=f"{id_}-error")
    if isinstance(each, Choice) and len(each.options) > SIDE_BY_SIDE:
        return tag(
            "div",
            tag("label", each.label, for_=id_),
            tag("div", _list(case, each, id_), class_="calc-entry"),
            error,
            help_,
            class_="calc-field",
            data_field=each.name,
        )
    if isinstance(each, Choice):
        return tag(
            "fieldset",
            tag("legend", each.label),
            *(_option(case, each, value, key) for value in each.options),
            help_,
            error,
            class_="calc-choice",
            data_field=each.name,
        )
    field = tag(
        "div",
        tag("label", each.label, for_=id_),
        _entry(case, each, id_),
        tag("p", reading(case, each.name), class_="calc-reading"),
        _sure(case, each, id_),
        error,
        help_,
        class_="calc-field",
        data_field=each.name,
    )
    return joined([timer(case.calculator, each), field]) if each.timed else field


def _sure(case: Case, each: Input, id_: str) -> Safe:
    if each.several > 1 or not case.calculator.trials:
        return Safe()
    box = tag(
        "input",
        type="text",
        inputmode="decimal",
        aria_label=f"Plus or minus, of: {each.label}",
        aria_describedby=f"{id_}-error",
        value=shown_sure(case, each.name),
        data_sure=True,
    )
    return tag("label", tag("span", "±"), box, class_="calc-sure-entry")


def _option(case: Case, each: Choice, value: str, key: str) -> Safe:
    box = tag(
        "input",
        type="radio",
        name=f"{key}.{each.name}",
        value=value,
        checked=case.typed[each.name].text == value,
        aria_describedby=f"{key}-{each.name}-help {key}-{each.name}-error",
    )
    return tag("label", box, tag("span", each.options[value]))


def _list(case: Case, each: Choice, id_: str) -> Safe:
    options = [
        tag("option", said, value=value, selected=case.typed[each.name].text == value)
        for value, said in each.options.items()
    ]
    described = f"{id_}-help {id_}-error"
    return tag("select", *options, id=id_, aria_describedby=described, data_pick=True)


def _entry(case: Case, each: Input, id_: str) -> Safe:
    unit = case.units[each.name]
    texts = [part.strip() for part in shown_text(case, each.name).split(";")]
    boxes = [
        tag(
            "input",
            type="text",
            inputmode="decimal",
            enterkeyhint="next",
            id=id_ if place == 0 else f"{id_}-{place + 1}",
            aria_label=f"{each.label} {place + 1}" if each.several > 1 else None,
            aria_describedby=f"{id_}-help {id_}-error",
            value=texts[place] if place < len(texts) else "",
        )
        for place in range(each.several)
    ]
    options = [
        tag("option", one.symbol, selected=one == unit) for one in each.kind.units if one.symbol
    ]
    select = tag("select", *options, aria_label=f"Unit of: {each.label}") if options else Safe()
    return tag(
        "div",
        joined(boxes),
        select,
        class_="calc-entry calc-several" if each.several > 1 else "calc-entry",
    )
