"""The answer of a case as HTML: what it means, the figures, a picture, the working."""

from collections.abc import Iterator, Mapping

from calc import sources
from calc.model import Case, Finding, Output
from calc.uncertainty import Sure
from calc.views import chart, formula
from calc.views.html import Safe, cited, joined, tag
from calc.views.scene import scene_figure
from calc.views.sure import advice, doubt, main_output, output_sure
from calc.views.words import finding_words, output_words, refusal_words


def answer(
    case: Case,
    key: str,
    root: str,
    example: str = "",
    sures: Mapping[str, Sure] | None = None,
    *,
    brief: bool = False,
) -> Safe:
    """What is told of a case: its answer, or that there is none yet.

    key     -- makes ids the page's own
    root    -- way from the page to the handbook's root
    example -- said first where the figures are not the reader's own
    sures   -- how sure each answer is, once that is known
    brief   -- without the working, which is most of it: a page that is typed in asks for it later
    """
    if not case.answer:
        return _unanswered(case)
    sures = sures or {}
    return joined(
        [
            *([tag("p", example, class_="calc-example")] if example else []),
            *(finding_html(case, finding, root) for finding in case.answer.findings),
            tag(
                "dl",
                *(_output(case, each, sures) for each in case.calculator.outputs),
                class_="calc-outputs",
            ),
            *(
                scene_figure(case, each, f"{key}-scene{n}")
                for n, each in enumerate(case.answer.scenes)
            ),
            *(
                chart.figure(case, each, f"{key}-chart{n}")
                for n, each in enumerate(case.answer.charts)
            ),
            _sureness(case, sures, key),
            _working(case, brief),
            _sources(case, root),
        ]
    )


def _unanswered(case: Case) -> Safe:
    wrong = [error.field for error in case.errors]
    labels = [each.label for each in case.calculator.inputs if each.name in wrong]
    return tag("p", f"No answer yet. To mend: {'; '.join(labels)}.", class_="calc-stale")


def errors(case: Case) -> dict[str, str]:
    """What is wrong, by the name of the input."""
    return {error.field: refusal_words(case, error) for error in case.errors}


def finding_html(case: Case, finding: Finding, root: str) -> Safe:
    """One finding, its level told by words, colour and rule."""
    words = Safe(f" {cited(finding_words(case, finding), root)}")
    head = tag("strong", finding.head)
    return tag("p", head, words, class_="calc-finding", data_level=finding.level)


def _output(case: Case, output: Output, sures: Mapping[str, Sure]) -> Safe:
    assert case.answer
    value = case.answer.outputs[output.name]
    outside = value is not None and output.is_outside(value)
    return tag(
        "div",
        tag("dt", output.label),
        tag(
            "dd",
            *_figure_and_unit(output_words(case, output), value is not None),
            tag("span", output_sure(case, output, sures), class_="calc-sure"),
            *([tag("span", output.outside, class_="calc-outside")] if outside else []),
        ),
        data_output=output.name,
        data_level="danger" if outside else None,
    )


def _figure_and_unit(words: str, is_figure: bool) -> Iterator[Safe]:
    if not is_figure:
        yield tag("span", words, class_="calc-none")
        return
    figure, _, unit = words.partition("\u00a0")
    if "\u00a0" in unit:  # 7 min 55 s is one figure
        figure, unit = words, ""
    yield tag("span", figure, class_="calc-figure")
    if unit:
        yield tag("span", f"\u00a0{unit}", class_="calc-unit")


def _sureness(case: Case, sures: Mapping[str, Sure], key: str) -> Safe:
    output = main_output(case, sures)
    if output is None:
        return Safe()
    sure = sures[output.name]
    return tag(
        "details",
        tag("summary", "How sure"),
        tag("p", advice(case, output, sure)),
        chart.figure(case, doubt(case, output, sure), f"{key}-doubt"),
        class_="calc-sureness",
    )


def _working(case: Case, brief: bool) -> Safe:
    assert case.answer
    steps = () if brief else (_step(case, n) for n in range(len(case.answer.steps)))
    return tag(
        "details",
        tag("summary", "Show the working"),
        *([] if brief else [tag("ol", *steps, class_="calc-steps"), _letters(case)]),
        class_="calc-working",
    )


def _letters(case: Case) -> Safe:
    assert case.answer
    rows = [
        tag("div", tag("dt", formula.letter_mathml(name)), tag("dd", meaning))
        for name, meaning in formula.meanings(case.calculator, case.answer.steps).items()
    ]
    return tag("dl", *rows, class_="calc-letters")


def _step(case: Case, place: int) -> Safe:
    assert case.answer
    step = case.answer.steps[place]
    return tag(
        "li",
        tag("p", step.label, class_="calc-step-label"),
        tag(
            "p",
            formula.as_mathml(step.formula),
            class_="calc-formula",
            role="math",
            aria_label=formula.as_text(step.formula),
            tabindex="0",  # a long one scrolls in its box
        ),
        tag("p", formula.as_worked_text(case, step), class_="calc-put-in"),
    )


def _sources(case: Case, root: str) -> Safe:
    links = [
        tag("a", sources.entry(each).short, href=f"{root}sources.html#{each}")
        for each in case.calculator.sources
    ]
    page = f"{root}reference/calculators/{case.calculator.name}.html"
    more = tag("a", "Formulas, ranges and units of this calculator", href=page)
    return tag("p", "Sources: ", Safe(", ".join(links)), ". ", more, ".", class_="calc-sources")
