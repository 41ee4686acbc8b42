"""The parts of a house's water in the order in which it passes them.

A part's figures are values of the job, by name. To add one, name it in a line; to add a part, add
a `Part` and, if it is to be drawn, its symbol in `calc.views.symbols`.
"""

import re
from typing import NamedTuple

_NAME = re.compile(r"\{(\w+)\}")


class Part(NamedTuple):
    """One part. `lines` are what the drawing says of it, each once all its figures are there.

    more -- further values of the job that belong to it and are not drawn
    """

    name: str
    title: str
    lines: tuple[str, ...]
    more: tuple[str, ...] = ()

    @property
    def values(self) -> tuple[str, ...]:
        """The names of all its figures."""
        drawn = (name for line in self.lines for name in named(line))
        return tuple(dict.fromkeys((*drawn, *self.more)))


def named(line: str) -> list[str]:
    """The names of the values in a line."""
    return _NAME.findall(line)


PARTS = (
    Part(
        "well",
        "Well",
        ("at rest {static_level} down", "lowest {well_level} under the gauge"),
        (
            "casing_bore",
            "well_depth",
            "pump_depth",
            "well_inflow",
            "raw_ph",
            "alkalinity",
            "hardness",
            "raw_iron",
        ),
    ),
    Part(
        "pump_1",
        "Pump 1",
        ("rated {well_pump_flow} at {well_pump_head}", "gives {well_pump}"),
        ("shut_off_gauge", "water_below", "fill_time", "leak_from", "leak_to", "leak_time"),
    ),
    Part(
        "tank_1",
        "Pressure tank 1",
        ("{well_cut_in} to {well_cut_out}", "{well_tank}, pre-charge {well_precharge}"),
        ("well_caught", "well_drawdown"),
    ),
    Part(
        "filter",
        "Filter",
        ("clean {bed_clean}", "at service {bed_dirty}", "service at {service_at} in"),
        (
            "filter_flows",
            "filter_gauges",
            "filter_meter",
            "inlet_coefficient",
            "guard",
            "service_flow",
            "tank_diameter",
            "place_1",
            "place_2",
            "place_3",
            "place_4",
            "place_5",
            "place_6",
        ),
    ),
    Part(
        "inlet_limit",
        "Inlet limit",
        ("{limit_flow} from {limit_drop} on",),
        ("inlet_limit", "rise", "pipe_length", "pipe_bore", "fittings"),
    ),
    Part(
        "inlet",
        "Float valve",
        ("{inlet} in at {inlet_gauge}", "worst {worst_inlet}"),
        ("float_kind", "water_now", "water_coldest"),
    ),
    Part(
        "aerator",
        "Aerator",
        ("air {aerator_air}", "radon in {raw_radon}", "radon out {treated_radon}"),
        (
            "target_radon",
            "aerator",
            "aerator_stages",
            "aerator_flow",
            "bubble_depth",
            "bubble_size",
            "bubble_share",
            "air_radon",
            "water_temperature",
            "blower_clean",
            "blower_now",
            "blower_limit",
            "cleaned_ago",
            "iron",
            "iron_falls",
            "floc_allowed",
        ),
    ),
    Part(
        "open_tank",
        "Open tank",
        (
            "float closes {float_closed}",
            "float opens {float_open}",
            "low-level switch {lock_at}",
        ),
        ("tank_area", "intake_bore", "overflow_height", "lock_off", "lock_on"),
    ),
    Part("pump_2", "Pump 2", ("{pump} unheld", "shut off {pump_shut_off}")),
    Part(
        "outlet_limit",
        "Outlet limit",
        ("{outlet} out at {house_gauge}", "worst {worst_outlet}"),
        ("limit", "chance", "outlet_device"),
    ),
    Part(
        "tank_2",
        "Pressure tank 2",
        ("{cut_in} to {cut_out}", "{house_tank}, pre-charge {precharge}"),
        ("house_drawdown",),
    ),
    Part(
        "house",
        "House",
        ("{daily_use}", "{people} people"),
        ("draw_flow", "draw_volume", "start", "fill", "fill_flow", "loads"),
    ),
)
