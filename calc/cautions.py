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
NO_INDEX = (
    "Copper and lead. No index tells whether water takes copper or lead from pipes. Scale can form "
    "and lead dissolve in the same house. Have a first-draw sample tested before and after any "
    "change."
)
LEAVES_CO2 = (
    "Carbon dioxide. What leaves the water collects low, in pits, tanks and closets. Vent the "
    "aerator outdoors, and never put your head into a tank."
)
CAUSTIC_DUST = (
    "Dust. Magnesia, soda ash and calcite sting eyes and lungs; soda ash and magnesia with water "
    "are caustic. Goggles, gloves and a dust mask, media into the tank and not into the air; eyes "
    "that got any are rinsed with water for 15 minutes, and a doctor called."
)
BACKWASH_INLET = (
    "Backwash. It takes the water from the open tank's inlet, and sometimes all of it. Let it run "
    "at night, with a full tank and nobody drawing, or pump 2 pulls the tank down to air."
)
UNSAFE_WATER = (
    "Unsafe water. It has no taste. If a sheet shows E. coli, or a result over a level set for "
    "health: do not drink the water, tell everyone in the household, and call the health "
    "department before you sell or build anything. Boiling kills germs and makes nitrate, arsenic "
    "and lead stronger."
)
NO_CERTIFICATE = (
    "No certificate. No figure of this page says that water is safe to drink. A test says what was "
    "in one bottle on one day; germs come and go with rain. Test again after every change."
)
LICENSED_GERMS = (
    "Licensed practice. Disinfecting water that people fall ill from is for a licensed "
    "professional and the health department. This page only shows whether a device can do what is "
    "asked of it."
)
UV_LIGHT = (
    "Ultraviolet light. It burns eyes and skin in seconds. Pull the lamp's plug before "
    "you open the chamber, and never look into a lit one. A broken lamp spills mercury."
)
CHLORINE = (
    "Chlorine. Never mix it with acid, ammonia or any other cleaner, nor two chlorine products "
    "with each other: that makes poison gas. Goggles, gloves, open air [cdc-drilled]. Always the "
    "product into water."
)
WELL_PIT = (
    "Well pits kill. Gas gathers in them. Never enter one, nor a dug well or a tank, not even to "
    "help somebody out [cdc-drilled]."
)
CHLORINATED_WATER = (
    "The household. Tell everyone: no drinking, no bathing, no laundry until the water is flushed "
    "and tested. Bypass softener, carbon and membranes. Keep the water from septic tanks, streams "
    "and ponds [land-2005]."
)
SCALD = (
    "Scalding. A shower that loses its cold water to another tap turns hot at once. Where the peak "
    "cannot be served, fit a valve that holds the temperature, and do not set the heater hotter."
)
BACKFLOW = (
    "Backflow. A hose whose end lies in a pail, a pool or a sprayer can be sucked back into the "
    "house. Each hose bib and each sprinkler line needs the device that your code names."
)
WIRING = (
    "Wiring. Lock out first: off at the panel, lock, tag, then prove with a tester that there is "
    "no voltage between any two wires and to ground. A capacitor keeps its charge: discharge it. "
    "Opening boxes, measuring under voltage, choosing wire and connecting it is for a licensed "
    "person."
)
GENERATOR = (
    "Generator. Its exhaust kills: outdoors only, far from windows and doors. Never feed a house "
    "through an outlet: without a transfer switch it kills the worker on the line."
)
GAMMA = (
    "Gamma rays. A bed that holds radon shines day and night, through its tank, walls and floors. "
    "Not beside, over or under where people sit or sleep. Shut it off for weeks before you open it."
)
SPENT_CARBON = (
    "Spent carbon is radioactive: lead-210 stays when the rays are gone. Keep it wet, wear gloves, "
    "raise and breathe no dust, wash. The state's radiation office says where it goes, and you ask "
    "before you buy, not after."
)
VENT_OUTDOORS = (
    "Vent. What leaves the water goes into the aerator's air. That air goes outdoors, through a "
    "sealed pipe, never into a room, an attic or a garage. Never open an aerator in a closed "
    "room: air the room first, and let the blower run until the tank is clean."
)
DRY_TANK = (
    "Dry tank. Its pump draws radon-laden air in and sends it to the taps, and a "
    "stopped blower sends raw water there. A low-level switch and a switch that proves the "
    "blower's air must stop the pumps by themselves."
)
RADON_HEALTH = (
    "Radon. It is the second leading cause of lung cancer [epa-radon-2016]. No amount is without "
    "risk, and these figures are averages over many people: they say nothing about one. Levels and "
    "advice change; ask the state's radon office before you decide."
)
