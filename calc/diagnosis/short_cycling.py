"""The pump starts and stops all the time."""

from calc.diagnosis.path import Branch, Cause, Step, Symptom

SYMPTOM = Symptom(
    "The pump starts and stops all the time",
    "Every start heats the motor. Keep big draws to the night until it is found, or switch the "
    "pump off.",
    (
        Step(
            "All taps shut, valve to the house shut. Watch gauge and pump for half an hour.",
            (
                Branch(
                    "It still starts, or the gauge falls by more than 1 psi.",
                    "Water goes back down the well, or out of a pipe: check valve, drop pipe, "
                    "buried line. The switch only answers to it.",
                    "Watch the gauge again with the valve between well and tank shut too. If it "
                    "stands now, the leak is on the well's side.",
                    "pump_check leak_from=60 leak_to=55 leak_time=30",
                    fits=("leak_back",),
                ),
                Branch(
                    "The gauge stands.",
                    "Nothing leaks here. It cycles only while water is drawn.",
                    "Next step.",
                    fits=("waterlogged", "overcharged", "small_tank", "narrow", "between"),
                ),
            ),
            name="rest",
        ),
        Step(
            "Pump to cut-out, off at the panel. Catch what comes down to cut-in. Then, empty: "
            "tire gauge on the tank's air valve.",
            (
                Branch(
                    "Much less water than the tank should give; pre-charge low or none.",
                    "Waterlogged, or never filled with air. Water from the air valve: the bladder "
                    "is torn.",
                    "Pre-charge 2 psi under cut-in with the tank empty. If it is gone again in a "
                    "month, a new tank.",
                    "pump_check well_caught=1.4 fill_time=11",
                    fits=("waterlogged",),
                ),
                Branch(
                    "The pre-charge is over cut-in.",
                    "The tank is empty before the pump starts: the taps stop, then jerk.",
                    "Let air out until it is 2 psi under cut-in.",
                    "pump_check well_precharge=50 well_caught=2.6 fill_time=21",
                    fits=("overcharged",),
                ),
                Branch(
                    "As much water as it should give.",
                    "The tank is sound.",
                    "Next step.",
                    fits=("small_tank", "narrow", "between", "leak_back"),
                ),
            ),
            name="drawdown",
        ),
        Step(
            "Time the pump from cut-in to cut-out, taps shut. Read the switch's two pressures.",
            (
                Branch(
                    "Under a minute, and 20 psi between them.",
                    "The tank is too small for this pump.",
                    "On the well's side a bigger one, or a second beside it. Behind pump 2 a "
                    "bigger one takes more from the open tank at once.",
                    "pump_check well_tank=44 well_caught=11.2 fill_time=90",
                    fits=("small_tank", "waterlogged", "overcharged"),
                ),
                Branch(
                    "Less than 20 psi between them.",
                    "The switch is set too narrow, or its small pipe is plugged.",
                    "Clean the pipe, set the switch by its sheet. Power off and locked first.",
                    fits=("narrow",),
                ),
                Branch(
                    "The gauge leaps by more than 5 psi as the pump starts.",
                    "A fouled filter, or a half-shut valve, between pump and tank: the switch "
                    "sees the pump, not the tank.",
                    "Gauge before and behind the filter with water running. Service it, and note "
                    "its resistance.",
                    "filter_due",
                    fits=("between",),
                ),
            ),
            name="fill",
        ),
    ),
    says="The pump clicks on and off all day.",
    causes={
        "leak_back": Cause(
            "Water leaks back: check valve, drop pipe or a buried line", 3, "well/pump-and-pipe.md"
        ),
        "waterlogged": Cause("The pressure tank has lost its air", 4, "well/pressure-tank.md"),
        "overcharged": Cause("The pre-charge is over cut-in", 1, "well/pressure-tank.md"),
        "small_tank": Cause("The tank is too small for the pump", 1, "well/pressure-tank.md"),
        "narrow": Cause(
            "The switch is set too narrow, or its small pipe is plugged", 1, "well/pressure-tank.md"
        ),
        "between": Cause(
            "A fouled filter or half-shut valve between pump and tank", 1, "open-tank/filter.md"
        ),
    },
)
