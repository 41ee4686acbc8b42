"""The aerator: its air, stages and bubbles, as inputs."""

from calc.fields import AERATOR, BUBBLES, INVENTED, flow_input
from calc.model import Choice, Input
from calc.units import (
    air_flow,
    cfm,
    inch,
    length,
    mm,
    percent,
    share,
)

MOST_STAGES = 8
aerator_flow = flow_input(
    "aerator_flow",
    "Largest flow of water through the aerator",
    "Q_a",
    "5.6 gpm",
    "Pail at the aerator's inlet, float wide open, filter clean, well pump at cut-out. Here the "
    "largest flow is the worst.",
    AERATOR,
)
aerator_air = Input(
    name="aerator_air",
    label="Air through the aerator",
    symbol="G",
    kind=air_flow,
    default="12 cfm",
    origin=INVENTED,
    low=0.1 * cfm,
    high=500 * cfm,
    measure="With a flow hood or a pitot tube in the vent, lid and water in place. The blower's "
    "label is for free air: under water and through a vent it gives less.",
    group=AERATOR,
    sure="10 %",
)
aerator = Choice(
    name="aerator",
    label="Kind of aerator",
    options={
        "basins": "bubbles in one or more mixed basins, each with its own air",
        "trays": "trays above each other, the same air rising through all",
        "crossed": "one long tray that the water crosses, fresh air rising all along",
    },
    default="basins",
    origin=INVENTED,
    measure="Follow the air: does each part of the water meet fresh air, or air that has "
    "been through water before? And does the water mix, or run along a path?",
    group=AERATOR,
)
aerator_stages = Choice(
    name="aerator_stages",
    label="Basins or trays that the water passes, one after the other",
    options={str(n): str(n) for n in range(1, MOST_STAGES + 1)},
    default="3",
    origin=INVENTED,
    measure="Count compartments with a wall between them and bubbles of their own. Two "
    "stones in one open tank are one basin. A crossed tray needs no count.",
    group=AERATOR,
)
bubble_depth = Input(
    name="bubble_depth",
    label="Water over the point where the bubbles start",
    symbol="z_b",
    kind=length,
    default="18 in",
    origin=INVENTED,
    low=0.5 * inch,
    high=120 * inch,
    us="in",
    si="cm",
    measure="From the lowest running water level down to the stone or the holes.",
    group=BUBBLES,
    sure="1 in",
)
bubble_size = Input(
    name="bubble_size",
    label="Diameter of the bubbles",
    symbol="d_b",
    kind=length,
    default="3 mm",
    origin="common size over a fine stone, from memory",
    low=1 * mm,
    high=20 * mm,
    us="mm",
    si="mm",
    measure="Never through an open lid indoors. Photograph the stone in a pail of clean water "
    "outdoors, a ruler beside it. Open pipes and torn diffusers make 10 mm and more.",
    group=BUBBLES,
    sure="1 mm",
)
bubble_share = Input(
    name="bubble_share",
    label="Transfer through the bubble's skin, against a clean one",
    symbol="c_b",
    kind=share,
    default="40 %",
    origin="dirt slows the transfer two to three times, from memory; six times, by "
    "Frössling's equation, where the skin is quite stiff [alves-2005]",
    low=10 * percent,
    high=100 * percent,
    measure="100 % only in very clean water, about 15 % when dirt has made the skin stiff. "
    "A pair of samples before and after tells yours: work backwards from it.",
    group=BUBBLES,
    sure="20 %",
)
