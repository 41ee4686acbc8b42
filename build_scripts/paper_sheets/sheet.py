"""Problem sheets: what is asked, with room for the working. No answers."""

from collections.abc import Container
from xml.etree.ElementTree import Element

from build_scripts.book.tree import make
from build_scripts.paper_sheets.paper import FORMS, Copy, marking, part, whole
from calc.coursework.problem import ProblemSet
from calc.coursework.variants import Question, Variant


def document(
    problem_set: ProblemSet,
    section: str,
    copies: list[Copy],
    paper: str,
    odd: Container[int] = (),
) -> Element:
    """The sheets of a class as a document to print.

    odd -- variants that get one more page, so that the next sheet begins on paper of its own:
           Chromium knows no break to a right-hand page
    """
    heads = [marking(problem_set, each) for each in copies]
    spare = make("h2", "Room for working", class_="spare")
    parts = [
        part(
            place,
            "sheet",
            *_sheet(problem_set, section, each),
            *([spare] if each.number in odd else []),
        )
        for place, each in enumerate(copies)
    ]
    return whole(f"{problem_set.title}: sheets", paper, heads, *parts)


def _sheet(problem_set: ProblemSet, section: str, copy: Copy) -> list[Element]:
    minutes = sum(each.minutes for each in problem_set.problems)
    problems = enumerate(copy.sheet.variants.values(), 1)
    return [
        make("h1", problem_set.title),
        make("p", f"{copy.sheet.full} marks, about {minutes} minutes. Give each figure with "
             "its unit; any unit of the right kind will do. Show the working: a later step is "
             "judged by your own earlier figure.", class_="rules"),
        make("p", "For: ", make("span", copy.label, class_="line"), " Class: ",
             make("span", section, class_="line"), class_="whose"),
        *(_problem(place, each) for place, each in problems),
    ]  # fmt: skip


def _problem(place: int, dealt: Variant) -> Element:
    told = [make("p", dealt.text, class_="story")] if dealt.text else []
    asked = [_question(f"{place}.{at}", each) for at, each in enumerate(dealt.questions, 1)]
    # the story stays with its first question
    together = make("div", heading(place, dealt), *told, asked[0], class_="together")
    return make("div", together, *asked[1:], class_="problem")


def heading(place: int, dealt: Variant) -> Element:
    """The problem's number and form, as sheet and key both say it."""
    problem = dealt.problem
    about = make("span", f" {problem.name}, about {problem.minutes} min", class_="about")
    return make("h2", f"{place}. {FORMS[problem.form]}", about)


def _question(place: str, question: Question) -> Element:
    marks = f" [{question.marks} marks]" if question.marks > 1 else ""
    ask = make("p", make("b", place), f" {question.ask}{marks}", class_="ask")
    if question.options:
        boxes = [make("li", words) for words in question.options.values()]
        return make("div", ask, make("ul", *boxes, class_="options"), class_="question")
    digits = f" to {question.digits} figures" if question.digits > 1 else ""
    answer = make("p", f"Answer{digits}: ", make("span", class_="line"), class_="answer")
    if question.usual and question.usual.symbol:  # a count has none
        answer.extend((make("span", "Unit: "), make("span", class_="line unit")))
    return make("div", ask, make("div", class_="working"), answer, class_="question")
