import type { Problem, Reading } from '@/lib/problems';
import { readQuantity, type UnitSymbol } from '@/lib/units';
import type { CurvePoint } from './fan-curve';
import type { FanKind } from './fan-ratings';

/** One row of a pressure-flow table as typed. */
export interface TypedPoint {
  readonly flow: string;
  readonly pressure: string;
}

/** What the reader needs to know besides the rows. */
export interface PointsContext {
  readonly where: string;
  readonly kind: FanKind;
  /** True when the person has marked that the curve has a stall range, where a rise is real. */
  readonly stallMarked: boolean;
  /** Units of the columns when the cells carry none. */
  readonly flowUnit?: UnitSymbol;
  readonly pressureUnit?: UnitSymbol;
}

/**
 * Reads a pressure-flow table: cells with units, in any order of flow. SI points, flow ascending.
 * Told as problems: unreadable cells, fewer than three rows, a flow twice, units that change within a column, a pressure that
 * rises without a stall mark, a table that does not start at flow 0 or end at pressure 0.
 */
export function readFanPoints(rows: readonly TypedPoint[], context: PointsContext): Reading<readonly CurvePoint[]> {
  const problems: Problem[] = [];
  const read = rows.map((row, k) => readRow(row, k, context, problems));
  problems.push(...mixedUnits(read.map((row) => row.flowUnit), 'flow', context), ...mixedUnits(read.map((row) => row.pressureUnit), 'pressure', context));
  const points = read.flatMap((row) => (row.point === undefined ? [] : [row.point])).sort((a, b) => a.flow - b.flow);
  if (points.length === rows.length) problems.push(...curveProblems(points, context));
  return { value: problems.some((problem) => problem.level === 'stop') ? undefined : points, problems };
}

/** Signs of a table as text at most: some thousand rows. */
export const LONGEST_TABLE = 20_000;

/**
 * Reads the same table from comma- or semicolon-separated text, or text with tabs; cells may stand in quotes. The first line names the
 * columns with their units, as in `flow (CFM); pressure (mmH2O)`; decimal commas are understood when the separator is not a comma.
 * Told besides: text longer than `LONGEST_TABLE`, columns that are not named, a line with more cells than the first.
 */
export function readFanPointsText(text: string, context: PointsContext): Reading<readonly CurvePoint[]> {
  const stop = (problem: Omit<Problem, 'level'>): Reading<readonly CurvePoint[]> => ({ value: undefined, problems: [{ ...problem, level: 'stop' }] });
  if (text.length > LONGEST_TABLE) return stop({ code: 'too-long', where: context.where, what: `It has ${text.length} characters.`, allowed: `up to ${LONGEST_TABLE} characters`, next: 'Leave out columns and rows that are not needed; twenty rows draw a curve.' });
  const all = text.replace(/^\uFEFF/u, '').split(/\r\n?|\n/u).map((line, k) => ({ line, number: k + 1 })).filter(({ line }) => line.trim() !== '');
  // Spreadsheets write a first line of their own that only names the separator.
  const told = /^"?sep=(.)"?\s*$/iu.exec(all[0]?.line ?? '')?.[1];
  const [head, ...body] = told === undefined ? all : all.slice(1);
  const first = head?.line ?? '';
  const separator = told ?? (first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',');
  const names = cellsOf(first, separator);
  const flowColumn = names.findIndex((name) => /flow/iu.test(name));
  const pressureColumn = names.findIndex((name) => /press/iu.test(name));
  if (flowColumn < 0 || pressureColumn < 0) {
    return stop({ code: 'columns-unknown', where: `${context.where}, line ${head?.number ?? 1}`, what: 'The first line does not name a flow and a pressure column.', allowed: 'flow (CFM); pressure (Pa)', next: 'Add a first line that names both columns with their units.' });
  }
  const rows = body.map(({ line, number }) => ({ cells: cellsOf(line, separator), number }));
  const wide = rows.find(({ cells }) => cells.slice(names.length).some((cell) => cell !== ''));
  if (wide !== undefined) return stop({ code: 'more-cells', where: `${context.where}, line ${wide.number}`, what: `This line has ${wide.cells.length} cells, the first line has ${names.length}.`, allowed: 'as many cells in every line', next: separator === ',' ? 'If the commas are decimal commas, separate the columns with semicolons or tabs.' : 'Check the line for a separator too many.' });
  const cell = (cells: readonly string[], column: number): string => {
    const typed = cells[column] ?? '';
    return /[a-z]/iu.test(typed.replace(/e[-+]?\d/giu, '')) || typed === '' ? typed : `${typed} ${unitIn(names[column] ?? '')}`;
  };
  return readFanPoints(rows.map(({ cells }) => ({ flow: cell(cells, flowColumn), pressure: cell(cells, pressureColumn) })), context);
}

