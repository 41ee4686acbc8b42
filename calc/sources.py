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
        "table of losses in partly open valves: plug cock K 17.3 at 40 degrees, 206 at 60",
        "second-hand",
        "Table seen reproduced; edition from memory.",
    ),
    "osha-1910-147": Source(
        "US OSHA",
        "The control of hazardous energy (lockout/tagout)",
        1989,
        "29 CFR 1910.147; written for employers, a model for a house",
        "read",
        "Title and scope read; year from memory.",
    ),
}


def entry(source: str) -> Source:
    """The source of that id. KeyError, naming it, if there is none."""
    if source not in SOURCES:
        raise KeyError(f"no source {source!r}")
    return SOURCES[source]
