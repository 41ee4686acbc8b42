"""Units. Multiply to come in, divide to go out: `5 * gpm`, `flow / gpm`.

Inside everything is SI. Conversion factors: Thompson and Taylor, Guide for the Use of the SI, NIST
Special Publication 811, 2008, Appendix B; those marked = are exact there.
"""

from math import pi, sqrt

from calc.quantity import KINDS, Kind, Unit, kind

inch = 0.0254  # =
ft = 12 * inch  # =
mm, cm, m = 1e-3, 1e-2, 1.0
gal = 231 * inch**3  # = US gallon
imp_gal = 4.54609e-3  # =
qt = gal / 4  # =
L = 1e-3  # =
second, minute, hour, day = 1.0, 60.0, 3600.0, 86400.0
lb = 0.45359237  # = avoirdupois pound
lbf = lb * 9.80665  # =
Pa, kPa, bar = 1.0, 1e3, 1e5
psi = lbf / inch**2
inH2O = 249.08891  # conventional, 4 degC water
ftH2O = 12 * inH2O
gpm = gal / minute
inHg = inch * 13595.1 * 9.80665  # conventional mercury
hp = 550 * ft * lbf  # = mechanical horsepower, W
grain = lb / 7000  # =
pCi = 0.037  # = Bq
mg = 1e-6
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
    Unit("mL/min", 1e-3 * L / minute, ("ml per min",)),
    Unit("gal/day", gal / day, ("gpd",)),
    Unit("L/day", L / day),
    us="gpm",
    si="L/min",
)
air_flow = kind(
    "air flow",
    Unit("cfm", ft**3 / minute, ("ft³/min", "ft3/min")),
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
energy = kind("energy", Unit("kWh", 1e3 * hour), Unit("MJ", 1e6), us="kWh", si="kWh")
mass = kind("mass", Unit("lb", lb, ("pounds", "pound")), Unit("kg", 1.0), us="lb", si="kg")
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
    us="mg/L as CaCO3",
    si="mg/L as CaCO3",
)
radon = kind(
    "radon",
    Unit("pCi/L", pCi / L),
    Unit("Bq/L", 1 / L),
    Unit("Bq/m³", 1.0, ("bq/m3",)),
    us="pCi/L",
    si="Bq/L",
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
share = kind("share", Unit("%", percent, ("percent", "per cent")), us="%", si="%")
air_share = kind("share of the air", Unit("ppm", 1e-6), Unit("%", percent), us="ppm", si="ppm")
number = kind("number", Unit("", 1.0), us="", si="")
