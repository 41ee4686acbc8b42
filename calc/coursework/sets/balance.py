"""Problems on the open tank: what enters and what leaves."""

from calc.coursework.problem import (
    Fact,
    Option,
    Part,
    Pick,
    Problem,
    ProblemSet,
    Recall,
    Slip,
    grid,
)

_RUNS = tuple(
    f"{mean - early} s; {mean + late} s; {mean + early - late} s"
    for mean in range(36, 76)
    for early, late in ((1, 2), (2, 1), (1, 0), (0, 1), (2, 3))
)


FACTS = Recall(
    name="facts",
    form="recall",
    objective="Name what decides whether an open tank runs dry.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "From which level do you count the water in the open tank?",
            "from the level at which the float opens the inlet, down to the intake",
            ("from the full tank down to the intake", "from the overflow down to the floor"),
            "A draw may begin just above the float's opening, and water under the intake is lost.",
            "How the tank runs dry",
        ),
        Fact(
            "Where does an outlet limit keep the level at the float's opening, if it is set no "
            "higher than the worst inlet?",
            "between pump 2 and the house pressure tank",
            ("between the house pressure tank and the house", "at the tap that draws most"),
            "Only there does it bound the draw and the refill of the pressure tank together.",
            "Where the outlet limit belongs",
        ),
        Fact(
            "What does a bigger house pressure tank do to the open tank?",
            "it takes more water at once, so the level falls further",
            ("it saves water, so the level falls less", "nothing: it is behind pump 2"),
            "After a draw pump 2 refills a whole drawdown at its full flow.",
            "Where the outlet limit belongs",
        ),
        Fact(
            "When is the inlet at its worst?",
            "when the well pump is about to start and the filter is dirty",
            ("when the well pump has just stopped", "right after the filter's service"),
            "The gauge before the filter is then at cut-in, and the bed takes most of it.",
            "The worst inlet decides",
        ),
        Fact(
            "Why is a flow caught at a higher gauge brought down in proportion to the pressure?",
            "it is the least flow that any mix of valve and filter can give",
            ("a valve passes flow in proportion to pressure", "a pail reads too low"),
            "A valve follows the square root, a bed the pressure itself; with both, something "
            "between.",
            "The worst inlet decides",
        ),
        Fact(
            "Why use the same pail for both flows?",
            "its error is then nearly the same in both, and the difference is better known",
            ("it saves washing a second one", "two pails are never equally clean"),
            "What counts is the difference of the two flows.",
            "Measure both flows",
        ),
        Fact(
            "What does the guard pay for?",
            "for not knowing both flows exactly",
            ("for a filter that gets dirty", "for the drawdown of the pressure tank"),
            "Better pails buy a smaller guard and a stronger shower.",
            "Set the outlet",
        ),
        Fact(
            "What is a low-level switch that stops pump 2?",
            "a backstop: it acts when the tank is already low",
            ("a balance: with it the outlet needs no limit", "a means to fill the tank sooner"),
            "The house has no water then, and the cause is still there.",
            "Set it, lock it, tag it",
        ),
    ),
)

PAIL = Problem(
    name="pail",
    form="one-step",
    objective="Compute a flow from timed fills of a pail.",
    level=1,
    minutes=3,
    text="A pail holds {pail} to its mark. Three fills took {runs}.",
    calculator="pail_flow",
    draws={"pail": grid("4", "6", "0.5", "gal"), "runs": _RUNS},
    parts=(
        Part(
            finds="Q",
            ask="What is the flow?",
            section="Measure both flows",
            slips=(
                Slip("Seconds are not minutes: sixty to one.", "Q = V / t / 60"),
                Slip("Turn it over: volume over time, not time over volume.", "t / V * gal * gpm"),
                Slip("The time is that of one run, not of all together.", "Q = V / T"),
            ),
        ),
    ),
)

