import { isPreferred, type FoundFigure } from '@/lib/airflow';
import type { Problem } from '@/lib/problems';
import { formatValue, readQuantity, toUnit, type QuantityKind, type UnitSymbol } from '@/lib/units';
import { textAt, withAt, type Place, type Sheet } from '../sheet';

/** What a person changed in what was read, by where the words start in the text. */
export type Edits = Readonly<Record<number, { readonly on?: boolean; readonly text?: string }>>;

/** One figure of the text as it stands to be confirmed. */
export interface FigureRow {
  readonly field: FoundFigure['field'];
  readonly start: number;
  readonly name: string;
  readonly words: string;
  /** The same in the unit that the page reckons in; undefined when it says nothing new. */
  readonly means: string | undefined;
  /** Undefined for size and kind, which carry no unit. */
  readonly unit: UnitSymbol | undefined;
  /** What would be written into the sheet. */
  readonly text: string;
  readonly on: boolean;
  /** The entry of the fan that it goes to. */
  readonly entry: string;
  readonly problem: Problem | undefined;
}

const KIND_OF: Readonly<Partial<Record<FoundFigure['field'], { readonly kind: QuantityKind; readonly shown: UnitSymbol }>>> = {
  freeFlow: { kind: 'volume-flow', shown: 'L/s' }, maxPressure: { kind: 'pressure', shown: 'Pa' }, voltage: { kind: 'voltage', shown: 'V' }, current: { kind: 'current', shown: 'A' },
  largestCurrent: { kind: 'current', shown: 'A' }, startCurrent: { kind: 'current', shown: 'A' }, speed: { kind: 'rotation-speed', shown: 'rpm' },
};

const NAMES: Readonly<Record<FoundFigure['field'], string>> = {
  freeFlow: 'Free flow', maxPressure: 'Largest pressure', voltage: 'Voltage', current: 'Current', largestCurrent: 'Largest current', startCurrent: 'Current while starting',
  speed: 'Speed', power: 'Power', frame: 'Size', kind: 'Kind', noise: 'Noise', aside: 'Besides',
};

/** Figures that the air path has no use for. */
export const NOT_NEEDED: ReadonlySet<FoundFigure['field']> = new Set(['power', 'noise', 'aside']);

/**
 * The figures to confirm. Of each kind the one is ticked that a fan is described with; another that says otherwise waits for a tick of its
 * own. A largest current is the current on the label where no usual one is taken, else the one while starting, unless that is told too.
 */
export function figureRows(found: readonly FoundFigure[], edits: Edits): FigureRow[] {
  const all = found.filter((figure) => !NOT_NEEDED.has(figure.field));
  const isOn = (figure: FoundFigure): boolean => edits[figure.start]?.on ?? isPreferred(figure, all);
  const taken = new Set(all.filter(isOn).map((figure) => figure.field));
  const isCrowdedOut = taken.has('current') && taken.has('startCurrent');
  return all.map((figure): FigureRow => {
    const rule = KIND_OF[figure.field];
    const { unit, start } = figure;
    const text = edits[start]?.text ?? textOf(figure);
    const entry = figure.field === 'largestCurrent' ? (taken.has('current') ? 'startCurrent' : 'current') : figure.field;
    return {
      field: figure.field, start, name: NAMES[figure.field], words: figure.words, unit: rule === undefined ? undefined : unit, text, on: isOn(figure) && !(figure.field === 'largestCurrent' && isCrowdedOut), entry,
      means: meaning(figure, rule?.shown, entry),
      problem: rule === undefined ? undefined : readQuantity(text, rule.kind, { where: NAMES[figure.field].toLowerCase() }).problems.find((problem) => problem.level === 'stop'),
    };
  });
}

/** Rows that one entry of the fan cannot hold together with a row. */
export function rivalsOf(row: FigureRow, rows: readonly FigureRow[]): FigureRow[] {
  return rows.filter((other) => other.start !== row.start && other.on && (other.field === row.field || other.entry === row.entry));
}

/** As it would be typed: `6000 ± 600 rpm`. */
function textOf({ value, plusMinus, unit, name, words }: FoundFigure): string {
  if (value === undefined || unit === undefined) return name ?? words;
  const shown = (si: number, digits: number): number => Number(toUnit(si, unit).toPrecision(digits));
  return `${shown(value, 5)}${plusMinus === undefined ? '' : ` ± ${shown(plusMinus, 3)}`} ${unit}`;
}

/** The sheet with the ticked figures at a fan. They come from an advertisement, unless it was said by hand where its figures come from. */
export function withFigures(sheet: Sheet, at: Place, rows: readonly FigureRow[]): Sheet {
  const ticked = rows.filter((row) => row.on);
  const place: Place = [...at, 'claim'];
  const told = ticked.length === 0 || textAt(sheet, place) !== '' ? sheet : withAt(sheet, place, 'advertised');
  const filled = ticked.reduce<Sheet>((next, row) => withAt(next, [...at, row.entry], row.text.trim()), told);
  // What was said of the current before was said of another figure.
  const current = ticked.find((row) => row.entry === 'current');
  return current === undefined ? filled : withAt(filled, [...at, 'currentIsLargest'], current.field === 'largestCurrent' ? true : '');
}

function meaning({ field, name, value, unit }: FoundFigure, shown: UnitSymbol | undefined, entry: string): string | undefined {
  if (field === 'kind') return name === 'axial' ? 'axial' : 'radial (blower)';
  if (field === 'frame' && name !== undefined) return `${name.slice(0, -2)} × ${Number(name.slice(-2))} mm`;
  if (field === 'largestCurrent') return entry === 'current' ? 'current on the label, the largest it draws' : 'current while starting';
  return value === undefined || shown === undefined || unit === shown ? undefined : formatValue(value, shown, 3);
}