function unitIn(name: string): string {
  return /\(([^)]+)\)|\[([^\]]+)\]/u.exec(name)?.slice(1).join('') ?? '';
}

/** Cells of a line; in quotes the separator is a sign like others, and two quotes are one. Worked: `"2,1",9` gives 2,1 and 9. */
function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (let k = 0; k < line.length; k += 1) {
    const sign = line[k] ?? '';
    if (sign === '"' && isQuoted && line[k + 1] === '"') { cell += '"'; k += 1; }
    else if (sign === '"' && (isQuoted || cell.trim() === '')) isQuoted = !isQuoted;
    else if (sign === separator && !isQuoted) { cells.push(cell.trim()); cell = ''; }
    else cell += sign;
  }
  return [...cells, cell.trim()];
}

interface ReadRow {
  readonly point: CurvePoint | undefined;
  readonly flowUnit: UnitSymbol | undefined;
  readonly pressureUnit: UnitSymbol | undefined;
}

function readRow(row: TypedPoint, k: number, context: PointsContext, problems: Problem[]): ReadRow {
  const place = `${context.where}[${k + 1}]`;
  const flow = readQuantity(row.flow, 'volume-flow', { where: `${place}.flow`, min: 0, max: 0.5, ...(context.flowUnit === undefined ? {} : { unit: context.flowUnit }) });
  const pressure = readQuantity(row.pressure, 'pressure', { where: `${place}.pressure`, min: 0, max: 20_000, ...(context.pressureUnit === undefined ? {} : { unit: context.pressureUnit }) });
  problems.push(...flow.problems, ...pressure.problems);
  const point = flow.value === undefined || pressure.value === undefined ? undefined : { flow: flow.value.value, pressure: pressure.value.value };
  return { point, flowUnit: flow.value?.unit, pressureUnit: pressure.value?.unit };
}

function mixedUnits(units: readonly (UnitSymbol | undefined)[], column: string, context: PointsContext): Problem[] {
  const found = [...new Set(units.filter((unit) => unit !== undefined))];
  if (found.length < 2) return [];
  return [{ code: 'mixed-units', level: 'stop', where: context.where, what: `The ${column} column mixes ${found.join(' and ')}.`, allowed: 'one unit per column', next: 'Check whether a row was copied from another table, then write all rows in one unit.' }];
}

function curveProblems(points: readonly CurvePoint[], context: PointsContext): Problem[] {
  const stop = (code: string, what: string, next: string, allowed?: string): Problem =>
    ({ code, level: 'stop', where: context.where, what, next, ...(allowed === undefined ? {} : { allowed }) });
  const problems: Problem[] = [];
  if (points.length < 3) problems.push(stop('too-few-points', `Only ${points.length} points stand here.`, 'Add points, or give maxPressure and freeFlow instead.', 'three or more points'));
  const twice = points.findIndex((point, k) => k > 0 && point.flow === points[k - 1]?.flow);
  if (twice > 0) problems.push(stop('duplicate-flow', 'Two points have the same flow.', 'Keep one of the two.', 'every flow once'));
  if ((points[0]?.flow ?? 0) !== 0) problems.push(stop('no-sealed-point', 'No point stands at flow 0.', 'Add the pressure with the outlet sealed.', 'the first point at flow 0'));
  if ((points[points.length - 1]?.pressure ?? 0) !== 0) problems.push(stop('no-free-flow-point', 'No point stands at pressure 0.', 'Add the flow with nothing attached.', 'the last point at pressure 0'));
  const rise = points.findIndex((point, k) => k > 0 && point.pressure > (points[k - 1]?.pressure ?? Number.POSITIVE_INFINITY));
  if (rise > 0 && !context.stallMarked) {
    const axial = context.kind === 'axial';
    problems.push(stop('rising-curve', `The pressure rises with the flow at point ${rise + 1}.`,
      axial ? 'Check the row. If the fan stalls there, mark it with "stall": true.' : 'Check the row for a typing slip; a radial fan does not rise like this.',
      'pressure falling as the flow grows'));
  }
  return problems;
}