CUT_OUT = Problem(
    name="cut_out",
    form="one-step",
    objective="Compute what a fixed throttle passes at its worst pressure.",
    level=2,
    minutes=4,
    text="A throttled valve sits after the house pressure tank. From an open full-size pipe behind "
    "it you caught {outlet} while the house gauge stood steady at {house_gauge}. Pump 2 stops at "
    "{cut_out}.",
    calculator="outlet_limit",
    draws={
        "outlet": grid("4", "7", "0.1", "gpm"),
        "house_gauge": grid("30", "44", "1", "psi"),
        "cut_out": grid("50", "70", "2", "psi"),
    },
    fixed={"limit": "after"},
    parts=(
        Part(
            finds="Q_x",
            ask="What can leave at worst?",
            section="Where the outlet limit belongs",
            slips=(
                Slip(
                    "A valve loses pressure with the square of the flow: take the square root.",
                    "Q_x = Q_o * p_x / p_d",
                ),
                Slip(
                    "The ratio is turned over: the worst pressure is the higher one.",
                    "Q_x = Q_o * sqrt(p_d / p_x)",
                ),
                Slip("That is today's flow. The tank will stand at cut-out too.", "Q_o"),
                Slip(
                    "A gauge's own pressure drives the flow; do not add that of the air.",
                    "Q_x = Q_o * sqrt((p_x + atm) / (p_d + atm))",
                ),
            ),
        ),
    ),
)

