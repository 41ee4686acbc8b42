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
    "weigel-1978": Source(
        "F. Weigel",
        "Radon",
        1978,
        "Chemiker-Zeitung 102, 287; formula for the partition between water and air",
        "second-hand",
        "Formula read in several later works that quote it.",
    ),
    "schubert-2012": Source(
        "M. Schubert, A. Paschke, E. Lieberman and W. C. Burnett",
        "Air-Water Partitioning of 222Rn and its Dependence on Water Temperature and Salinity",
        2012,
        "Environmental Science and Technology 46, 3905",
        "second-hand",
        "Abstract read; coefficients as public research code has them.",
    ),
    "clever-1979": Source(
        "H. L. Clever (ed.)",
        "Krypton, Xenon and Radon: Gas Solubilities",
        1979,
        "IUPAC Solubility Data Series 2",
        "from memory",
        "Held against the value at 25 °C in [sander-2023].",
    ),
    "sander-2023": Source(
        "R. Sander",
        "Compilation of Henry's law constants (version 5.0.0) for water as solvent",
        2023,
        "Atmospheric Chemistry and Physics 23, 10901; radon, Clever: 9.1e-5 mol/(m³ Pa)",
        "read",
    ),
    "jahne-1987": Source(
        "B. Jähne, G. Heinz and W. Dietrich",
        "Measurement of the diffusion coefficients of sparingly soluble gases in water",
        1987,
        "Journal of Geophysical Research 92, 10767",
        "from memory",
        "Held against the table in [crc-gases].",
    ),
    "crc-gases": Source(
        "D. R. Lide (ed.)",
        "CRC Handbook of Chemistry and Physics: Diffusion of Gases in Water",
        2005,
        "p. 6-193; radon 0.81 to 1.80e-5 cm²/s from 10 to 35 °C, after Jähne",
        "read",
        "Page read; edition from memory.",
    ),
    "higbie-1935": Source(
        "R. Higbie",
        "The rate of absorption of a pure gas into a still liquid during short periods of exposure",
        1935,
        "Transactions of the American Institute of Chemical Engineers 31, 365",
        "from memory",
    ),
    "froessling-1938": Source(
        "N. Frössling",
        "Über die Verdunstung fallender Tropfen",
        1938,
        "Gerlands Beiträge zur Geophysik 52, 170",
        "from memory",
    ),
    "alves-2005": Source(
        "S. S. Alves, S. P. Orvalho and J. M. T. Vasconcelos",
        "Effect of bubble contamination on rise velocity and mass transfer",
        2005,
        "Chemical Engineering Science 60, 1; clean front after Higbie, stiff cap after Frössling",
        "read",
        "Abstract read.",
    ),
    "kremser-1930": Source(
        "A. Kremser",
        "Theoretical analysis of absorption process",
        1930,
        "National Petroleum News 22, 43",
        "from memory",
        "Held against a count from tray to tray.",
    ),
    "lewis-1936": Source(
        "W. K. Lewis",
        "Rectification of binary mixtures: plate efficiency of bubble cap columns",
        1936,
        "Industrial and Engineering Chemistry 28, 399",
        "from memory",
        "Held against a count from tray to tray.",
    ),
    "colburn-1939": Source(
        "A. P. Colburn",
        "The simplified calculation of diffusional processes",
        1939,
        "Transactions of the American Institute of Chemical Engineers 35, 211",
        "from memory",
        "Held against the integral over the column.",
    ),
    "crank-1975": Source(
        "J. Crank",
        "The Mathematics of Diffusion",
        1975,
        "Oxford University Press, 2nd edition, equation (6.20)",
        "from memory",
        "Held against a solution in steps of time.",
    ),
    "onda-1968": Source(
        "K. Onda, H. Takeuchi and Y. Okumoto",
        "Mass transfer coefficients between gas and liquid phases in packed columns",
        1968,
        "Journal of Chemical Engineering of Japan 1, 56",
        "second-hand",
        "Three equations and their constants as public code has them.",
    ),
    "dvorak-1996": Source(
        "B. I. Dvorak and others",
        "Reassessment of packed tower mass transfer models",
        1996,
        "Environmental Science and Technology 30, 945; Onda on large packing",
        "read",
        "Abstract read; title from memory.",
    ),
    "iapws-tension": Source(
        "IAPWS",
        "Revised Release on Surface Tension of Ordinary Water Substance",
        2014,
        "IAPWS R1-76(2014)",
        "from memory",
        "Title and range read; held against a printed table: 74.22 mN/m at 10 °C, 72.74 at 20.",
    ),
    "us-standard-1976": Source(
        "NOAA, NASA and US Air Force",
        "U.S. Standard Atmosphere",
        1976,
        "viscosity of air, equation (51)",
        "from memory",
    ),
    "bubble-pilot-1999": Source(
        "Journal of Radioanalytical and Nuclear Chemistry",
        "Radon removal from water supplies by diffused bubble aeration system",
        1999,
        "241, 3-9; 32 runs of a pilot plant: 97 % at 19 minutes and 12 parts of air, over 90 % "
        "from 4 minutes and 19 parts",
        "read",
        "Abstract read; it does not name temperature or size of bubbles.",
    ),
    "kinner-1990": Source(
        "N. E. Kinner, J. P. Malley and J. A. Clement",
        "Radon Removal Using Point-of-Entry Water Treatment Techniques",
        1990,
        "EPA/600/2-90/047: diffused bubbles and bubble plate, 99 % for a year at 35 620 ± 6 717 "
        "pCi/L; iron fell out in both",
        "read",
        "Abstract read; the air-to-water ratios are in the report, which was not.",
    ),
    "dembek-1993": Source(
        "Z. F. Dembek and others",
        "A Comparison of Radon-in-Water Mitigation Systems",
        1993,
        "Connecticut, one to four years, wells of 43 894 to 457 807 pCi/L: 99.9 % with diffused "
        "bubbles behind a softener, 77.7 % with spray, bubbles and charcoal",
        "read",
        "Abstract read; year from memory.",
    ),
    "mjones-2000": Source(
        "L. Mjönes",
        "Radon removal equipment based on aeration: a literature study of tests performed in "
        "Sweden between 1981 and 1996",
        2000,
        "SSI 2000:03; about 70 % at best with spray and bubbles in a pressure tank",
        "read",
        "Summary read.",
    ),
    "epa-1999-proposal": Source(
        "US EPA",
        "National Primary Drinking Water Regulations: Radon-222, proposed rule",
        1999,
        "64 FR 59246; 300 pCi/L and 4 000 pCi/L, for public supplies, proposed",
        "read",
        "That it was never made final is from memory.",
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
