/**
 * Biot number that a stack of 40 layers needs for its top layer to be down to a scaled temperature when the next one comes.
 * Natural logarithms. Rows: ln(Fourier) from 0 in steps of 0.6. Columns: logit of the scaled temperature from -3 in steps of 0.6.
 * Made by halving on `topLayerFast`; a test makes several again with `topLayerPrecise`.
 */
const ROWS: readonly (readonly number[])[] = [
  [3.9120, 3.9120, 1.8623, 0.9116, 0.2347, -0.3685, -0.9533, -1.5379, -2.1267, -2.7195, -3.3153],
  [3.6830, 1.5555, 0.7376, 0.1190, -0.4427, -0.9952, -1.5558, -2.1283, -2.7109, -3.3006, -3.8946],
  [1.2690, 0.5575, -0.0081, -0.5293, -1.0470, -1.5792, -2.1305, -2.6988, -3.2795, -3.8682, -4.4618],
  [0.3732, -0.1463, -0.6304, -1.1140, -1.6153, -2.1413, -2.6908, -3.2590, -3.8398, -4.4288, -5.0225],
  [-0.2939, -0.7457, -1.1980, -1.6685, -2.1668, -2.6940, -3.2459, -3.8160, -4.3981, -4.9878, -5.5820],
  [-0.8729, -1.2978, -1.7397, -2.2098, -2.7124, -3.2452, -3.8017, -4.3748, -4.9587, -5.5493, -6.1440],
  [-1.4111, -1.8277, -2.2709, -2.7477, -3.2589, -3.7994, -4.3616, -4.9382, -5.5240, -6.1157, -6.7110],
  [-1.9300, -2.3487, -2.8001, -3.2879, -3.8097, -4.3589, -4.9270, -5.5071, -6.0949, -6.6877, -7.2835],
  [-2.4413, -2.8688, -3.3326, -3.8335, -4.3669, -4.9246, -5.4983, -6.0817, -6.6713, -7.2651, -7.8615],
  [-2.9520, -3.3925, -3.8712, -4.3861, -4.9307, -5.4964, -6.0751, -6.6614, -7.2527, -7.8473, -8.4441],
  [-3.4665, -3.9228, -4.4175, -4.9463, -5.5012, -6.0738, -6.6568, -7.2455, -7.8381, -8.4335, -9.0308],
  [-3.9841, -4.4586, -4.9702, -5.5124, -6.0768, -6.6555, -7.2420, -7.8329, -8.4266, -9.0226, -9.2103],
  [-4.5161, -5.0070, -5.5332, -6.0865, -6.6584, -7.2418, -7.8311, -8.4236, -9.0182, -9.2103, -9.2103],
];

const STEP = 0.6;
const FIRST_LOGIT = -3;
const COLUMNS = ROWS[0]?.length ?? 0;

/** All values in one array, so that samples read it quickly. */
const TABLE = Float64Array.from(ROWS.flat());

/**
 * Biot number that is needed, straight lines between the table's values (in the logarithms).
 * `theta`: scaled target temperature, clamped to 0.048 to 0.952; `fourier`: alpha·layerTime/d², clamped to 1 to 1340.
 * Within 3 % of the layer history for Fourier 4 and more, within 12 % from 2.5; below that a layer cannot cool through in its time.
 * Worked: theta 0.18919, Fourier 23.6 (PLA 0.2 mm, 16.2 s) gives 0.1154, which is 75 W/(m²·K).
 */
export function neededBiot(theta: number, fourier: number): number {
  return Math.exp(logOfNeededBiot(Math.log(theta / (1 - theta)), Math.log(fourier)));
}

/** The same in the logarithms that the table is kept in: logit of the scaled temperature and ln of Fourier in, ln of Biot out. */
export function logOfNeededBiot(logit: number, logFourier: number): number {
  const x = within((logit - FIRST_LOGIT) / STEP, COLUMNS - 1);
  const y = within(logFourier / STEP, ROWS.length - 1);
  const column = x | 0;
  const row = y | 0;
  const u = x - column;
  const v = y - row;
  const start = row * COLUMNS + column;
  const near = (TABLE[start] ?? 0) * (1 - u) + (TABLE[start + 1] ?? 0) * u;
  const far = (TABLE[start + COLUMNS] ?? 0) * (1 - u) + (TABLE[start + COLUMNS + 1] ?? 0) * u;
  return near * (1 - v) + far * v;
}

function within(place: number, last: number): number {
  return Math.min(last - 1e-9, Math.max(0, place));
}