LASTS = Problem(
    name="lasts",
    form="multi-step",
    objective="Compute how long and how large one draw may be.",
    level=2,
    minutes=6,
    text="At the worst hour {worst_inlet} enters the open tank. The outlet limit, before the house "
    "pressure tank, lets {worst_outlet} pass; pump 2 alone would bring {pump}. When the float "
    "opens, {float_open} stand above the intake. The house pressure tank holds {house_tank}, is "
    "pre-charged to {precharge} and works between {cut_in} and {cut_out}.",
    calculator="tank_draw",
    draws={
        "worst_inlet": grid("3.5", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.5", "7.5", "0.1", "gpm"),
        "float_open": grid("9", "16", "0.5", "gal"),
        "house_tank": ("14 gal", "20 gal", "26 gal", "32 gal"),
    },
    fixed={"float_closed": "20 gal"},
    parts=(
        Part(
            finds="t_s",
            ask="How long is one draw sure to last?",
            section="How the tank runs dry",
            slips=(
                Slip("Water enters all the while: only the difference is lost.", "t_s = R / Q_e"),
                Slip(
                    "What enters is taken off what leaves, not added to it.",
                    "t_s = R / (Q_e + Q_w)",
                ),
                Slip("Pump 2 passes no more than its limit.", "Q_e = Q_p"),
            ),
        ),
        Part(
            finds="dV",
            ask="How much does the house pressure tank take between cut-in and cut-out?",
            section="How the tank runs dry",
            slips=(
                Slip(
                    "Boyle's law needs absolute pressures: add that of the air to each.",
                    "P_a = 0",
                ),
                Slip("That is the whole tank. Air fills most of it.", "V_t"),
            ),
        ),
        Part(
            finds="D_s",
            ask="How much may one draw take, if pump 2 must refill the pressure tank after it?",
            section="Where the outlet limit belongs",
            slips=(
                Slip("Pump 2 still fills the pressure tank after the draw.", "D_s = Q_e * t_s"),
                Slip("More passes than stands there: water enters all the while.", "D_s = R"),
            ),
        ),
    ),
)

WORST = Problem(
    name="worst",
    form="multi-step",
    objective="Compute the worst flow in from a test at another gauge, and the margin.",
    level=2,
    minutes=8,
    text="The open tank's inlet lies {rise} above the gauge before the filter. With that gauge at "
    "{inlet_gauge} a pail showed {inlet} in. The well pump starts at {well_cut_in}. The filter "
    "is serviced before the flow in falls to {service_at}. The outlet, limited before the house "
    "pressure tank, passes {outlet} at its worst. Take 0.433 psi for each foot of water.",
    calculator="outlet_setting",
    draws={
        "rise": grid("20", "32", "1", "ft"),
        "inlet_gauge": grid("48", "56", "1", "psi"),
        "inlet": grid("5.5", "8", "0.1", "gpm"),
        "service_at": grid("3.2", "6", "0.2", "gpm"),
        "outlet": grid("4", "7", "0.25", "gpm"),
    },
    parts=(
        Part(
            finds="p_h",
            ask="What pressure only lifts the water?",
            section="The worst inlet decides",
            slips=(
                Slip("That is the lift in feet. A foot of water is 0.433 psi.", "h / ft * psi"),
            ),
        ),
        Part(
            finds="Q_c",
            ask="What comes in when the well pump is about to start?",
            section="The worst inlet decides",
            slips=(
                Slip(
                    "Take the pressure itself, not its root: with a bed in line that is the "
                    "cautious one.",
                    "Q_c = Q_i * sqrt((p_c - p_h) / (p_g - p_h))",
                ),
                Slip("The lift is missing: it drives nothing.", "Q_c = Q_i * p_c / p_g"),
                Slip("The ratio is turned over.", "Q_c = Q_i * (p_g - p_h) / (p_c - p_h)"),
            ),
        ),
        Part(
            finds="Q_w",
            ask="What is the worst flow in?",
            section="The worst inlet decides",
            slips=(Slip("The smaller of the two decides.", "Q_w = max(Q_c, Q_s)"),),
        ),
        Part(
            finds="M",
            ask="What is the margin, in less out? Give its sign.",
            section="Set the outlet",
            tolerance="0.06 gpm",
            digits=1,
            slips=(Slip("Today's flow in is not the worst.", "M = Q_i - Q_x"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether an outlet is safe as it stands, and compute its setting.",
    level=3,
    minutes=15,
    text="Invented: the Quarry Road house at Alder Ledge. The gauge before the filter stood at "
    "{inlet_gauge} while the pail showed {inlet} in; the well pump starts at {well_cut_in}; the "
    "spout lies {rise} above that gauge. The owner promises service before the flow in falls to "
    "{service_at}. Out, with the house pressure tank empty and the limit before it, the pail "
    "showed {outlet}. Each flow is good to 3 %, 19 times in 20, and the owner accepts a chance of "
    "{chance} that the measurements mislead. The calculator of the chapter may be used.",
    calculator="outlet_setting",
    draws={
        "inlet_gauge": grid("42", "52", "1", "psi"),
        "inlet": grid("5", "7", "0.1", "gpm"),
        "rise": grid("4", "12", "1", "ft"),
        "service_at": grid("3.8", "5.2", "0.1", "gpm"),
        "outlet": grid("3.5", "6.5", "0.1", "gpm"),
    },
    parts=(
        Part(
            finds="Q_w",
            ask="What is the worst flow in?",
            section="The worst inlet decides",
            slips=(Slip("Today's flow in is not the worst.", "Q_i"),),
        ),
        Part(
            finds="q_p",
            ask="To what must the pail show the outlet set?",
            section="Set the outlet",
            tolerance=0.01,
            slips=(Slip("The guard is missing: flows are not known exactly.", "Q_w"),),
            marks=2,
        ),
        Pick(
            finds="today",
            ask="And as it stands today?",
            section="Set the outlet",
            options=(
                Option(
                    "safe",
                    "Safe: more enters at worst than leaves, by more than the guard.",
                    "Q_x < q",
                ),
                Option(
                    "doubt",
                    "In doubt: more enters than leaves, but by less than the guard.",
                    "Q_x < Q_w",
                ),
                Option("dry", "Not safe: more can leave than enters."),
            ),
            because="The margin, worst in less worst out, is held against the guard.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="balance",
    chapter="balance.md",
    title="The open tank: what enters and what leaves",
    revision="2026-11-25",
    problems=(FACTS, PAIL, CUT_OUT, LASTS, WORST, FIELD),
)
