"""The answer of a case as HTML: what it means, the figures, a picture, the working."""

from collections.abc import Iterator

from calc import sources
from calc.model import Case, Chart, Finding, Output
from calc.views import chart as charts
from calc.views import formula
from calc.views.html import Safe, cited, joined, tag
from calc.views.words import finding_words, output_words, refusal_words


def answer(case: Case, key: str, root: str, example: str = "") -> Safe:
    """What is told of a case: its answer, or that there is none yet.

    key     -- makes ids the page's own
    root    -- way from the page to the handbook's root
    example -- said first where the figures are not the reader's own
    """
    if not case.answer:
        return _unanswered(case)
    return joined(
        [
            *([tag("p", example, class_="calc-example")] if example else []),
            *(_finding(case, finding) for finding in case.answer.findings),
            tag(
                "dl",
                *(_output(case, each) for each in case.calculator.outputs),
                class_="calc-outputs",
            ),
            *(_figure(case, c, f"{key}-chart{n}") for n, c in enumerate(case.answer.charts)),
            _working(case),
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


def _finding(case: Case, finding: Finding) -> Safe:
    words = Safe(f" {cited(finding_words(case, finding), '')}")
    head = tag("strong", finding.head)
    return tag("p", head, words, class_="calc-finding", data_level=finding.level)


def _output(case: Case, output: Output) -> Safe:
    assert case.answer
    value = case.answer.outputs[output.name]
    outside = value is not None and output.is_outside(value)
    return tag(
        "div",
        tag("dt", output.label),
        tag(
            "dd",
            *_figure_and_unit(output_words(case, output), value is not None),
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


def _figure(case: Case, chart: Chart, key: str) -> Safe:
    return tag(
        "figure",
        charts.svg(case, chart, key),
        tag("figcaption", f"{chart.title}. {charts.describe(case, chart)}"),
        tag(
            "details",
            tag("summary", "Figures of the chart"),
            charts.table(case, chart),
        ),
        class_="calc-chart",
    )


def _working(case: Case) -> Safe:
    assert case.answer
    return tag(
        "details",
        tag("summary", "Show the working"),
        tag("ol", *(_step(case, n) for n in range(len(case.answer.steps))), class_="calc-steps"),
        class_="calc-working",
    )


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
    return tag("p", "Sources: ", Safe(", ".join(links)), ".", class_="calc-sources")
