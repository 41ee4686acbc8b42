"""The pressure collapses during laundry."""

from calc.diagnosis.path import Branch, Step, Symptom

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
                ),
                Branch(
                    "The level falls below the intake, and the taps spit.",
                    "It runs dry and nothing stops it.",
                    "Outlet down today, a low-level switch this week.",
                    "tank_draw worst_inlet=3",
                ),
                Branch(
                    "The level holds; the gauge falls to a steady low figure.",
                    "The washer takes more than pump 2 passes through its limit. Nothing is wrong "
                    "but comfort.",
                    "Throttle the washer's valves, or do the wash at night. Not the limit: it "
                    "keeps the tank wet.",
                    "tank_draw worst_outlet=4.6",
                ),
                Branch(
                    "The level holds; the gauge swings fast between cut-in and cut-out.",
                    "The house pressure tank is waterlogged.",
                    "Pre-charge, empty. See the pump that starts and stops.",
                    "tank_draw precharge=10",
                ),
            ),
        ),
        Step(
            "Was it always so, or since weeks? Catch the inlet, gauge noted, and compare.",
            (
                Branch(
                    "The inlet has fallen since the last record.",
                    "The filter fouls, or the well's pressure has sunk.",
                    "Resistance of the bed from flow and gauge; service it, then catch again.",
                    "filter_due",
                ),
                Branch(
                    "As in the record.",
                    "The draw has grown: a new washer, a guest, a hose.",
                    "Try the new draw on the tank before it tries itself.",
                    "tank_draw draw_volume=75",
                ),
            ),
        ),
    ),
)
