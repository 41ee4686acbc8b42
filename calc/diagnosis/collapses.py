"""The pressure collapses during laundry."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "The pressure collapses during laundry",
    "In a house with an open tank this is its most dangerous sign: the next thing may be air. "
    "Stop the washer, look at the level.",
    (
        Step(
            "House gauge and level of the open tank through one fill of the washer, every half "
            "minute.",
            (
                Branch(
                    "The level falls to the low-level switch, then pump 2 stops.",
                    "More leaves than enters. The switch has caught it. It is the backstop, not "
                    "the balance.",
                    "Catch flow in and flow out, then set the outlet.",
                    "outlet_setting outlet=6",
                    fits=("inlet_fell", "too_wide", "draw_grew"),
                ),
                Branch(
                    "The level falls below the intake, and the taps spit.",
                    "It runs dry and nothing stops it.",
                    "Outlet down today, a low-level switch this week.",
                    "tank_draw worst_inlet=3",
                    fits=("inlet_fell", "too_wide", "draw_grew"),
                ),
                Branch(
                    "The level holds; the gauge falls to a steady low figure.",
                    "The washer takes more than pump 2 passes through its limit. Nothing is wrong "
                    "but comfort.",
                    "Throttle the washer's valves, or do the wash at night. Not the limit: it "
                    "keeps the tank wet.",
                    "tank_draw worst_outlet=4.6",
                    fits=("comfort",),
                ),
                Branch(
                    "The level holds; the gauge swings fast between cut-in and cut-out.",
                    "The house pressure tank is waterlogged.",
                    "Pre-charge, empty. See the pump that starts and stops.",
                    "tank_draw precharge=10",
                    fits=("waterlogged",),
                ),
            ),
            name="fill",
        ),
        Step(
            "Was it always so, or since weeks? Catch the inlet, gauge noted, and compare.",
            (
                Branch(
                    "The inlet has fallen since the last record.",
                    "The filter fouls, or the well's pressure has sunk.",
                    "Resistance of the bed from flow and gauge; service it, then catch again.",
                    "filter_due",
                    fits=("inlet_fell",),
                ),
                Branch(
                    "As in the record.",
                    "The draw has grown: a new washer, a guest, a hose.",
                    "Try the new draw on the tank before it tries itself.",
                    "tank_draw draw_volume=75",
                    fits=("too_wide", "draw_grew", "comfort", "waterlogged"),
                ),
            ),
            name="record",
        ),
        Step(
            "Ask what is new since it began. Read the washer's label.",
            (
                Branch(
                    "A new washer, guests, a hose or a garden.",
                    "The draw has outgrown the balance.",
                    "Try the new draw on the tank, then set the outlet or take the hose off the "
                    "treated water.",
                    fits=("draw_grew",),
                ),
                Branch(
                    "Nothing. It has always done it.",
                    "It was never balanced.",
                    "Catch flow in at its worst and flow out, then set the outlet.",
                    fits=("too_wide", "comfort"),
                ),
                Branch(
                    "Nothing is new; it began some weeks ago.",
                    "Something wears or fouls.",
                    "Service the filter, then catch again.",
                    fits=("inlet_fell", "waterlogged"),
                ),
            ),
            name="new",
            sure=0.7,
        ),
    ),
    says="The water stopped during laundry.",
    causes={
        "inlet_fell": Cause(
            "The flow in has fallen: the filter fouls, or the well's pressure has sunk",
            4,
            "open-tank/filter.md",
        ),
        "too_wide": Cause("The outlet was never set for the worst inlet", 3, "open-tank/outlet.md"),
        "draw_grew": Cause(
            "The draw has grown: a new washer, a guest, a hose", 2, "open-tank/run.md"
        ),
        "comfort": Cause(
            "The limit does its work; the washer wants more than it passes", 2, "open-tank/fixes.md"
        ),
        "waterlogged": Cause(
            "The house pressure tank has lost its air", 2, "well/pressure-tank.md"
        ),
    },
)
