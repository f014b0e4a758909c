/**
 * Probabilities in words. A link between a cause and what it shows is said in one of seven words; how often a cause
 * occurs, and how often something is seen without a known cause, in one of four classes. Finer figures need a source
 * or a physical model. Never 0 or 1, so no observation can rule anything in or out by itself.
 * The values are our own choice; robustness to such rounding was measured on synthetic nets (see DEVELOPERS.md).
 */
export const LINK_WORDS = {
  always: 0.98,
  'nearly-always': 0.9,
  usually: 0.75,
  half: 0.5,
  sometimes: 0.25,
  seldom: 0.12,
  rarely: 0.03,
} as const;

/**
 * Shares of slight, clear and severe in one word. Two thirds for the grade that it mostly has, the rest by nearness. Estimate:
 * the middle of what people mean by "mostly"; never so small that one tap could rule a cause out.
 */
export const GRADE_SHARES = { slight: [0.66, 0.26, 0.08], clear: [0.2, 0.6, 0.2], severe: [0.08, 0.26, 0.66] } as const;

/** Shares when nothing is said of grades: all alike, so that the grade then tells nothing. */
export const EVEN_SHARES: readonly number[] = [1 / 3, 1 / 3, 1 / 3];

export const CLASS_WORDS = { rare: 0.005, uncommon: 0.015, common: 0.04, 'very-common': 0.1 } as const;

export type LinkWord = keyof typeof LINK_WORDS;
export type ClassWord = keyof typeof CLASS_WORDS;

/** The chance a link word stands for, or the number itself when one is given. `chanceOf('usually')` is 0.75. */
export function chanceOf(word: LinkWord | number): number {
  return typeof word === 'number' ? word : LINK_WORDS[word];
}

/** The chance a class word stands for. `chanceOfClass('uncommon')` is 0.015. */
export function chanceOfClass(word: ClassWord | number): number {
  return typeof word === 'number' ? word : CLASS_WORDS[word];
}
