"""The calculators of Pail and Timer, a field handbook for private-well water."""
