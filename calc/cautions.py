"""Cautions said before the work. One wording for the whole handbook."""

RADON_AIR = (
    "Radon. The air in and over an open aerated tank carries the radon that left the water. "
    "Keep its lid and vent tight, keep the blower running while you work, and air the room. "
    "Radon is the second leading cause of lung cancer [epa-radon-2016]."
)
PRESSURE = (
    "Pressure. A pressure tank stores energy. Relieve it at a tap before you open any fitting "
    "on it, and never work on one without a relief valve."
)
ELECTRICITY = (
    "Electricity. Pumps, blowers and wet floors. Switch off at the panel, lock it, tag it and "
    "try the pump before you reach inside a box [osha-1910-147]. Wiring is for a licensed person."
)
WELL_OPEN = (
    "Open well. What falls in, and what is on tape, rope and hands, is in the drinking water. "
    "Clean the cap before you lift it, disinfect what goes down, close it at once, and test for "
    "coliform bacteria before anyone drinks."
)
LOCAL_CODE = (
    "Local codes and licensed practice decide. This page computes; it does not permit, and it "
    "is not a design stamp."
)
WELL_PIT = (
    "Well pits kill. Gas gathers in them. Never enter one, nor a dug well or a tank, not even to "
    "help somebody out [cdc-drilled]."
)
