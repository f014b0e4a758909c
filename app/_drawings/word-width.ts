/**
 * How wide a word stands in the drawing face, px, at the given size: enough to place labels and to keep them in their
 * box before any browser has seen them. The advances (per 1 em, weight 600) were measured in a browser on the Latin
 * file of the face, 2026-11-25; figures are tabular. Unknown signs count as 0.6 em. "mm" at 14 px is 22.4 px.
 */
export function wordWidth(words: string, size = 14): number {
  let em = 0;
  for (const sign of words) em += advances.get(sign) ?? 0.6;
  return em * size;
}

const advances = new Map<string, number>(
  (
    [
      ["'ijl`", 0.23],
      ['!.,:;I‘’', 0.245],
      ['()[]{}|J', 0.265],
      [' \u202f\u00a0', 0.2],
      ['"rf', 0.355],
      ['/t°\\', 0.373],
      ['*', 0.4],
      ['s', 0.445],
      ['zLx-?', 0.468],
      ['aykv', 0.48],
      ['ceg', 0.498],
      ['Fd^bopqETYZµ', 0.52],
      ['uhn', 0.528],
      ['SPXRA', 0.56],
      ['BKV', 0.57],
      ['0123456789', 0.56],
      ['#$+<=>~±×÷', 0.575],
      ['COQGDUHN&', 0.622],
      ['–w', 0.7],
      ['M', 0.74],
      ['m', 0.8],
      ['W→≤≥', 0.835],
      ['%', 0.895],
      ['@—', 0.94],
    ] satisfies readonly (readonly [string, number])[]
  ).flatMap(([signs, em]) => Array.from(signs).map((sign): [string, number] => [sign, em])),
);
