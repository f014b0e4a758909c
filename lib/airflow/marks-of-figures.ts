/** What a sheet says of a figure besides its value: that it is the usual one, the largest, the least, or the one at the start. */
export type FigureMark = 'rated' | 'largest' | 'least' | 'start';

/** A figure of a text: where it stands, and whether it is a voltage or what else. */
export interface PlacedFigure {
  readonly quantity: string;
  readonly start: number;
  readonly end: number;
}

const WORDS: readonly (readonly [FigureMark, RegExp])[] = [
  ['start', /(?<![a-z])(?:start(?:ing|[ -]?up)?|inrush|surge)(?![a-z])/iu],
  ['largest', /(?<![a-z])(?:[iqpun]?_?max(?:imum|imal)?|peak|up to|locked|stalled)(?![a-z])|[≤<]=?/iu],
  ['least', /(?<![a-z])(?:min(?:imum|imal)?|at least|guaranteed)(?![a-z])|[≥>]=?/iu],
  ['rated', /(?<![a-z])(?:rated|nominal|nom|typ(?:ical)?|average|avg|running|operating|working|normal)(?![a-z])/iu],
];

/** What ends a statement between two figures. */
const ENDS = /[,;|/·•\n]|\s-\s/u;

/**
 * The mark of every figure of a text, by the words before or behind it. `figures` in the order of the text.
 * Between two figures without a comma a mark in brackets belongs to the first, a mark with a noun to the second; a bare one goes the way
 * that the rest of the line goes. Worked: in `rated 0.10 A, max 0.16 A` the first is rated and the second the largest.
 */
export function marksOf(text: string, figures: readonly PlacedFigure[]): (FigureMark | undefined)[] {
  const gaps = [0, ...figures.map(({ end }) => end)].map((from, k) => text.slice(from, figures[k]?.start ?? text.length));
  const sides = gaps.map((gap, k) => sidesOf(gap, k === 0, k === figures.length));
  const isLeading = leadingStyle(sides);
  return figures.map(({ quantity }, k) => {
    const [ahead, behind] = [sides[k], sides[k + 1]];
    const after = behind?.first ?? (behind?.bare !== undefined && !isLeading(quantity, figures[k + 1]?.quantity) ? behind.bare : undefined);
    const before = ahead?.second ?? (ahead?.bare !== undefined && (k === 0 || isLeading(figures[k - 1]?.quantity, quantity)) ? ahead.bare : undefined);
    return before ?? after;
  });
}

/** Marks in the words between two figures: of the first, of the second, or of either. */
interface Sides {
  readonly first: FigureMark | undefined;
  readonly second: FigureMark | undefined;
  readonly bare: FigureMark | undefined;
}

function sidesOf(gap: string, isFirst: boolean, isLast: boolean): Sides {
  const none = { first: undefined, second: undefined, bare: undefined };
  if (isFirst) return { ...none, second: markIn(gap.split(ENDS).at(-1) ?? '') };
  const bracket = /^\s*[([]([^)\]]*)[)\]]/u.exec(gap);
  const inBrackets = bracket === null ? undefined : markIn(bracket[1] ?? '');
  const rest = bracket === null ? gap : gap.slice(bracket[0].length);
  const parts = rest.split(ENDS);
  if (isLast) return { ...none, first: inBrackets ?? markIn(parts[0] ?? '') };
  if (inBrackets !== undefined || parts.length > 1) return { ...none, first: inBrackets ?? markIn(parts[0] ?? ''), second: parts.length > 1 || inBrackets !== undefined ? markIn(parts.at(-1) ?? '') : undefined };
  // An open bracket, a colon or a noun behind the mark: it speaks of what comes.
  const mark = markIn(rest);
  const isBare = WORDS.some(([, words]) => new RegExp(`^\\s*(?:${words.source})\\.?\\s*$`, 'iu').test(rest));
  return isBare ? { ...none, bare: mark } : { ...none, second: mark };
}

function markIn(words: string): FigureMark | undefined {
  return WORDS.find(([, pattern]) => pattern.test(words))?.[0];
}

/** Whether a bare mark between two figures belongs to the second. Where the line does not show it: to the second of two of one kind, and never to a voltage before it. */
function leadingStyle(sides: readonly Sides[]): (first: string | undefined, second: string | undefined) => boolean {
  const before = sides.some(({ second }) => second !== undefined);
  const behind = sides.some(({ first }) => first !== undefined);
  if (before !== behind) return () => before;
  return (first, second) => first === second || first === 'voltage';
}
