"""Where the numbers come from. Every `[id]` in a docstring, declaration or chapter is here."""

from typing import NamedTuple


class Source(NamedTuple):
    """One source. `seen` says how well it was checked: "read", "second-hand" or "from memory"."""

    author: str
    title: str
    year: int
    place: str
    seen: str
    note: str = ""

    @property
    def short(self) -> str:
        """Author and year, for the running text."""
        return f"{self.author} {self.year}"


SOURCES = {
    "jcgm-100": Source(
        "JCGM",
        "Evaluation of measurement data: Guide to the expression of uncertainty in measurement",
        2008,
        "JCGM 100:2008; equations (4), (5), (10), (12), (G.2b), 4.3.7, 5.1.3, Tables G.1 and G.2",
        "second-hand",
        "Student's t recomputed; equations checked on its example H.1 as others print it.",
    ),
    "jcgm-101": Source(
        "JCGM",
        "Evaluation of measurement data: Supplement 1, Propagation of distributions using a "
        "Monte Carlo method",
        2008,
        "JCGM 101:2008; 5.9, 7 and 8; examples 9.2.2 and 9.2.3",
        "second-hand",
        "Examples recomputed; clauses from memory.",
    ),
    "mckay-1979": Source(
        "M. D. McKay, R. J. Beckman and W. J. Conover",
        "A Comparison of Three Methods for Selecting Values of Input Variables",
        1979,
        "Technometrics 21, 239",
        "from memory",
    ),
    "abramowitz-stegun": Source(
        "M. Abramowitz and I. A. Stegun (eds.)",
        "Handbook of Mathematical Functions",
        1964,
        "National Bureau of Standards AMS 55; 25.4.29 and Table 25.4, eight points",
        "from memory",
        "Nodes and weights recomputed with numpy.",
    ),
    "brent-1973": Source(
        "R. P. Brent",
        "Algorithms for Minimization without Derivatives",
        1973,
        "Prentice-Hall, chapter 4",
        "from memory",
        "Checked against scipy.optimize.brentq.",
    ),
    "jcgm-106": Source(
        "JCGM",
        "Evaluation of measurement data: The role of measurement uncertainty in conformity "
        "assessment",
        2012,
        "JCGM 106:2012; guarded acceptance, 8.3.2",
        "from memory",
        "The factors 1.645 and 2.326 are those of the normal distribution, recomputed.",
    ),
    "ilac-g8": Source(
        "ILAC",
        "Guidelines on Decision Rules and Statements of Conformity",
        2019,
        "ILAC-G8:09/2019, 4.1: the guard band is limit less acceptance limit",
        "read",
    ),
    "iec-60534-2-1": Source(
        "IEC",
        "Industrial-process control valves, Part 2-1: Flow capacity, Sizing equations for fluid "
        "flow under installed conditions",
        2011,
        "IEC 60534-2-1:2011; definition of the flow coefficient and non-choked flow",
        "second-hand",
    ),
    "ergun": Source(
        "S. Ergun",
        "Fluid flow through packed columns",
        1952,
        "Chemical Engineering Progress 48, 89",
        "from memory",
    ),
    "iapws-liquid": Source(
        "IAPWS",
        "Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa",
        2011,
        "IAPWS SR6-08(2011); equations for specific volume and viscosity",
        "second-hand",
        "Abstract read; coefficients as the open library iapws 1.5.5 has them, and held against "
        "IAPWS-IF97.",
    ),
    "iapws-sat": Source(
        "IAPWS",
        "Revised Supplementary Release on Saturation Properties of Ordinary Water Substance",
        1992,
        "IAPWS SR1-86(1992), equation (1)",
        "second-hand",
        "Coefficients as the open library iapws 1.5.5 has them, and held against IAPWS-IF97.",
    ),
    "colebrook-1939": Source(
        "C. F. Colebrook",
        "Turbulent flow in pipes, with particular reference to the transition region between the "
        "smooth and rough pipe laws",
        1939,
        "Journal of the Institution of Civil Engineers 11, 133",
        "from memory",
        "Held against the open library fluids 1.3.1.",
    ),
    "rossman-2000": Source(
        "L. A. Rossman",
        "EPANET 2 Users Manual",
        2000,
        "EPA/600/R-00/057; chapter 3 and Appendix D: head loss, minor loss and pump curves",
        "second-hand",
        "Title page read, equations from memory; held against EPANET 2.2 itself.",
    ),
    "binder-1973": Source(
        "R. C. Binder",
        "Fluid Mechanics",
        1973,
        "Prentice-Hall; roughness of new pipe: drawn copper and brass 1.5 µm",
        "second-hand",
        "Table seen reproduced.",
    ),
    "isa-75-23": Source(
        "ISA",
        "Considerations for Evaluating Control Valve Cavitation",
        1995,
        "ISA-RP75.23-1995; definition of the cavitation index",
        "second-hand",
        "Title page read; definition as others print it.",
    ),
    "karmeli-1977": Source(
        "D. Karmeli",
        "Classification and flow regime analysis of drippers",
        1977,
        "Journal of Agricultural Engineering Research 22, 165; flow as a power of pressure",
        "second-hand",
        "Form and meaning of the exponent read in pages that cite it; title from memory.",
    ),
    "pelikan-2006": Source(
        "B. Pelikan",
        "How to Calculate and Control Pressure Tank Drawdown",
        2006,
        "National Driller, 1 February 2006; example of 28 psi, 30/50 psi and 85 gal",
        "read",
    ),
    "faux-2019": Source(
        "D. A. Faux and J. Godolphin",
        "Manual timing in physics experiments: Error and uncertainty",
        2019,
        "American Journal of Physics 87, 110; abstract: start and stop together 0.10 s",
        "read",
        "Abstract read; authors from memory.",
    ),
    "nist-960-12": Source(
        "J. C. Gust, R. M. Graham and M. A. Lombardi",
        "Stopwatch and Timer Calibrations",
        2009,
        "NIST Special Publication 960-12, 2nd edition, p. 8: reaction times of tens or even "
        "hundreds of milliseconds",
        "read",
    ),
    "nist-811": Source(
        "A. Thompson and B. N. Taylor",
        "Guide for the Use of the International System of Units",
        2008,
        "NIST Special Publication 811, Appendix B",
        "second-hand",
        "Factors recomputed from the exact definitions of inch, pound and gallon.",
    ),
    "nrc-1999": Source(
        "National Research Council",
        "Risk Assessment of Radon in Drinking Water",
        1999,
        "National Academies Press, Executive Summary and p. 182",
        "read",
    ),
    "epa-radon-2016": Source(
        "US EPA",
        "A Citizen's Guide to Radon",
        2016,
        "EPA 402/K-12/002: second leading cause of lung cancer",
        "read",
    ),
    "epact-1992": Source(
        "US Congress",
        "Energy Policy Act",
        1992,
        "showerheads: at most 2.5 gallons a minute at 80 psi",
        "second-hand",
    ),
    "perry-cock": Source(
        "J. H. Perry (ed.)",
        "Chemical Engineers' Handbook",
        1963,
        "table of losses in fittings: plug cock K 0.05, 0.29, 1.56, 17.3, 206 at 5, 10, 20, 40, "
        "60 degrees; globe valve, plug disk, 9, 13, 36, 112 from open to a quarter open",
        "second-hand",
        "Table seen reproduced in two places; edition from memory.",
    ),
    "osha-1910-147": Source(
        "US OSHA",
        "The control of hazardous energy (lockout/tagout)",
        1989,
        "29 CFR 1910.147; written for employers, a model for a house",
        "read",
        "Title and scope read; year from memory.",
    ),
    "hermans-1936": Source(
        "P. H. Hermans and H. L. Bredée",
        "Principles of the mathematical treatment of constant-pressure filtration",
        1936,
        "Journal of the Society of Chemical Industry 55, 1T: the laws in one form",
        "from memory",
    ),
    "grace-1956": Source(
        "H. P. Grace",
        "Structure and performance of filter media, II: Performance of filter media in liquid "
        "service",
        1956,
        "AIChE Journal 2, 316: the four laws as straight lines against throughput",
        "second-hand",
        "Seen as a preprint on plugged filters uses them: each law plotted against throughput.",
    ),
    "hermia-1982": Source(
        "J. Hermia",
        "Constant pressure blocking filtration laws: application to power-law non-Newtonian fluids",
        1982,
        "Transactions of the Institution of Chemical Engineers 60, 183: exponents 0, 1, 3/2, 2",
        "from memory",
        "The exponents checked by deriving each law.",
    ),
    "cheremisinoff-2002": Source(
        "N. P. Cheremisinoff",
        "Handbook of Water and Wastewater Treatment Technologies",
        2002,
        "chapter on filtration: growth of resistance with throughput as its power 3/2 (gradual "
        "blocking), 1 (intermediate)",
        "second-hand",
        "Equations read in a copy on the web; author and title from memory.",
    ),
    "fieller-1954": Source(
        "E. C. Fieller",
        "Some problems in interval estimation",
        1954,
        "Journal of the Royal Statistical Society B 16, 175",
        "second-hand",
        "Method read in the manual of a statistics program; derived anew for a line.",
    ),
    "cacoullos-1965": Source(
        "T. Cacoullos",
        "A relation between t and F-distributions",
        1965,
        "Journal of the American Statistical Association 60, 528",
        "from memory",
        "Checked against scipy.stats.f.",
    ),
    "abramowitz-stegun": Source(
        "M. Abramowitz and I. A. Stegun (eds.)",
        "Handbook of Mathematical Functions",
        1964,
        "National Bureau of Standards, Applied Mathematics Series 55; 26.7.3 and 26.7.4",
        "from memory",
        "Checked against scipy.stats.t.",
    ),
    "draper-smith": Source(
        "N. R. Draper and H. Smith",
        "Applied Regression Analysis",
        1998,
        "3rd edition, weighted least squares",
        "from memory",
        "Checked against numpy.polyfit.",
    ),
    "ansi-hi-9-8": Source(
        "Hydraulic Institute",
        "Rotodynamic Pumps for Pump Intake Design",
        2018,
        "ANSI/HI 9.8; minimum submergence S = D (1 + 2.3 Fd)",
        "second-hand",
        "Title page of 1998 and 2018 and the formula seen on the web; made for large intakes.",
    ),
    "irc-p2902": Source(
        "International Code Council",
        "International Residential Code",
        2003,
        "P2902, air gaps and their table: twice the effective opening, three times near a wall, "
        "1 inch at the least",
        "second-hand",
        "Edition of 2003 as quoted on a forum of inspectors, read in 2026; numbers of the "
        "sections differ between editions.",
    ),
    "sps-382": Source(
        "State of Wisconsin",
        "Administrative Code, SPS 382, notes on air gaps",
        2026,
        "note on near walls: within 3 times the opening the gap is 3 times it",
        "read",
        "As on the web in 2026; the year is that of reading.",
    ),
}


def entry(source: str) -> Source:
    """The source of that id. KeyError, naming it, if there is none."""
    if source not in SOURCES:
        raise KeyError(f"no source {source!r}")
    return SOURCES[source]
