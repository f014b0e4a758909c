import type { CaseFile } from '@/lib/cases';
import { rowsAt, textAt, type Sheet } from './sheet';

/** Checks whose results are readings of the air path. */
const READING_OF: Readonly<Record<string, string>> = { 'part-fan-free-flow': 'free-flow', 'part-fan-flow-in-duct': 'flow-in-duct', 'part-fan-speed': 'fan-speed' };

/** The sheet with the readings that the case already holds; a reading typed on the sheet itself goes before. */
export function caseReadings(sheet: Sheet, file: CaseFile | undefined): Sheet {
  if (!file) return sheet;
  const rows = rowsAt(sheet, ['measured']);
  const typed = new Set(rows.map((_, index) => textAt(rows, [index, 'what'])));
  const found = file.findings.flatMap((finding) => {
    const what = READING_OF[finding.check];
    const { result } = finding;
    if (what === undefined || typed.has(what) || result === undefined || result.quantity === 'ratio') return [];
    return [{ what, value: `${result.value} ${result.unit} ± ${result.plusMinus} ${result.unit}` }];
  });
  return found.length === 0 ? sheet : { ...sheet, measured: [...rows, ...found] };
}
