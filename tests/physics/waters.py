"""Well waters for the tests of acid water and scale. All are invented."""

from tests.physics.phreeqc import Sheet

ORDINARY = {
    "soft and acid": Sheet(10, 6.2, 20, 6, 1.5, 6, 8, 6),
    "softer and more acid": Sheet(8, 5.6, 8, 3, 0.8, 5, 9, 5),
    "slightly acid": Sheet(12, 6.8, 60, 18, 4, 10, 12, 10),
    "hard": Sheet(12, 7.4, 250, 90, 18, 12, 20, 30),
    "near rest": Sheet(10, 7.8, 120, 40, 8, 10, 10, 20),
    "hard and salty": Sheet(15, 7.2, 180, 60, 15, 25, 30, 40),
}
# Calcium and magnesium make 70 and 30 % of the alkalinity.
GRID = {
    f"alkalinity {alkalinity}, pH {ph}": Sheet(
        10, ph, alkalinity, 0.28 * alkalinity, 0.0729 * alkalinity, 5, 7.7, 0
    )
    for alkalinity, phs in (
        (10, (5.8, 6.2, 6.6)),
        (20, (5.8, 6.2, 6.6, 7.0)),
        (40, (5.8, 6.2, 6.6, 7.0)),
        (80, (5.8, 6.2, 6.6)),
    )
    for ph in phs
}
NEW = {
    "granite spring": Sheet(6, 5.9, 12, 3.5, 0.9, 3, 3, 4),
    "sandy plain": Sheet(14, 6.4, 30, 9, 2.5, 14, 22, 9),
    "schist, deep": Sheet(9, 7.6, 85, 27, 5, 8, 6, 12),
    "road salt": Sheet(11, 6.6, 45, 30, 8, 90, 170, 15),
    "limestone": Sheet(13, 7.0, 310, 112, 14, 6, 12, 25),
    "naturally soft": Sheet(16, 8.2, 140, 8, 2, 60, 10, 12),
    "Quarry Road": Sheet(10, 6.3, 40, 13, 3, 7, 9, 8),
}
EVERY = ORDINARY | GRID | NEW
