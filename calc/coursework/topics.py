"""Public task topics that the chapters map to. A map, no promise: which examination asks for what,
and in which words, is for the authority that holds it to say.

A chapter stands beside a topic when its problems ask for what the topic names; that judgement is
ours. `LISTS` says where the topics stand and how they were seen.
"""

from typing import NamedTuple


class Topic(NamedTuple):
    """A topic as a public list names it, shortened, and the chapters' sets that map to it."""

    list: str
    code: str
    words: str
    sets: tuple[str, ...]


_LIST = "water distribution exams"
_PLUMBER = "plumber standard"
LISTS = {
    _PLUMBER: "Canadian Council of Directors of Apprenticeship, Red Seal Occupational Standard: "
    "Plumber, 2016, task D-11; read on the council's pages on 25 November 2026, whose edition "
    "numbers the criteria of D-11.01 otherwise than that of 2016",
    _LIST: "Water Distribution Exams: Expected Range of Knowledge, grades D1 to D5; read on the "
    "web on 25 November 2026, in a copy that shows neither author nor year",
}

TOPICS = (
    Topic(
        _PLUMBER,
        "D-11.01",
        "water service: demand flow",
        ("well_what_the_house_takes", "balance", "open_tank_outlet"),
    ),
    Topic(
        _PLUMBER,
        "D-11.01",
        "water service: peak demand flow",
        ("well_what_the_house_takes", "well_what_it_gives", "well_storage", "open_tank_run"),
    ),
    Topic(
        _PLUMBER,
        "D-11.01",
        "water service: size of pipe by elevation, pressure and velocity",
        ("well_pump_and_pipe", "open_tank_inlet", "open_tank_intake"),
    ),
    Topic(
        _PLUMBER,
        "D-11",
        "water service from a private supply: troubleshooting, diagnosing, maintenance",
        ("well_diagnosis", "well_pressure_tank", "open_tank_interlocks", "open_tank_filter"),
    ),
    Topic(_LIST, "", "disinfection: well disinfection", ("well_disinfection",)),
    Topic(
        _LIST,
        "",
        "hydraulics: flow rates, head loss, pressure and volume, static and dynamic pressure",
        (
            "balance",
            "open_tank_filter",
            "open_tank_inlet",
            "open_tank_intake",
            "open_tank_outlet",
            "well_pump_and_pipe",
        ),
    ),
    Topic(
        _LIST,
        "",
        "hydraulics: storage facilities, assess system demand",
        ("well_storage", "well_what_the_house_takes", "open_tank_run"),
    ),
    Topic(
        _LIST,
        "",
        "equipment: pump types, uses and sizes; water horsepower; troubleshoot pumps and motors",
        ("well_pump_and_pipe", "well_diagnosis", "well_pressure_tank"),
    ),
    Topic(_LIST, "", "equipment: power generators", ("well_electricity",)),
    Topic(_LIST, "", "equipment: wells", ("well_what_it_gives", "well_pumping_test")),
    Topic(
        _LIST,
        "",
        "water quality: inorganic contaminants, pH, hardness",
        (
            "radon_what_else",
            "radon_sample",
            "radon_verify",
            "treatment_report",
            "treatment_carbonate",
            "treatment_acid_water",
            "treatment_iron",
            "treatment_hardness",
            "treatment_other",
        ),
    ),
)


def mapped(name: str) -> list[Topic]:
    """The topics that a set maps to; an empty list where the lists we have read name none."""
    return [topic for topic in TOPICS if name in topic.sets]
