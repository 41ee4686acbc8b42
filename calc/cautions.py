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
UNSAFE_WATER = (
    "Unsafe water has no taste. If a sheet shows E. coli, or a result over a level set for health: "
    "do not drink the water, tell everyone in the household, and call the health department before "
    "you sell or build anything. Boiling kills germs and makes nitrate, arsenic and lead stronger."
)
NO_CERTIFICATE = (
    "No figure of this page says that water is safe to drink. A test says what was in one bottle "
    "on "
    "one day; germs come and go with rain. Test again after every change."
)
LICENSED_GERMS = (
    "Disinfecting water that people fall ill from is for a licensed professional and the health "
    "department. This page only shows whether a device can do what is asked of it."
)
BLEACH = (
    "Bleach burns eyes and skin. Wear goggles and gloves, and never let it meet acid, ammonia or "
    "another cleaner: the gas kills. Only unscented bleach, fit for drinking water."
)
UV_LIGHT = (
    "The light of an ultraviolet lamp burns eyes and skin in seconds. Pull its plug before you "
    "open "
    "the chamber, and never look into a lit one. A broken lamp spills mercury."
)
