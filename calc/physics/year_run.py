"""The open tank through weeks of draws, only counting: what `tank_run` follows, made fast.

Flows are constant between switches, as in `tank_run`, and the result is exact to rounding.
Nothing is kept but sums. A stretch with pump 2 off in which each draw is over before the next
is one step; the float's switches are found while the level is brought up to date.
"""

from heapq import heappop, heappush
from typing import NamedTuple

from calc.physics.demand import Draws, Pulse
from calc.physics.tank_run import Plant

STARTS, TIME_UP, VOLUME_HAD, CALLS, EMPTY, FULL, RESETS, FLOOR = range(8)
_NEVER = float("inf")
_NO_DRAW = Pulse(0.0, 0.0, _NEVER, True)


class LockOut(NamedTuple):
    """A low-level switch: pump 2 stops at one volume and may run again at another, m³.

    The second must be well above the first, or pump 2 switches without end.
    """

    stops: float
    resets: float


class Counted(NamedTuple):
    """What happened. Times s, volumes m³.

    dry_events -- times that the intake uncovered
    dry_time   -- how long pump 2 drew air
    lowest     -- level above the intake
    starts     -- of pump 2
    locks      -- times that the lock-out stopped it
    wanted, met -- flow that open taps would take and what they got, summed over time
    """

    dry_events: int
    dry_time: float
    lowest: float
    starts: int
    locks: int
    wanted: float
    met: float


def counted(  # noqa: C901, PLR0912, PLR0915 - in pieces it is slower
    plant: Plant, draws: Draws, until: float, lock_out: LockOut | None = None
) -> Counted:
    """What happened from time 0, when both tanks are full, to `until`, s.

    plant    -- as in `tank_run`; flows of the worst case
    draws    -- from `demand.week_of_draws`, sorted by start
    lock_out -- below the float's opening; None if there is no such switch. ValueError for one
                that does not reset above where it stops

    Two gallons more leave in a minute than enter, and the washer fills for ten minutes:

    >>> from calc.physics.demand import Pulse
    >>> from calc.units import gal, gpm, minute
    >>> plant = Plant(4 * gpm, 6 * gpm, float("inf"), 9.5 * gal, 11 * gal, 5.9 * gal)
    >>> seen = counted(plant, ((0.0, Pulse(6 * gpm, 600.0, 60 * gal, False)),), 3600.0)
    >>> seen.dry_events, round(seen.dry_time / minute, 2), seen.starts
    (1, 7.5, 1)

    Source: conservation of water; compared with `tank_run.run` on the same draws.
    """
    inlet, pump, house = plant.inlet, plant.pump, plant.house
    opens, closes, top = plant.float_open, plant.float_closed, plant.drawdown
    least = -plant.residual
    floor, resets = lock_out or (0.0, 0.0)
    resets = min(resets, closes)  # no level rises past the float's closing
    if lock_out and resets <= floor:
        raise ValueError(f"a lock-out that stops at {floor} m³ and resets at {resets} never rests")
    level, stored, lowest = closes, top, closes
    filling = calling = locked = dry = False
    timed: list[tuple[float, float]] = []  # running draws: when they end, and their flow
    taken: list[tuple[float, float]] = []  # the same on a clock that slows with the share met
    now = clock = flowing = wanted = met = dry_time = 0.0
    dry_events = starts = locks = place = 0
    coming = (*draws, (until, _NO_DRAW), (_NEVER, _NO_DRAW))
    while True:
        if not (flowing or calling):
            while True:
                start, (flow, seconds, volume, _) = coming[place]
                if volume >= stored or flow > house or start + seconds > coming[place + 1][0]:
                    break
                stored -= volume
                wanted += volume
                met += volume
                place += 1
            event, wait, gain, got = STARTS, start - now, 0.0, 0.0
        else:
            pumped = 0.0 if locked or not calling else inlet if dry else pump
            got = flowing if flowing < house else house
            if stored <= least and got > pumped:
                got = pumped
            gain = pumped - got
            event, wait = STARTS, coming[place][0] - now
            if timed and timed[0][0] - now < wait:
                event, wait = TIME_UP, timed[0][0] - now
            if taken and got and (taken[0][0] - clock) * flowing < wait * got:
                event, wait = VOLUME_HAD, (taken[0][0] - clock) * flowing / got
            if gain < 0:
                if calling:
                    if (stored - least) < wait * -gain:
                        event, wait = EMPTY, (stored - least) / -gain
                elif stored < wait * -gain:
                    event, wait = CALLS, stored / -gain
            elif gain and calling and top - stored < wait * gain:
                event, wait = FULL, (top - stored) / gain
            if locked and resets - level < wait * inlet:
                event, wait = RESETS, (resets - level) / inlet
        if dry:
            dry_time += wait
        elif calling and not locked:
            rest = wait
            while True:
                rate = inlet - pump if filling else -pump
                if rate > 0:
                    bound = closes
                elif rate < 0:
                    bound = floor if filling else opens
                else:
                    break
                need = (bound - level) / rate
                if need >= rest:
                    level += rate * rest
                    break
                level = bound
                rest -= need
                if filling and rate < 0:
                    event, wait = FLOOR, wait - rest
                    break
                if level < lowest:  # noqa: PLR1730 - a call of min costs more
                    lowest = level
                filling = not filling
            if level < lowest:  # noqa: PLR1730 - a call of min costs more
                lowest = level
        elif filling:
            level += inlet * wait
            if level >= closes:
                level, filling = closes, False
        now += wait
        stored += gain * wait
        if flowing:
            wanted += flowing * wait
            met += got * wait
            clock += got * wait / flowing
        if event == STARTS:
            start, (flow, seconds, _, keeps_time) = coming[place]
            if start >= until:
                return Counted(dry_events, dry_time, lowest, starts, locks, wanted, met)
            place += 1
            flowing += flow
            if keeps_time:
                heappush(timed, (start + seconds, flow))
            else:
                heappush(taken, (clock + seconds, flow))
        elif event in {TIME_UP, VOLUME_HAD}:
            flowing -= heappop(timed if event == TIME_UP else taken)[1]
            if not (timed or taken):
                flowing = 0.0
        elif event == CALLS:
            calling, stored = True, 0.0
            starts += 1
        elif event == EMPTY:
            stored = least
        elif event == FULL:
            calling, dry, stored = False, False, top
        elif event == RESETS:
            locked, level = False, resets
            starts += 1
        elif lock_out:
            locked, level = True, floor
            locks += 1
        else:
            dry, level = True, 0.0
            dry_events += 1
