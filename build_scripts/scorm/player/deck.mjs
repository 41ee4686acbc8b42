// The variant that a learner is dealt: calc/coursework/deck.py.

export const VARIANTS = 400;

function hashed(text) {
  let value = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) value = Math.imul(value ^ byte, 0x01000193);
  return value >>> 0;
}

function mixed(seed) {
  let value = (seed + 0x6d2b79f5) | 0;
  value = Math.imul(value ^ (value >>> 15), value | 1);
  value ^= value + Math.imul(value ^ (value >>> 7), value | 61);
  return (value ^ (value >>> 14)) >>> 0;
}

export const seat = (section, learner) => (mixed(hashed(`${section}|${learner}`)) % VARIANTS) + 1;
