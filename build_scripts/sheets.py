"""A visit's sheet as the build draws it: every field empty, to print or for the script to fill."""

from calc.calculators import calculator
from calc.model import Choice, Input
from calc.views.html import Safe, cited, joined, tag
from calc.visits.path import Step, Visit
from calc.vocabulary import words


def visit_sheet(name: str, visit: Visit, root: str) -> Safe:
    """The steps as they stand before any job: a sheet to print, or to fill by the script."""
    steps = [_step(name, place, step, root) for place, step in enumerate(visit.steps, 1)]
    return joined(steps)


def _step(visit_name: str, place: int, step: Step, root: str) -> Safe:
    tick = tag(
        "label",
        tag(
            "input",
            type="checkbox",
            aria_label=f"Done: {step.title}",
            data_tick=f"{visit_name}.{step.name}",
        ),
        tag("span", "Done"),
        class_="visit-tick",
    )
    return tag(
        "section",
        tag("h3", f"{place}. {step.title}", id=step.name),
        tag("p", cited(step.caution, root), class_="calc-finding", data_level="caution")
        if step.caution
        else Safe(),
        tag("p", step.do),
        *(_ask(visit_name, step, words()[each]) for each in step.asks),
        tag("div", _opens(step), data_part=f"answer-{step.name}"),
        tick,
        class_="visit-step",
        data_step=step.name,
    )


def _opens(step: Step) -> Safe:
    return tag("p", f"Calculator: {calculator(step.opens).title}.") if step.opens else Safe()


def _ask(visit_name: str, step: Step, each: Input | Choice) -> Safe:
    """An empty field for a figure."""
    id_ = f"{visit_name}-{step.name}-{each.name}"
    described = f"{id_}-help {id_}-error"
    help_ = tag(
        "details",
        tag("summary", "How?", aria_label=f"How? {each.label}"),
        tag("p", each.measure, id=f"{id_}-help"),
        class_="calc-help",
    )
    told = joined((tag("p", class_="calc-error", id=f"{id_}-error"), help_))
    if isinstance(each, Choice):
        options = [
            tag(
                "label",
                tag("input", type="radio", name=id_, value=value, aria_describedby=described),
                tag("span", said),
            )
            for value, said in each.options.items()
        ]
        return tag(
            "fieldset",
            tag("legend", each.label),
            *options,
            told,
            class_="calc-choice",
            data_field=each.name,
        )
    return tag(
        "div",
        tag("label", each.label, for_=id_),
        _entry(each, id_, described),
        tag("p", class_="calc-reading"),
        told,
        class_="calc-field",
        data_field=each.name,
    )


def _entry(each: Input, id_: str, described: str) -> Safe:
    boxes = [
        tag(
            "input",
            type="text",
            inputmode="decimal",
            enterkeyhint="next",
            id=id_ if place == 0 else f"{id_}-{place + 1}",
            aria_label=f"{each.label} {place + 1}" if each.several > 1 else None,
            aria_describedby=described,
        )
        for place in range(each.several)
    ]
    usual = each.usual("us")
    options = [tag("option", u.symbol, selected=u == usual) for u in each.kind.units if u.symbol]
    select = tag("select", *options, aria_label=f"Unit of: {each.label}") if options else Safe()
    kind = "calc-entry calc-several" if each.several > 1 else "calc-entry"
    return tag("div", joined(boxes), select, class_=kind)
