"""A house for the calculators that follow it through weeks of chance: its inputs, declared once,
and what they make together. The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from typing import NamedTuple

from calc.errors import Refused
from calc.fields import INVENTED, flow_input, house_tank_fields, open_tank_fields
from calc.model import Input
from calc.physics.demand import FILLS, Household, day_volume
from calc.physics.open_tank import sure_reserve
from calc.physics.tank_run import Plant
from calc.units import gal, number, share, volume

PEOPLE = "Who lives there"
LEAST_BAND = LEAST_DRAWDOWN = 0.5 * gal  # under it pump or float switches several times a minute
# What a week costs to follow, in switches; so many take some 60 ms in CPython.
QUICK = 300_000
LONGEST_FIRST, SHORTEST_FIRST = 104, 2  # weeks


class House(NamedTuple):
    """The inputs, in the order of `INPUTS`, SI."""

    people: float
    loads: float
    wash_days: float
    fill: float
    fill_flow: float
    hose_days: float
    uneven: float
    worst_inlet: float
    limit: str
    worst_outlet: float
    pump: float
    float_open: float
    float_closed: float
    house_drawdown: float

    @property
    def household(self) -> Household:
        """Who uses water, and how."""
        return Household(*self[:7])

    @property
    def plant(self) -> Plant:
        """What is installed, with the flows of the worst case."""
        before = self.limit == "before"
        return Plant(
            inlet=self.worst_inlet,
            pump=min(self.pump, self.worst_outlet) if before else self.pump,
            house=float("inf") if before else self.worst_outlet,
            float_open=self.float_open,
            float_closed=self.float_closed,
            drawdown=self.house_drawdown,
        )

    @property
    def is_sure(self) -> bool:
        """Whether it cannot run dry, whatever is drawn: the bound in `sure_reserve`."""
        reserve = sure_reserve(self.float_open, self.house_drawdown, self.limit == "before")
        return reserve > 0 and self.plant_outlet <= self.worst_inlet

    @property
    def plant_outlet(self) -> float:
        """The most that leaves in the long run: with the limit before it, what pump 2 passes."""
        return self.plant.pump if self.limit == "before" else self.worst_outlet

    def check(self) -> None:
        """Refused where two inputs contradict each other."""
        if self.float_closed < self.float_open + LEAST_BAND:
            says = "must be well above the float's opening at {float_open}"
            raise Refused("contradiction", "float_closed", says=says)
        if self.limit == "after" and self.pump < self.worst_outlet:
            raise Refused("contradiction", "pump", says="must pass at least {worst_outlet}")
        if self.loads and self.wash_days < self.loads / 10:
            raise Refused("contradiction", "wash_days", says="are too few for {loads} loads")

    def first_weeks(self, runs: int = 1) -> int:
        """How many weeks a first answer may follow, with so many runs of each."""
        household = self.household
        used = 7 * day_volume(household)
        pulses = 7 * household.people * sum(use.each_day for use in household.uses)
        pulses += FILLS * self.loads + 7
        switches = pulses + 8 * used / self.house_drawdown
        switches += 2 * used / (self.float_closed - self.float_open)
        weeks = int(QUICK / (runs * switches))
        return max(SHORTEST_FIRST, min(LONGEST_FIRST, weeks))


people = Input(
    name="people",
    label="People at home",
    symbol="n_p",
    kind=number,
    default="3",
    origin=INVENTED,
    low=0,
    high=12,
    measure="Who sleeps there. A house full of guests is a case of its own.",
    group=PEOPLE,
)
loads = Input(
    name="loads",
    label="Loads of laundry in a week",
    symbol="n_l",
    kind=number,
    default="6",
    origin="about 0.30 loads a person and day (DeOreo 2016), from memory",
    low=0,
    high=40,
    measure="Ask. Two for each person is usual.",
    group=PEOPLE,
)
wash_days = Input(
    name="wash_days",
    label="Days of the week on which laundry is done",
    symbol="n_w",
    kind=number,
    default="2",
    origin="common practice, no source",
    low=0.5,
    high=7,
    measure="Ask. All loads on one day, one after the other, are the hardest week for the tank.",
    group=PEOPLE,
)
fill = Input(
    name="fill",
    label="Water in one fill of the washer",
    symbol="V_f",
    kind=volume,
    default="25 gal",
    origin="invented example: one fill of a top-loading washer; a load takes two",
    low=1 * gal,
    high=60 * gal,
    measure="Meter before and after one fill. A load counts as two fills.",
    group=PEOPLE,
)
fill_flow = flow_input(
    "fill_flow",
    "Flow of the washer while it fills",
    "Q_f",
    "6 gpm",
    "Pail and timer at its hose, valve wide open. Published tables give 8 gpm at most.",
    PEOPLE,
)
hose_days = Input(
    name="hose_days",
    label="Days on which a hose runs on treated water",
    symbol="s_h",
    kind=share,
    default="15 %",
    origin="common practice, no source: one day a week, 20 minutes at 5 gpm",
    low=0,
    high=1,
    measure="Days out of a hundred, over the year. 0 where hose bibs branch off before the tank.",
    group=PEOPLE,
)
uneven = Input(
    name="uneven",
    label="How uneven the days are",
    symbol="u",
    kind=number,
    default="5",
    origin="kitchen taps of Dutch houses: 4.9 to 6.1 (Blokker 2010)",
    low=1,
    high=20,
    measure="Variance of the number of uses in a day over their mean. 1 is pure chance; a real "
    "house has quiet days and days with visitors. Leave it if you have not counted.",
    group=PEOPLE,
)
USE = (
    people,
    loads,
    wash_days,
    fill,
    fill_flow,
    hose_days,
    uneven,
)
OUT = (
    open_tank_fields.limit,
    open_tank_fields.worst_outlet,
    open_tank_fields.pump,
    open_tank_fields.float_open,
    open_tank_fields.float_closed,
    house_tank_fields.house_drawdown,
)
INPUTS = (*USE, open_tank_fields.worst_inlet, *OUT)
SOURCES = (
    "deoreo-2016",
    "buchberger-1995",
    "buchberger-1996",
    "blokker-2010",
    "epa-private-water",
    "ipc-604-3",
    "wsu-shore",
    "panjer-1981",
)
