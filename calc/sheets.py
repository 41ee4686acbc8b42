"""The record's sheets, one page each: which values stand where, and what is written by pen.

A line is the name of a value (see `calc.vocabulary`), the same `Named` anew, a `Blank`, a row of
`Ticks` or a `Pair`. A value that the job does not hold is a line to write on.
"""

from typing import NamedTuple


class Named(NamedTuple):
    """A value of the job, called what the reader of the sheet would call it."""

    name: str
    label: str


class Blank(NamedTuple):
    """Something to write by pen: no calculator asks for it."""

    label: str
    unit: str = ""


class Ticks(NamedTuple):
    """Something to tick by pen."""

    label: str
    options: tuple[str, ...] = ("works", "does not", "not there")


class Pair(NamedTuple):
    """The same thing before and after treatment: names of two values, or empty for a line."""

    label: str
    before: str = ""
    after: str = ""
    unit: str = ""


type Line = str | Named | Blank | Ticks | Pair


class Part(NamedTuple):
    """A table of a sheet. `heads` name its columns beside the first."""

    title: str
    lines: tuple[Line, ...]
    heads: tuple[str, ...] = ("Value", "±", "From")


class Tag(NamedTuple):
    """A label to cut out and tie on."""

    title: str
    says: str
    lines: tuple[Line, ...]


class Sheet(NamedTuple):
    """One page.

    says    -- sentences under the title
    parts   -- tables; `tags`: labels in place of them
    answers -- calculators whose headline stands on the sheet once the job alone answers them
    lists   -- heads with sentences, each with a box to tick where `ticked`
    dates   -- whether the next dates stand on it; `drift`: what has drifted since the last visit
    signed  -- whether somebody signs it
    """

    name: str
    title: str
    says: tuple[str, ...] = ()
    parts: tuple[Part, ...] = ()
    tags: tuple[Tag, ...] = ()
    answers: tuple[str, ...] = ()
    lists: tuple[tuple[str, tuple[str, ...]], ...] = ()
    dates: bool = False
    drift: bool = False
    signed: bool = True


PROVED = (
    Ticks("Low water in the open tank stops pump 2"),
    Ticks("Blower stopped: inlet shuts and pump 2 stops"),
    Ticks("Vent blocked: blower's switch trips"),
    Ticks("Power off and on: pump 2 waits for the blower"),
    Ticks("Overflow carries the whole flow in"),
    Ticks("Pump 2's check valve holds"),
    Ticks("Alarm heard"),
    Ticks("Outlet limit locked and tagged", ("yes", "no")),
    Ticks("Bypass shut, locked and labeled", ("yes", "no")),
)
THEN_AND_NOW = ("Last time", "Today", "Change")
RAW_AND_TREATED = ("Raw", "Treated", "Level, from the report")
BEFORE_AND_AFTER = ("Before", "After")
MOST_OUT = Named("worst_outlet", "Flow out, at most")
LEAST_IN = Named("worst_inlet", "Flow in, at least")
NO_ONE_OPENS = "More out than in drains the open tank, and pump 2 then draws air and radon."

COMMISSIONING = Sheet(
    "commissioning",
    "Commissioning sheet",
    parts=(
        Part("Well and pump 1", (
            "well_depth", "static_level", "pump_depth", "well_pump", "well_tank", "well_precharge",
            "well_cut_in", "well_cut_out",
        )),
        Part("Flow into the open tank", (
            "inlet", "inlet_gauge", "rise", "serviced_inlet", "service_at", "worst_inlet",
        )),
        Part("Open tank and aerator", (
            "float_open", "float_closed", "aerator_flow", "aerator_air", "blower_clean",
            "blower_limit",
        )),
        Part("Pump 2 and house tank", ("pump", "cut_in", "cut_out", "house_tank", "precharge")),
        Part("Flow out", ("limit", "outlet", "house_gauge", "worst_outlet", "guard")),
        Part("Radon", ("raw_radon", "treated_radon")),
        Part("Tried today", PROVED, ()),
    ),
    answers=("outlet_setting",),
)  # fmt: skip

SERVICE = Sheet(
    "service",
    "Service sheet",
    parts=(
        Part("Measured", (
            "inlet", "inlet_gauge", "outlet", "house_gauge", "pump", "filter_meter", "well_cut_in",
            "well_precharge", "cut_in", "cut_out", "precharge", "blower_now", "float_open",
            "raw_radon", "treated_radon", "treated_ph", "iron", "water_temperature",
        ), THEN_AND_NOW),
        Part("Done today", (
            Ticks("Filter", ("washed", "changed", "left")),
            Ticks("Rust drained from the open tank", ("yes", "no")),
            Ticks("Blower's air filter", ("cleaned", "changed", "left")),
            Ticks("Floats and alarm tried", ("work", "do not")),
            Ticks("Lamp, salt, media", ("changed", "filled", "none there")),
            Blank("Anything else"),
        ), ()),
    ),
    dates=True,
    drift=True,
)  # fmt: skip

