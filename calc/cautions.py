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
LOCAL_CODE = (
    "Local codes and licensed practice decide. This page computes; it does not permit, and it "
    "is not a design stamp."
)
NO_INDEX = (
    "No index tells whether water takes copper or lead from pipes. Scale can form and lead "
    "dissolve in the same house. Have a first-draw sample tested before and after any change."
)
LEAVES_CO2 = (
    "Carbon dioxide that leaves the water collects low, in pits, tanks and closets. Vent the "
    "aerator outdoors, and never put your head into a tank."
)
CAUSTIC_DUST = (
    "Dust. Magnesia, soda ash and calcite sting eyes and lungs; soda ash and magnesia with water "
    "are caustic. Goggles, gloves and a dust mask, media into the tank and not into the air; eyes "
    "that got any are rinsed with water for 15 minutes, and a doctor called."
)
BACKWASH_INLET = (
    "A backwash takes the water from the open tank's inlet, and sometimes all of it. Let it run at "
    "night, with a full tank and nobody drawing, or pump 2 pulls the tank down to air."
)
