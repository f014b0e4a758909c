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

/**
 * How often a cause is there in a machine whose failure nobody could explain at once: the same four words, nearer together.
 *
 * Sum: chances of causes add up over all pages, those of symptoms without a cause do not. With the figures of CLASS_WORDS
 * 131 causes would make two and a half at work in every failed print; these make one, as solved cases tell. A test on the
 * content holds the sum between 0.7 and 1.5.
 * Spread: usual suspects have been looked at before somebody asks. Figures in the ratio of CLASS_WORDS to the power 0.4:
 * the least flattening that the 112 solved cases do not tell apart from the best one in log score (one standard error;
 * both halves of the cases say the same, see DEVELOPERS.md). Own choice, from our own reckoning.
 */
export const PRIOR_WORDS = { rare: 0.005, uncommon: 0.0075, common: 0.011, 'very-common': 0.016 } as const satisfies Record<keyof typeof CLASS_WORDS, number>;

export type LinkWord = keyof typeof LINK_WORDS;
export type ClassWord = keyof typeof CLASS_WORDS;

/** The chance a link word stands for, or the number itself when one is given. `chanceOf('usually')` is 0.75. */
export function chanceOf(word: LinkWord | number): number {
  return typeof word === 'number' ? word : LINK_WORDS[word];
}

/** The prior of a cause of this class, or the number itself when one is given. `priorOfClass('uncommon')` is 0.0075. */
export function priorOfClass(word: ClassWord | number): number {
  return typeof word === 'number' ? word : PRIOR_WORDS[word];
}

/** The chance a class word stands for. `chanceOfClass('uncommon')` is 0.015. */
export function chanceOfClass(word: ClassWord | number): number {
  return typeof word === 'number' ? word : CLASS_WORDS[word];
}
