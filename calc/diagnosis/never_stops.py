"""The pump never stops."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "The pump never stops",
    "Switch it off at the panel if the gauge does not rise: a pump that moves no water cooks "
    "itself.",
    (
        Step(
            "All taps shut, float of the open tank up. Gauge after ten minutes. Then shut the "
            "valve behind the pressure tank.",
            (
                Branch(
                    "With the valve shut the gauge rises and the pump stops.",
                    "Somebody takes water: a leak, a toilet, a hose, a float valve that does not "
                    "close.",
                    "Open again and go along: float first, then toilets, then the line.",
                    fits=("drawn",),
                ),
                Branch(
                    "It stands still, below cut-out.",
                    "The pump cannot make cut-out.",
                    "Next step.",
                    fits=("well_low", "worn", "falls_back"),
                ),
                Branch(
                    "It is over cut-out and the pump runs on.",
                    "The switch sticks: welded contacts, or a plugged small pipe. Dangerous: "
                    "pressure rises to what the pump can make.",
                    "Off at the panel, now. Open a tap. A new switch, and a look at the relief "
                    "valve.",
                    fits=("stuck",),
                ),
            ),
            name="rest",
        ),
        Step(
            "Sounder: level with the pump running. Shut-off gauge, for seconds, if the piping is "
            "made for it.",
            (
                Branch(
                    "The level stands at the pump's intake.",
                    "The well gives less than the pump takes.",
                    "Off, and let it recover. A dry-run switch, a smaller flow, or storage.",
                    fits=("well_low",),
                ),
                Branch(
                    "Level as ever; shut-off gauge under cut-out.",
                    "Worn, a leak in the drop pipe, low voltage, or a cut-out set higher than "
                    "this pump can reach.",
                    "Compare with the sheet.",
                    "pump_check shut_off_gauge=56",
                    fits=("worn",),
                ),
                Branch(
                    "Shut-off gauge well over cut-out.",
                    "The pump can. Then water leaves somewhere before the gauge.",
                    "Listen at the well head: water that falls back sounds.",
                    fits=("falls_back",),
                ),
            ),
            name="level",
        ),
    ),
    says="The pump never stops.",
    causes={
        "drawn": Cause("Somebody or something takes water", 4, "well/what-the-house-takes.md"),
        "well_low": Cause("The well gives less than the pump takes", 2, "well/what-it-gives.md"),
        "worn": Cause("The pump cannot make cut-out any more", 2, "well/pump-and-pipe.md"),
        "falls_back": Cause("Water falls back in the well", 1, "well/pump-and-pipe.md"),
        "stuck": Cause("The pressure switch sticks", 1, "well/pressure-tank.md"),
    },
)
