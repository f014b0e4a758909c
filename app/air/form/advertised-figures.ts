import type { FoundFigure } from '@/lib/airflow';
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
  readonly problem: Problem | undefined;
}

const KIND_OF: Readonly<Partial<Record<FoundFigure['field'], { readonly kind: QuantityKind; readonly shown: UnitSymbol }>>> = {
  freeFlow: { kind: 'volume-flow', shown: 'L/s' }, maxPressure: { kind: 'pressure', shown: 'Pa' }, voltage: { kind: 'voltage', shown: 'V' }, current: { kind: 'current', shown: 'A' }, speed: { kind: 'rotation-speed', shown: 'rpm' },
};

const NAMES: Readonly<Record<FoundFigure['field'], string>> = {
  freeFlow: 'Free flow', maxPressure: 'Largest pressure', voltage: 'Voltage', current: 'Current', speed: 'Speed', power: 'Power', frame: 'Size', kind: 'Kind', noise: 'Noise',
};

/** Figures that the air path has no use for. */
export const NOT_NEEDED: ReadonlySet<FoundFigure['field']> = new Set(['power', 'noise']);

/** The figures to confirm. The first of each kind is ticked; a later one that says otherwise waits for a tick of its own. */
export function figureRows(found: readonly FoundFigure[], edits: Edits): FigureRow[] {
  return found.filter((figure) => !NOT_NEEDED.has(figure.field)).map((figure, index, all): FigureRow => {
    const first = all.findIndex((other) => other.field === figure.field) === index;
    const rule = KIND_OF[figure.field];
    const { value, unit, start } = figure;
    const own = value === undefined || unit === undefined ? (figure.name ?? figure.words) : `${Number(toUnit(value, unit).toPrecision(5))} ${unit}`;
    const text = edits[start]?.text ?? own;
    return {
      field: figure.field, start, name: NAMES[figure.field], words: figure.words, unit: rule === undefined ? undefined : unit, text, on: edits[start]?.on ?? first,
      means: meaning(figure, rule?.shown),
      problem: rule === undefined ? undefined : readQuantity(text, rule.kind, { where: NAMES[figure.field].toLowerCase() }).problems.find((problem) => problem.level === 'stop'),
    };
  });
}

/** The sheet with the ticked figures at a fan. They come from an advertisement, unless it was said by hand where its figures come from. */
export function withFigures(sheet: Sheet, at: Place, rows: readonly FigureRow[]): Sheet {
  const ticked = rows.filter((row) => row.on);
  const place: Place = [...at, 'claim'];
  const told = ticked.length === 0 || textAt(sheet, place) !== '' ? sheet : withAt(sheet, place, 'advertised');
  return ticked.reduce<Sheet>((next, row) => withAt(next, [...at, row.field], row.text.trim()), told);
}

function meaning({ field, name, value, unit }: FoundFigure, shown: UnitSymbol | undefined): string | undefined {
  if (field === 'kind') return name === 'axial' ? 'axial' : 'radial (blower)';
  if (field === 'frame' && name !== undefined) return `${name.slice(0, -2)} × ${Number(name.slice(-2))} mm`;
  return value === undefined || shown === undefined || unit === shown ? undefined : formatValue(value, shown, 3);
}
