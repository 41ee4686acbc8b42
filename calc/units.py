"""Units. Multiply to come in, divide to go out: `5 * gpm`, `flow / gpm`.

Inside everything is SI. Conversion factors: Thompson and Taylor, Guide for the Use of the SI, NIST
Special Publication 811, 2008, Appendix B; those marked = are exact there.
"""

from math import pi, sqrt

from calc.quantity import KINDS, Kind, Unit, kind

GRAVITY = 9.80665  # = m/s², standard acceleration

inch = 0.0254  # =
ft = 12 * inch  # =
mm, cm, m = 1e-3, 1e-2, 1.0
gal = 231 * inch**3  # = US gallon
imp_gal = 4.54609e-3  # =
qt = gal / 4  # =
L = 1e-3  # =
mL = 1e-6  # =
cup = gal / 16  # =
fl_oz = gal / 128  # =
second, minute, hour, day = 1.0, 60.0, 3600.0, 86400.0
year = 365.25 * day
lb = 0.45359237  # = avoirdupois pound
oz = lb / 16  # =
lbf = lb * GRAVITY  # =
Pa, kPa, bar = 1.0, 1e3, 1e5
psi = lbf / inch**2
inH2O = 249.08891  # conventional, 4 degC water
ftH2O = 12 * inH2O
WATER_COLUMN = ftH2O / ft  # pressure under each metre of water, Pa/m
gpm = gal / minute
cfm = ft**3 / minute
inHg = inch * 13595.1 * GRAVITY  # conventional mercury
hp = 550 * ft * lbf  # = mechanical horsepower, W
kVA = 1e3
grain = lb / 7000  # =
pCi = 0.037  # = Bq
mg, gram = 1e-6, 1e-3
mSv, mrem = 1e-3, 1e-5  # = Sv
percent = 1e-2
atm = 101325.0  # = standard atmosphere, Pa

# Water's weight against the US unit of flow coefficient: gpm of 60 degF water at 1 psi.
Cv = gpm / sqrt(psi)
Kv = 1.0 / hour / sqrt(bar)


__all__ = ["KINDS", "Kind", "Unit"]  # so that what uses units needs one import

