"""The calculators of Pail and Timer, a field handbook for private-well water."""

EDITION = "0.1.0"  # printed on every record; the wheel's version
