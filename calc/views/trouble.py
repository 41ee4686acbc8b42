"""The trouble call: from what the customer says, by the next best measurement, to a cause."""

from collections.abc import Iterator, Mapping
from typing import Any

from calc.diagnosis.evidence import ENOUGH, best_steps, chances, fix, found
from calc.diagnosis.path import Step, Symptom, symptom_of
from calc.job import Job, read_job
from calc.views.house import Where, link, where
from calc.views.html import Safe, cited, joined, tag
from calc.views.jobs import table

type Data = Mapping[str, Any]
type Reply = dict[str, Any]

COMPLAINT = "trouble.complaint"
FOUND = "trouble.found"
_SKIPPED = "not taken"


def show(asked: Data) -> Reply:
    """The trouble call as the job has it; `table` is the page's, symptoms by name."""
    symptoms = {name: symptom_of(each) for name, each in asked["table"].items()}
    return {"parts": {"sheet": sheet(read_job(asked["job"]), symptoms, where(asked))}}


def sheet(job: Job, symptoms: Mapping[str, Symptom], place: Where) -> Safe:
    """What to do next: say what is complained of, or measure, or mend."""
    complaint = job.marks.get(COMPLAINT)
    if not complaint or complaint.value not in symptoms:
        return _complaints(symptoms)
    name = complaint.value
    symptom = symptoms[name]
    seen, skipped = _seen(job, name, symptom)
    cause = found(symptom, seen, skipped)
    parts = [
        _again(symptom),
        _first(symptom, place.root),
        _taken(symptom, name, seen, skipped),
        _found(job, symptom, seen, cause, place) if cause else Safe(),
    ]
    steps = best_steps(symptom, seen, skipped)
    if steps and not cause:
        parts.append(_next(name, steps[0], len(steps)))
    return joined([*parts, _chances(symptom, seen)])


def _complaints(symptoms: Mapping[str, Symptom]) -> Safe:
    buttons = [_marking(each.says, COMPLAINT, name, each.says) for name, each in symptoms.items()]
    return tag(
        "div",
        tag("h3", "What does the customer say?"),
        tag("div", *buttons, class_="visit-picks"),
    )


def _again(symptom: Symptom) -> Safe:
    said = tag("strong", f"“{symptom.says}”")
    return tag("p", said, " ", _marking("Another complaint", COMPLAINT, ""), class_="trouble-again")


def _marking(label: str, mark: str, value: str, note: str = "", named: str = "") -> Safe:
    """A button that marks a step of the job. Its name says more where several have one label."""
    return tag(
        "button",
        label,
        type="button",
        aria_label=named or None,
        data_mark=mark,
        data_value=value or None,
        data_note=note,
    )


def _first(symptom: Symptom, root: str) -> Safe:
    words = Safe(f" {cited(symptom.first, root)}")
    return tag("p", tag("strong", "First."), words, class_="calc-finding", data_level="danger")


def _seen(job: Job, name: str, symptom: Symptom) -> tuple[dict[str, int], list[str]]:
    """The readings taken, by step, and steps left out. What an edition changed is no reading."""
    seen, skipped = {}, []
    for step in symptom.steps:
        mark = job.marks.get(_mark(name, step))
        shows = [branch.shows for branch in step.branches]
        if mark and mark.note in shows:
            seen[step.name] = shows.index(mark.note)
        elif mark and mark.value == "0":
            skipped.append(step.name)
    return seen, skipped


def _mark(name: str, step: Step) -> str:
    return f"trouble.{name}.{step.name}"


def _taken(symptom: Symptom, name: str, seen: Mapping[str, int], skipped: list[str]) -> Safe:
    rows = []
    for step in symptom.steps:
        if step.name in seen:
            shown = step.branches[seen[step.name]].shows
        elif step.name in skipped:
            shown = f"({_SKIPPED})"
        else:
            continue
        undo = _marking("Undo", _mark(name, step), "", named=f"Undo: {step.take}")
        rows.append(tag("li", step.take, " ", tag("strong", shown), " ", undo))
    return tag("ol", *rows, class_="trouble-taken") if rows else Safe()


def _next(name: str, step: Step, left: int) -> Safe:
    mark = _mark(name, step)
    buttons = [
        _marking(branch.shows, mark, str(place), branch.shows)
        for place, branch in enumerate(step.branches, 1)
    ]
    why = "It separates the causes best." if left > 1 else "It is the last that tells."
    return tag(
        "div",
        tag("h3", "Measure next"),
        tag("p", step.take),
        tag("p", why, class_="house-usual"),
        tag("div", *buttons, class_="visit-picks"),
        tag("p", _marking("I cannot take this one", mark, "0"), class_="calc-actions"),
        class_="trouble-next",
    )


def _found(job: Job, symptom: Symptom, seen: Mapping[str, int], key: str, place: Where) -> Safe:
    cause, now = symptom.causes[key], chances(symptom, seen)[key]
    head = "It is most likely this." if now >= ENOUGH else "Nothing left to measure. Likeliest:"
    how = fix(symptom, seen, key)
    written = job.marks.get(FOUND)
    is_kept = written is not None and written.note == cause.name
    chapter = f"{place.root}{cause.chapter.removesuffix('.md')}.html"
    return tag(
        "div",
        tag("p", tag("strong", head), f" {cause.name}.", class_="calc-finding", data_level="good"),
        tag("h4", "The proof"),
        tag("ul", *_proof(symptom, seen, key)),
        tag("h4", "Then"),
        tag("p", cited(how.do, place.root)),
        tag("p", tag("a", "The chapter on the fix", href=chapter)),
        tag("p", "With the job’s figures: ", link(how.ask.split()[0], place))
        if how.ask
        else Safe(),
        tag("p", "Afterwards take the same readings again: they are the proof that it is mended."),
        tag("p", "Written into the job.")
        if is_kept
        else tag(
            "p",
            _marking("Write the cause into the job", FOUND, key, cause.name),
            class_="calc-actions",
        ),
        class_="trouble-found",
    )


def _proof(symptom: Symptom, seen: Mapping[str, int], cause: str) -> Iterator[Safe]:
    """The readings, each with whether it speaks for the cause."""
    for step in symptom.steps:
        if step.name in seen:
            branch = step.branches[seen[step.name]]
            speaks = "speaks for it" if cause in branch.fits else "does not speak for it"
            yield tag("li", f"{branch.shows} {branch.means} ", tag("em", f"({speaks})"))


def _chances(symptom: Symptom, seen: Mapping[str, int]) -> Safe:
    now = chances(symptom, seen)
    rows = [
        tag("tr", tag("td", symptom.causes[cause].name), tag("td", _told(now[cause])))
        for cause in sorted(now, key=lambda each: -now[each])
    ]
    inside = table("Causes, by what was seen", ("Cause", "Chance"), rows)
    return tag("details", tag("summary", "How likely each cause is"), inside, class_="calc-more")


def _told(chance: float) -> str:
    """A chance as it deserves: it rests on judgement."""
    return "under 5\u00a0%" if chance < 0.05 else f"about {5 * round(20 * chance)}\u00a0%"
