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
