"""What a device must hold: every job as the pages have said that they keep it."""

import json
from collections.abc import Mapping

from calc.job import read_job, write_job

type Held = dict[str, str | None]  # figure or mark -> what it says; None: there is none


class Lost(AssertionError):
    """Something that a page had said is kept is not there, or something else is."""


def held(text: str) -> Held:
    """What a job says, by figure and mark. Lost if the text is no whole job file."""
    try:
        job = read_job(text)
    except ValueError as why:
        raise Lost(f"a job that cannot be read: {why}: {text[:200]!r}") from None
    if write_job(job) != text:
        raise Lost(f"a job that is written otherwise: {text[:200]!r}")
    told: Held = {name: json.dumps([each.value, each.unit]) for name, each in job.values.items()}
    return told | {step: mark.value for step, mark in job.marks.items()}


class Model:
    """The jobs, each figure of them with all that it may say: more than one thing only where a
    change was under way when the page or the browser ended."""

    def __init__(self) -> None:
        self.jobs: dict[str, dict[str, set[str | None]]] = {}
        self.perhaps: set[str] = set()  # jobs that may be there or not

    def kept(self, id_: str, text: str) -> None:
        """A job kept whole, with just what is in it."""
        self.jobs[id_] = {key: {said} for key, said in held(text).items()}

    def may_say(self, id_: str, key: str) -> set[str | None]:
        return self.jobs[id_].setdefault(key, {None})

    def changed(self, id_: str, key: str, said: str | None) -> None:
        """A change that the page said is kept."""
        self.jobs[id_][key] = {said}

    def begun(self, id_: str, key: str, said: str | None) -> None:
        """A change that may have been kept."""
        self.may_say(id_, key).add(said)

    def compare(self, stored: Mapping[str, str]) -> None:
        """Lost where the device differs. From then on each figure says what it says there."""
        for id_ in [*self.jobs]:
            if id_ in stored:
                self._compare_one(id_, held(stored[id_]))
            elif id_ in self.perhaps:
                del self.jobs[id_]
            else:
                raise Lost(f"job {id_} is gone")
        self.perhaps.clear()
        if more := stored.keys() - self.jobs.keys():
            raise Lost(f"jobs that nobody kept: {sorted(more)}")

    def _compare_one(self, id_: str, there: Held) -> None:
        for key in self.jobs[id_].keys() | there.keys():
            says, may = there.get(key), self.may_say(id_, key)
            if says not in may:
                raise Lost(f"{key} of job {id_} says {says}, not {' or '.join(map(str, may))}")
            self.jobs[id_][key] = {says}
