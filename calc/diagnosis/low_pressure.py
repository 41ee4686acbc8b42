"""Weak pressure at all taps."""

from calc.diagnosis.path import Branch, Step, Symptom

SYMPTOM = Symptom(
    "Weak pressure at all taps",
    "Ask since when. Weeks say filter or pump; a day says valve, leak or voltage.",
    (
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
                ),
                Branch(
                    "Good at rest; falls to a steady figure under cut-in while water runs.",
                    "The pump gives less than the draw takes.",
                    "Next step.",
                ),
                Branch(
                    "Low at rest as well.",
                    "The switch is set low, or the pump never reaches more.",
                    "Next step; and see the pump that never stops.",
                ),
            ),
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
                ),
                Branch(
                    "Shut-off head sound, flow short.",
                    "Something is in its way: screen, check valve, filter, scale; or the level "
                    "falls.",
                    "If the level stands, go along the pipe with a gauge.",
                    "pump_check well_caught=5.1 fill_time=60",
                ),
                Branch(
                    "Both as on the sheet.",
                    "The pump is sound and the draw too big for it.",
                    "Spread the draws, or limit them.",
                ),
            ),
        ),
        Step(
            "By a licensed person: voltage at the panel, pump off and pump running; current.",
            (
                Branch(
                    "It falls by more than 5 % when the pump runs.",
                    "The service sags: a loose neutral, a long feed, a weak transformer.",
                    "Electrician or utility, today: a loose neutral burns.",
                ),
                Branch(
                    "Steady at the panel; the cable is long and thin.",
                    "The loss is in the cable.",
                    "Reckon it; over 5 % a thicker one.",
                    "cable_drop wire_gauge=14 cable_length=400",
                ),
            ),
        ),
    ),
)
