import type { CaseFile, Finding } from '@/lib/cases';
import { POLYMER_NAMES } from '@/lib/airflow';
import { rowsAt, textAt, valueAt, withAt, type Sheet } from './sheet';

/** Checks whose results are readings of the air path, whatever stands on the sheet. */
const READING_OF: Readonly<Record<string, string>> = { 'part-fan-free-flow': 'free-flow', 'part-fan-flow-in-duct': 'flow-in-duct', 'part-fan-speed': 'fan-speed' };

/** The check of one outlet, whichever is weakest, and the symptom whose side the path takes. */
const WEAKEST = 'outlet-speed-weakest';
const CURLED = 'curled-edges';

/** Where a seen fault may face, as a direction of the sheet. */
const DIRECTION_OF: Readonly<Record<string, string>> = { right: '0°', 'back-right': '45°', back: '90°', 'back-left': '135°', left: '180°', 'front-left': '225°', front: '270°', 'front-right': '315°' };

/** The sheet with what the case already holds: readings, curled sides, plastic, supply. What is typed on the sheet itself goes before. */
export function caseReadings(sheet: Sheet, file: CaseFile | undefined): Sheet {
  if (!file) return sheet;
  const since = sinceDescribed(file);
  return withSupply(withPlastic(withSides(withReadings(sheet, since), since), file), file);
}

/** The case without what was found before the path was last described anew: it speaks of the parts that were there then. */
function sinceDescribed(file: CaseFile): CaseFile {
  const last = Math.max(0, ...file.rounds.filter((round) => round.airBefore !== undefined).map((round) => round.number));
  return last === 0 ? file : { ...file, findings: file.findings.filter((each) => each.round > last), observations: file.observations.filter((each) => each.round > last) };
}

/** The case without what its air path takes as readings, so that a diagnosis of the rest and the path count nothing twice. */
export function withoutPathReadings(file: CaseFile): CaseFile {
  return {
    ...file,
    findings: file.findings.filter(({ check }) => !(check in READING_OF) && check !== WEAKEST),
    observations: file.observations.filter(({ symptom, faces }) => symptom !== CURLED || faces === undefined),
  };
}

function withReadings(sheet: Sheet, file: CaseFile): Sheet {
  const rows = rowsAt(sheet, ['measured']);
  const typed = new Set(rows.flatMap((_, index) => (textAt(rows, [index, 'fan']) === 'second' ? [] : [`${textAt(rows, [index, 'what'])} ${textAt(rows, [index, 'at'])}`])));
  const found = file.findings.flatMap((finding) => readingOf(finding, sheet, file)).filter((row) => !typed.has(`${row.what} ${row.at ?? ''}`));
  return found.length === 0 ? sheet : { ...sheet, measured: [...rows, ...found] };
}

function readingOf(finding: Finding, sheet: Sheet, file: CaseFile): { what: string; at?: string; value: string }[] {
  const { result } = finding;
  if (result === undefined || result.quantity === 'ratio') return [];
  const value = `${result.value} ${result.unit} ± ${result.plusMinus} ${result.unit}`;
  const what = READING_OF[finding.check];
  if (what !== undefined) return [{ what, value }];
  const at = finding.check === WEAKEST ? weakestOutlet(sheet, file) : undefined;
  return at === undefined ? [] : [{ what: 'outlet-speed', at, value }];
}

/** The weakest outlet is named by the side that curled; where the case does not say it, the reading has no place on the path. */
function weakestOutlet(sheet: Sheet, file: CaseFile): string | undefined {
  const outlets = rowsAt(sheet, ['outlets']);
  if (outlets.length === 1) return textAt(outlets, [0, 'name']) || undefined;
  const curled = new Set(curledSides(file));
  const here = outlets.flatMap((_, index) => (curled.has(textAt(outlets, [index, 'direction'])) ? [textAt(outlets, [index, 'name'])] : []));
  return here.length === 1 ? here[0] : undefined;
}

function withSides(sheet: Sheet, file: CaseFile): Sheet {
  const told = rowsAt(sheet, ['print', 'sides']);
  const known = new Set(told.map((_, index) => textAt(told, [index, 'direction'])));
  const found = curledSides(file).filter((direction) => !known.has(direction)).map((direction) => ({ direction, held: false }));
  return found.length === 0 ? sheet : withAt(sheet, ['print', 'sides'], [...told, ...found]);
}

function curledSides(file: CaseFile): string[] {
  const first = Math.min(...file.observations.map((each) => each.round));
  const seen = file.observations.filter((each) => each.symptom === CURLED && each.state === 'seen' && each.round === first);
  return seen.flatMap((each) => (each.faces === undefined ? [] : DIRECTION_OF[each.faces] ?? []));
}

function withPlastic(sheet: Sheet, file: CaseFile): Sheet {
  const plastic = POLYMER_NAMES.find((name) => name === file.print.material);
  return plastic === undefined || valueAt(sheet, ['print', 'polymer']) !== undefined ? sheet : withAt(sheet, ['print', 'polymer'], plastic);
}

function withSupply(sheet: Sheet, file: CaseFile): Sheet {
  const { supply } = file.machine;
  return supply === undefined || valueAt(sheet, ['output', 'voltage']) !== undefined ? sheet : withAt(sheet, ['output', 'voltage'], supply);
}

/** What the case brought along, in words: everything that differs between the sheet and the sheet with the case's readings. */
export function broughtByCase(sheet: Sheet, withCase: Sheet): string[] {
  const added = (place: readonly string[]): unknown[] => rowsAt(withCase, place).slice(rowsAt(sheet, place).length);
  const readings = added(['measured']).map((row) => [WORDS_OF[textAt(row, ['what'])] ?? '', textAt(row, ['at']), textAt(row, ['value']).replace(/ (\S+) ± (\S+) \1$/, ' ± $2 $1')].filter(Boolean).join(' '));
  const sides = added(['print', 'sides']).map((row) => `curled ${Object.keys(DIRECTION_OF).find((side) => DIRECTION_OF[side] === textAt(row, ['direction'])) ?? ''}`);
  const plain = ([[['print', 'polymer'], 'plastic'], [['output', 'voltage'], 'output']] as const).flatMap(([place, word]) => (textAt(sheet, place) === textAt(withCase, place) ? [] : [`${word} ${textAt(withCase, place)}`]));
  return [...readings, ...sides, ...plain];
}

const WORDS_OF: Readonly<Record<string, string>> = { 'free-flow': 'free flow', 'flow-in-duct': 'flow in the duct', 'fan-speed': 'fan speed', 'outlet-speed': 'air speed at outlet' };
