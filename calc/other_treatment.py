"""What is done about arsenic, uranium, nitrate, sulfide and lead, and what goes wrong with it.

Options to talk over with a licensed professional and the health department, not a design. To change
one, change its line, and `READ` when all were looked at. A source is an id of `calc.sources`, or
says that there is none.
"""

from typing import NamedTuple

READ = "November 2026"  # when all of them were looked up

# of what | where | what is done | what goes wrong | source
_TABLE = """
arsenic | one tap | reverse osmosis | Takes the charged form well and the uncharged one badly; deep wells have the second. Have both measured. The uncharged one must first be oxidized, and many membranes do not bear chlorine. | oregon-arsenic
arsenic | whole house | iron-based media, two tanks in line, a sample tap between | One tank alone runs out between two samples, and nobody sees it. Test between the tanks and at the kitchen every year; over 5 µg/L between them the second becomes the first. | nj-arsenic
arsenic | whole house | taken out with the iron, in an iron filter | Only where there is much more iron than arsenic, twenty times by mass, and both are oxidized first. Test raw and treated water together, more than once. | from memory
arsenic | whole house | anion exchange | Sulfate pushes arsenic off the resin: a spent bed can give back more than comes. Carries brine with arsenic in it. | from memory
uranium | one tap | reverse osmosis | Enough where only drinking counts: bathing in it is no concern. A new membrane is a new test. | ct-uranium
uranium | whole house | anion exchange | Works at pH 6.5 to 9. Holds so long that radium gathers on the resin: changed or regenerated early, after 20 000 to 50 000 bed volumes. The state says where brine and resin go. | wqa-uranium
uranium | anything that holds it | filters, tanks and pipes | What has gathered radioactivity may be waste for a licensed place only. Ask before it is bought, not when it is full. | epa-radionuclides
nitrate | infants | bottled water, or a proven other source | A home unit is not advised for an infant's water: nobody sees when it fails, and one day of it has made infants ill. | mn-nitrate
nitrate | the well | find what brings it: the well's cap and casing, septic field, fields; then another well | Treatment hides the cause, and what comes with nitrate: germs, pesticides. | common practice, no source
nitrate | one tap | reverse osmosis | Takes most, never all. What is left is a share of what comes in: test it in the season when the raw water is worst. | from memory
nitrate | whole house | anion exchange | Sulfate goes first, and a spent bed lets go of its nitrate at once. Brine to the drain, more chloride in the water, and it eats metal sooner. | from memory
sulfide | hot water only | the heater's magnesium rod; a hotter heater for a few hours | The well may be innocent. Test cold water at the well before anything is sold. Hot water scalds, and the relief valve must work. | psu-sulfide
sulfide | well and pipes | shock chlorination | Helps where bacteria make it, and they come back. | uga-sulfide
sulfide | whole house | air, vented outdoors | The gas is poisonous and burns, and gathers in pits and tanks. Air before stone: the lower the pH, the more of it can leave. | psu-sulfide
sulfide | whole house | carbon | For traces of 0.05 to 0.3 mg/L. More fills it in no time. | tx-sulfide
sulfide | whole house | chlorine, time, then a filter | 2.1 parts of chlorine turn one part of sulfide to sulfur, 8.3 to sulfate. The sulfur must be filtered, the chlorine taken out by carbon behind it. | atomic weights
lead | every tap | run it after six hours of rest, drink and cook with cold water only | Lowers it, cures nothing. Boiling takes no lead out. | epa-lead-2021
lead | the part that gives it | find it by a first-draw and a flushed sample, and replace it | Dust from cutting old pipe is lead as well. A licensed plumber, and samples after. | common practice, no source
lead | one tap | a filter certified for lead by NSF/ANSI 53, and for particles by 42 class I | Cold water only, changed on its day: spent, it hides the lead instead of taking it. | mi-lead
lead | whole house | pH and alkalinity raised | Acid water dissolves lead, so this comes first where the pH is low. But any change of pH, softening or chlorine can loosen it: first-draw samples before, after a month, after half a year. | from memory
"""  # noqa: E501 -- one line for each option


class Option(NamedTuple):
    """One thing that is done: of what, where, what, what goes wrong, and its source."""

    substance: str
    where: str
    done: str
    caution: str
    source: str


OPTIONS = tuple(Option(*line.split(" | ")) for line in _TABLE.strip().splitlines())
UNSOURCED = ("from memory", "common practice, no source", "atomic weights")
SUBSTANCES = tuple(dict.fromkeys(option.substance for option in OPTIONS))


def options(substance: str) -> tuple[Option, ...]:
    """What is done about one of `SUBSTANCES`. KeyError, naming it, if it is none."""
    if substance not in SUBSTANCES:
        raise KeyError(f"no options for {substance!r}")
    return tuple(option for option in OPTIONS if option.substance == substance)