RADON = Sheet(
    "radon",
    "Radon, before and after",
    says=(
        "Both samples on one day, the blower running, after the water has run until it comes fresh "
        "from the well. Fill under water or from a slow stream, no bubble in the vial.",
    ),
    parts=(
        Part("Samples", (
            Pair("Radon in the water", "raw_radon", "treated_radon"),
            Pair("Drawn at which tap"), Pair("Day and hour drawn"), Pair("Vial number"),
            Pair("Second vial's number"), Pair("Day and hour counted"),
            Pair("Plus or minus, from the laboratory"),
        ), BEFORE_AND_AFTER),
        Part("While they were drawn", (
            "aerator_flow", "aerator_air", "blower_now", "inlet", "water_temperature",
        )),
        Part("To judge them by", (
            "target_radon", "house_air", Blank("Share removed: 1 − after / before", "%"),
        )),
        Part("Laboratory", (
            Blank("Name and accreditation no."), Blank("Sent on, by"), Blank("Report no."),
        ), ("", )),
    ),
    dates=True,
)  # fmt: skip

WATER_REPORT = Sheet(
    "water_report",
    "Water report",
    says=(
        "Copy the laboratory's figures with their units. “Less than” is a result: write it so.",
    ),
    parts=(
        Part("Samples", (
            Pair("Drawn at which tap"), Pair("Day and hour drawn"), Pair("Sample number"),
        ), ("Raw", "Treated")),
        Part("Germs", (
            Pair("Total coliform bacteria"), Pair("E. coli"),
        ), RAW_AND_TREATED),
        Part("Water", (
            Pair("pH", "entering_ph", "treated_ph"), Pair("Alkalinity, as CaCO₃", "alkalinity"),
            Pair("Hardness, as CaCO₃", "hardness"), Pair("Iron", "iron"),
            Pair("Iron, dissolved", "raw_iron"),
            Pair("Manganese", unit="mg/L"), Pair("Temperature", "water_temperature"),
            Pair("Dissolved solids", unit="mg/L"), Pair("Turbidity", unit="NTU"),
            Pair("Chloride", unit="mg/L"), Pair("Sulfate", unit="mg/L"),
            Pair("Sodium", unit="mg/L"),
        ), RAW_AND_TREATED),
        Part("For health", (
            Pair("Nitrate, as N", unit="mg/L"), Pair("Nitrite, as N", unit="mg/L"),
            Pair("Arsenic", unit="µg/L"), Pair("Lead", unit="µg/L"), Pair("Copper", unit="mg/L"),
            Pair("Uranium", unit="µg/L"), Pair("Fluoride", unit="mg/L"),
            Pair("Radon", "raw_radon", "treated_radon"),
        ), RAW_AND_TREATED),
        Part("Laboratory", (Blank("Name and accreditation no."), Blank("Report no.")), ("", )),
    ),
)  # fmt: skip

HOMEOWNER = Sheet(
    "homeowner",
    "Your water: what to watch",
    says=(
        "Water from your well runs into an open tank, where air takes the radon out of it. A "
        "second pump brings it to your taps. The flow out is held below the flow in, so that the "
        "tank never runs empty. Keep this page by the tank.",
    ),
    parts=(
        Part("Set at the visit", (
            LEAST_IN, MOST_OUT, Named("treated_radon", "Radon in the water at the taps"),
        ), ("Value", "Day")),
        Part("Whom to call", (
            Blank("Water technician"), Blank("Electrician"), Blank("Laboratory"),
            Blank("Health department"),
        ), ("", )),
    ),
    lists=(
        ("Call the same day", (
            "Air spits from the taps: shut off the second pump first, open the windows, and call.",
            "The alarm sounds, or the blower is silent.",
            "Water stands on the floor by the tanks, or runs from the overflow.",
            "The water is suddenly brown, cloudy, or smells.",
            "The well was flooded: do not drink the water until it has been tested.",
        )),
        ("Look once a month", (
            "The blower hums, and its gauge stands where the tag says.",
            "The tag on the outlet valve is there, and nobody has moved the valve.",
            "The lid of the open tank is shut, and the pipe to the roof is free of ice and nests.",
            "The pressure at the taps is as it was.",
        )),
        ("Leave alone", (
            "The tagged valves and the bypass. " + NO_ONE_OPENS,
            "The lid of the open tank: there is radon in the air over the water.",
        )),
    ),
    dates=True,
    signed=False,
)  # fmt: skip

TAGS = Sheet(
    "tags",
    "Tags to cut out and tie on",
    tags=(
        Tag("Outlet limit: locked", "Do not open it further. " + NO_ONE_OPENS,
            (MOST_OUT, LEAST_IN)),
        Tag("Filter before the open tank", "Service it before the flow in falls to this.",
            (Named("service_at", "Service at a flow in of"), Named("inlet", "Flow in that day"),
             Named("inlet_gauge", "Gauge that day"))),
        Tag("Bypass: keep shut", "Water that goes round the aerator brings its radon into the "
            "house.", (Named("raw_radon", "Radon before the aerator"),)),
        Tag("Blower: keep it running", "Clean the aerator when the gauge stands at the limit.",
            (Named("blower_clean", "Gauge when clean"), Named("blower_limit", "Limit"))),
    ),
    signed=False,
)  # fmt: skip

SHEETS = (COMMISSIONING, SERVICE, RADON, WATER_REPORT, HOMEOWNER, TAGS)


def names_in(sheet: Sheet) -> set[str]:
    """The values that a sheet shows, by name."""
    lines = [line for part in sheet.parts for line in part.lines]
    lines += [line for tag in sheet.tags for line in tag.lines]
    found = {line for line in lines if isinstance(line, str)}
    found |= {line.name for line in lines if isinstance(line, Named)}
    pairs = [line for line in lines if isinstance(line, Pair)]
    return found | {name for pair in pairs for name in (pair.before, pair.after) if name}
