"""Weak pressure."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "Weak pressure",
    "Ask since when. Weeks say filter or pump; a day says valve, leak or voltage.",
    (
        Step(
            "Shower head off, pail and timer at its pipe, cold and hot apart. Then at another tap.",
            (
                Branch(
                    "Only this tap is weak, or only its hot side.",
                    "Its own head, screen, hose or mixing valve; or the heater's side.",
                    "Clean or change the head and screen, look at the mixing valve's screens. "
                    "Mind the hot water.",
                    fits=("screen",),
                ),
                Branch(
                    "All are weak.",
                    "It is not the shower.",
                    "Next step.",
                    fits=("behind", "worn", "held_back", "big_draw", "switch_low", "sag", "cable"),
                ),
            ),
            name="taps",
        ),
        Step(
            "House gauge with every tap shut, then with one full-size tap open for five minutes.",
            (
                Branch(
                    "Both near cut-out, but little comes.",
                    "The water is held back behind the gauge: filter, softener, a screen in the "
                    "tap, a limit that is doing its work.",
                    "Gauge on both sides of each thing with water running. The one that drops "
                    "most is it. If it is the outlet limit, it may be right so: look before you "
                    "open it.",
                    "outlet_setting outlet=4.6",
                    fits=("behind", "screen"),
                ),
                Branch(
                    "Good at rest; falls to a steady figure under cut-in while water runs.",
                    "The pump gives less than the draw takes.",
                    "Next step.",
                    fits=("worn", "held_back", "big_draw", "sag", "cable"),
                ),
                Branch(
                    "Low at rest as well.",
                    "The switch is set low, or the pump never reaches more.",
                    "Next step; and see the pump that never stops.",
                    fits=("switch_low", "worn", "sag", "cable"),
                ),
            ),
            name="gauge",
        ),
        Step(
            "Pump off, catch from cut-out to cut-in; then time it from cut-in to cut-out. "
            "Sounder: level with the pump running. Shut-off gauge, for seconds, if the piping is "
            "made for it.",
            (
                Branch(
                    "Shut-off head more than 10 % short of its sheet.",
                    "Worn, a hole in the drop pipe, or a slow motor.",
                    "Voltage at the panel while it runs. Sound: pull the pump.",
                    "pump_check shut_off_gauge=68 fill_time=55",
                    fits=("worn", "sag", "cable"),
                ),
                Branch(
                    "Shut-off head sound, flow short.",
                    "Something is in its way: screen, check valve, filter, scale; or the level "
                    "falls.",
                    "If the level stands, go along the pipe with a gauge.",
                    "pump_check well_caught=5.1 fill_time=60",
                    fits=("held_back",),
                ),
                Branch(
                    "Both as on the sheet.",
                    "The pump is sound and the draw too big for it.",
                    "Spread the draws, or limit them.",
                    fits=("big_draw", "switch_low", "behind", "screen"),
                ),
            ),
            name="pump",
        ),
        Step(
            "By a licensed person: voltage at the panel, pump off and pump running; current.",
            (
                Branch(
                    "It falls by more than 5 % when the pump runs.",
                    "The service sags: a loose neutral, a long feed, a weak transformer.",
                    "Electrician or utility, today: a loose neutral burns.",
                    fits=("sag",),
                ),
                Branch(
                    "Steady at the panel; the cable is long and thin.",
                    "The loss is in the cable.",
                    "Reckon it; over 5 % a thicker one.",
                    "cable_drop wire_gauge=14 cable_length=400",
                    fits=("cable",),
                ),
                Branch(
                    "Steady, and the cable is thick enough.",
                    "It is not the supply.",
                    "The pump's own: pull it and look at pump, screen and drop pipe.",
                    fits=("worn", "held_back", "big_draw", "switch_low", "behind", "screen"),
                ),
            ),
            name="volts",
            effort=2,
        ),
    ),
    says="The shower is weak.",
    causes={
        "screen": Cause(
            "A clogged shower head, screen or mixing valve", 4, "well/what-the-house-takes.md"
        ),
        "behind": Cause(
            "Something behind the house gauge holds the water back", 2, "open-tank/outlet.md"
        ),
        "worn": Cause("The pump is worn, or its drop pipe has a hole", 1, "well/pump-and-pipe.md"),
        "held_back": Cause(
            "Something before the gauge holds the water back: screen, check valve, filter, scale",
            2,
            "open-tank/filter.md",
        ),
        "big_draw": Cause(
            "The draw is too big for a sound pump", 2, "well/what-the-house-takes.md"
        ),
        "switch_low": Cause("The pressure switch is set low", 1, "well/pressure-tank.md"),
        "sag": Cause("The electric service sags", 0.5, "well/electricity.md"),
        "cable": Cause("The pump's cable is too thin for its length", 0.5, "well/electricity.md"),
    },
)