volume = kind(
    "volume",
    Unit("gal", gal, ("gallon", "gallons", "us gal")),
    Unit("L", L, ("litre", "litres", "liter", "liters")),
    Unit("qt", qt, ("quart", "quarts")),
    Unit("cups", cup, ("cup",)),
    Unit("fl oz", fl_oz, ("fluid ounce", "fluid ounces")),
    Unit("mL", mL, ("millilitre", "milliliter")),
    Unit("m³", 1.0, ("m3",)),
    Unit("ft³", ft**3, ("ft3", "cu ft")),
    Unit("imp gal", imp_gal, ("imperial gallon", "imperial gallons", "uk gal")),
    us="gal",
    si="L",
)
flow = kind(
    "flow",
    Unit("gpm", gpm, ("gal/min", "us gpm")),
    Unit("L/min", L / minute, ("lpm",)),
    Unit("L/s", L, ("lps",)),
    Unit("m³/h", 1 / hour, ("m3/h",)),
    Unit("gal/h", gal / hour, ("gph",)),
    Unit("gal/day", gal / day, ("gpd",)),
    Unit("L/day", L / day),
    Unit("mL/min", 1e-6 / minute, ("cc/min",)),
    us="gpm",
    si="L/min",
)
air_flow = kind(
    "air flow",
    Unit("cfm", cfm, ("ft³/min", "ft3/min")),
    Unit("L/s", L, ("lps",)),
    Unit("m³/h", 1 / hour, ("m3/h",)),
    us="cfm",
    si="L/s",
)
gauge_pressure = kind(
    "gauge pressure",
    Unit("psi", psi, ("psig",)),
    Unit("kPa", kPa),
    Unit("bar", bar),
    Unit("ft of water", ftH2O, ("fth2o", "ft h2o")),
    Unit("in of water", inH2O, ("inh2o", "in h2o", "in wc", "inches of water", "inwc")),
    Unit("Pa", Pa),
    us="psi",
    si="kPa",
)
absolute_pressure = kind(
    "absolute pressure",
    Unit("psia", psi, ("psi abs",)),
    Unit("kPa abs", kPa, ("kpaa",)),
    Unit("inHg", inHg, ("in hg", "inches of mercury")),
    Unit("atm", atm),
    us="psia",
    si="kPa abs",
)
duration = kind(
    "time",
    Unit("s", second, ("sec", "second", "seconds")),
    Unit("min", minute, ("minute", "minutes")),
    Unit("h", hour, ("hour", "hours", "hr")),
    Unit("days", day, ("day",)),
    us="min",
    si="min",
)
length = kind(
    "length",
    Unit("ft", ft, ("'", "foot", "feet")),
    Unit("in", inch, ('"', "inch", "inches")),
    Unit("m", m, ("metre", "metres", "meter", "meters")),
    Unit("cm", cm),
    Unit("mm", mm),
    us="ft",
    si="m",
)
area = kind(
    "area",
    Unit("ft²", ft**2, ("ft2", "sq ft")),
    Unit("in²", inch**2, ("in2", "sq in")),
    Unit("m²", 1.0, ("m2",)),
    Unit("cm²", cm**2, ("cm2",)),
    us="ft²",
    si="m²",
)
velocity = kind(
    "velocity",
    Unit("ft/s", ft, ("fps",)),
    Unit("ft/min", ft / minute),
    Unit("m/s", 1.0),
    Unit("m/h", 1 / hour),
    us="ft/s",
    si="m/s",
)
acceleration = kind(
    "acceleration",
    Unit("ft/s²", ft, ("ft/s2",)),
    Unit("m/s²", 1.0, ("m/s2",)),
    us="ft/s²",
    si="m/s²",
)
loading = kind(
    "flow for each area",
    Unit("gpm/ft²", gpm / ft**2, ("gpm/ft2",)),
    Unit("m/h", 1 / hour),
    us="gpm/ft²",
    si="m/h",
)
temperature = kind(
    "temperature",
    Unit("°F", 5 / 9, ("f", "deg f", "degf"), 459.67 * 5 / 9),
    Unit("°C", 1.0, ("c", "deg c", "degc"), 273.15),
    Unit("K", 1.0),
    us="°F",
    si="°C",
)
power = kind("power", Unit("hp", hp), Unit("W", 1.0), Unit("kW", 1e3), us="hp", si="kW")
apparent_power = kind("apparent power", Unit("kVA", kVA), Unit("VA", 1.0), us="kVA", si="kVA")
voltage = kind("voltage", Unit("V", 1.0, ("volt", "volts")), us="V", si="V")
current = kind("current", Unit("A", 1.0, ("amp", "amps", "ampere")), us="A", si="A")
resistance = kind("electrical resistance", Unit("Ω", 1.0, ("ohm", "ohms")), us="Ω", si="Ω")
wire_resistance = kind(
    "resistance of wire for each length",
    Unit("Ω/kft", 1 / (1e3 * ft), ("ohm/kft",)),
    Unit("Ω/km", 1e-3, ("ohm/km",)),
    us="Ω/kft",
    si="Ω/km",
)
energy = kind("energy", Unit("kWh", 1e3 * hour), Unit("MJ", 1e6), us="kWh", si="kWh")
mass = kind(
    "mass",
    Unit("lb", lb, ("pounds", "pound")),
    Unit("kg", 1.0),
    Unit("oz", oz, ("ounce", "ounces")),
    Unit("g", gram, ("gram", "grams")),
    us="lb",
    si="kg",
)
concentration = kind(
    "concentration",
    Unit("mg/L", mg / L, ("ppm",)),
    Unit("µg/L", mg / L / 1e3, ("ppb", "ug/l")),
    Unit("g/L", 1.0),
    us="mg/L",
    si="mg/L",
)
hardness = kind(
    "hardness or alkalinity",
    Unit("mg/L as CaCO3", mg / L, ("mg/l", "ppm", "mg/l as caco₃", "mg/l caco3")),
    Unit("gpg", grain / gal, ("grains per gallon", "grains/gal", "gr/gal")),
    # A German degree is 10 mg/L of CaO, a French one 10 mg/L of CaCO3. From memory.
    Unit("°dH", 10 * mg / L * 100.0869 / 56.0774, ("dh", "german degrees")),
    Unit("°fH", 10 * mg / L, ("fh", "french degrees")),
    us="mg/L as CaCO3",
    si="mg/L as CaCO3",
)
# Molar masses of N and NO3 from atomic weights: a laboratory may mean either.
nitrate = kind(
    "nitrate",
    Unit("mg/L as N", mg / L, ("mg/l", "ppm", "mg/l as nitrogen", "mg/l no3-n")),
    Unit("mg/L as NO3", mg / L * 14.007 / 62.004, ("mg/l as nitrate", "mg/l no3")),
    us="mg/L as N",
    si="mg/L as N",
)
equivalents = kind("charges of ions", Unit("meq/L", 1.0), us="meq/L", si="meq/L")
ion_amount = kind(
    "amount of ions", Unit("mmol/L", 1.0), Unit("mol/L", 1e3), us="mmol/L", si="mmol/L"
)
molar_mass = kind("mass of a mole", Unit("g/mol", 1e-3), us="g/mol", si="g/mol")
conductivity = kind(
    "conductivity",
    Unit("µS/cm", 1e-4, ("us/cm", "umho/cm")),
    Unit("mS/cm", 0.1, ("ms/cm",)),
    us="µS/cm",
    si="µS/cm",
)
conducted = kind(
    "conductivity for each charge",
    Unit("µS/cm per meq/L", 1e-4),
    us="µS/cm per meq/L",
    si="µS/cm per meq/L",
)
solids_share = kind(
    "solids for each conductivity",
    Unit("mg/L per µS/cm", mg / L / 1e-4),
    us="mg/L per µS/cm",
    si="mg/L per µS/cm",
)
uv_dose = kind(
    "dose of ultraviolet light", Unit("mJ/cm²", 10.0, ("mj/cm2",)), us="mJ/cm²", si="mJ/cm²"
)
absorbance = kind("absorbance", Unit("per cm", 100.0), us="per cm", si="per cm")
contact = kind(
    "chlorine times time", Unit("mg·min/L", mg / L * minute, ("mg min/l", "min·mg/l")),
    us="mg·min/L", si="mg·min/L",
)  # fmt: skip
held_hardness = kind(
    "hardness that a bed holds",
    Unit("grains", grain, ("gr", "grain")),
    Unit("g as CaCO3", gram),
    us="grains",
    si="g as CaCO3",
)
bed_capacity = kind(
    "hardness for each volume of bed",
    Unit("gr/ft³", grain / ft**3, ("gr/ft3", "grains/ft3")),
    Unit("g/L as CaCO3", 1.0),
    us="gr/ft³",
    si="g/L as CaCO3",
)
bed_salt = kind(
    "mass for each volume of bed",
    Unit("lb/ft³", lb / ft**3, ("lb/ft3",)),
    Unit("g/L", 1.0),
    us="lb/ft³",
    si="g/L",
)
bed_water = kind(
    "water for each volume of bed",
    Unit("gal/ft³", gal / ft**3, ("gal/ft3",)),
    Unit("L/L", 1.0),
    us="gal/ft³",
    si="L/L",
)
area_load = kind(
    "mass for each area",
    Unit("lb/ft²", lb / ft**2, ("lb/ft2",)),
    Unit("kg/m²", 1.0, ("kg/m2",)),
    us="lb/ft²",
    si="kg/m²",
)
iron_weight = kind(
    "hardness for each iron",
    Unit("gpg per mg/L", grain / gal / (mg / L)),
    Unit("mg/L per mg/L", 1.0),
    us="gpg per mg/L",
    si="mg/L per mg/L",
)
salt_yield = kind(
    "hardness for each mass of salt",
    Unit("gr/lb", grain / lb),
    Unit("g/kg", 1e-3),
    us="gr/lb",
    si="g/kg",
)
radon = kind(
    "radon",
    Unit("pCi/L", pCi / L),
    Unit("Bq/L", 1 / L),
    Unit("Bq/m³", 1.0, ("bq/m3",)),
    us="pCi/L",
    si="Bq/L",
)
activity = kind(
    "activity",
    Unit("µCi", 1e6 * pCi, ("uci", "microcurie")),
    Unit("MBq", 1e6),
    Unit("kBq", 1e3),
    Unit("Bq", 1.0),
    us="µCi",
    si="MBq",
)
specific_activity = kind(
    "activity for each mass",
    Unit("pCi/g", 1e3 * pCi),
    Unit("Bq/g", 1e3),
    Unit("Bq/kg", 1.0),
    us="pCi/g",
    si="Bq/g",
)
dose = kind("dose", Unit("mSv", mSv), Unit("mrem", mrem), us="mSv", si="mSv")
dose_rate = kind(
    "dose rate",
    Unit("µSv/h", mSv / 1e3 / hour, ("usv/h",)),
    Unit("mrem/h", mrem / hour),
    us="µSv/h",
    si="µSv/h",
)
rate = kind("rate", Unit("per h", 1 / hour), Unit("per day", 1 / day), us="per h", si="per h")
count_rate = kind(
    "counting rate", Unit("cpm", 1 / minute, ("counts/min",)), Unit("cps", 1.0), us="cpm", si="cpm"
)
counting = kind(
    "counts for each activity",
    Unit("cpm/pCi", 1 / minute / pCi),
    Unit("cps/Bq", 1.0),
    us="cpm/pCi",
    si="cps/Bq",
)
age = kind(
    "age",
    Unit("years", year, ("year", "yr")),
    Unit("months", year / 12, ("month",)),
    us="years",
    si="years",
)
flow_coefficient = kind("flow coefficient", Unit("Cv", Cv), Unit("Kv", Kv), us="Cv", si="Kv")
bed_resistance = kind(
    "resistance of a bed",
    Unit("psi/gpm", psi / gpm, ("psi per gpm",)),
    Unit("kPa·min/L", kPa * minute / L, ("kpa min/l",)),
    us="psi/gpm",
    si="kPa·min/L",
)
pressure_gradient = kind(
    "pressure for each length",
    Unit("psi/ft", psi / ft),
    Unit("kPa/m", kPa),
    us="psi/ft",
    si="kPa/m",
)
angle = kind(
    "angle",
    Unit("°", pi / 180, ("deg", "degree", "degrees")),
    Unit("rad", 1.0),
    us="°",
    si="°",
)
specific_capacity = kind(
    "flow for each length",
    Unit("gpm/ft", gpm / ft),
    Unit("L/min/m", L / minute),
    Unit("m²/day", 1 / day, ("m2/day",)),
    us="gpm/ft",
    si="L/min/m",
)
transmissivity = kind(
    "transmissivity",
    Unit("gpd/ft", gal / day / ft),
    Unit("ft²/day", ft**2 / day, ("ft2/day",)),
    Unit("m²/day", 1 / day, ("m2/day",)),
    us="ft²/day",
    si="m²/day",
)
share = kind("share", Unit("%", percent, ("percent", "per cent")), us="%", si="%")
number = kind("number", Unit("", 1.0), us="", si="")
air_share = kind("share of the air", Unit("ppm", 1e-6), Unit("%", percent), us="ppm", si="ppm")
money = kind("money", Unit("$", 1.0), us="$", si="$")
energy_price = kind("price of energy", Unit("$/kWh", 1 / (1e3 * hour)), us="$/kWh", si="$/kWh")
