/**
 * Seeded stream of numbers in [0, 1), 32 bits each, so that every draw can be repeated.
 *
 * `seed` is taken modulo 2³². Not for secrets. Generator: "mulberry32", public domain; the recurrence is pinned by
 * the seeded nets of `tests/independent/inference`, which another program made with the same stream.
 * `mulberry32(7)()` is 0.01170….
 */
export function mulberry32(seed: number): () => number {
  // In a typed array, since a captured variable of 32 bits may be a new object at every step.
  const state = Int32Array.of(seed);
  return () => {
    const next = ((state[0] ?? 0) + 0x6d2b79f5) | 0;
    state[0] = next;
    let mixed = Math.imul(next ^ (next >>> 15), next | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
