import { readFileSync, statSync } from 'node:fs';
import { needSentences, neededSpeedWords, nothingEntered, readAirPath, restsOnConflicts, tooWarmSentence, type AirOption, type AirPath, type AirPathResult, type Band } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { problemAsText, type Problem } from '@/lib/problems';
import { checkValueTable } from './check-value-table';
import { formatMinutes, formatPercent, formatRange, formatValue, type UnitSymbol } from '@/lib/units';
import { tableOfText } from './table-of-text';
import { asksForHelp, endWithHelp } from './words-of-command';

/** `npm run -s airpath -- FILE [--json]`: an air-path file in, operating points, outlet speeds and options out. `--check-values`: the table of check values. */
const USAGE = 'npm run -s airpath -- FILE [--json], or npm run -s airpath -- --check-values';
const LARGEST_FILE = 1_000_000;

function main(args: readonly string[]): number {
  if (asksForHelp(args)) endWithHelp({ usage: USAGE, gives: 'Reckons an air-path file: operating points, outlet speeds, and what each change would bring. --check-values: the table of check values.' });
  if (args.length === 1 && args[0] === '--check-values') return printCheckValues();
  const unknown = args.find((arg) => arg.startsWith('--') && arg !== '--json');
  const files = args.filter((arg) => !arg.startsWith('--'));
  const [file] = files;
  if (unknown !== undefined || file === undefined || files.length > 1) {
    return refuse([{ code: 'usage', level: 'stop', where: 'the command line', what: unknown === undefined ? `${files.length} files are named; one is needed.` : `“${unknown}” is not known.`, allowed: USAGE, next: 'Name one air-path file.' }]);
  }
  const text = readFile(file);
  if (typeof text !== 'string') return refuse([text]);
  const reading = readAirPath(text);
  if (reading.value === undefined) return refuse(reading.problems);
  const result = compareAirOptions(reading.value, reading.problems);
  process.stdout.write(args.includes('--json') ? `${JSON.stringify(asJson(result), endlessTold, 2)}\n` : `${asText(result)}${beforeAsText(reading.value, result)}`);
  return 0;
}

function printCheckValues(): number {
  const table = checkValueTable();
  if (table === undefined) return refuse([{ code: 'no-tests', level: 'stop', where: 'the command line', what: 'The tests are not here, so nothing can be checked.', next: 'Run it in a full checkout.' }]);
  process.stdout.write(table);
  return table.includes('FAIL') ? 1 : 0;
}

function readFile(file: string): string | Problem {
  const fault = (what: string, next: string): Problem => ({ code: 'unreadable-file', level: 'stop', where: file, what, allowed: 'an air-path file of up to 1 MB', next });
  try {
    const { size } = statSync(file);
    if (size > LARGEST_FILE) return fault(`It holds ${Math.round(size / 1e6)} MB; an air path takes a few kB.`, 'Choose the air-path file itself.');
    return readFileSync(file, 'utf8');
  } catch {
    return fault('It cannot be opened.', 'Check the name and the folder.');
  }
}

function refuse(problems: readonly Problem[]): number {
  process.stderr.write(`${problems.map(problemAsText).join('\n')}\n`);
  return 2;
}

/** The result without the drawing's geometry and curves, which only the screens need. */
function asJson(result: AirPathResult): object {
  const { title, currency, samples, today, outlets, beforeReadings, bottleneck, bottleneckOfFan, sensitivity, bestOutletArea, outletArea, remarks, lossShares, jetThrust, sides, worstDirection, need, best, unknowns, conflicts, problems } = result;
  return {
    schema: 'leeward/air-path-result', version: 1, units: 'SI', title, currency, samples, today, outlets, beforeReadings, bottleneck, bottleneckOfFan, sensitivity, bestOutletArea, outletArea,
    lossShares, jetThrust, sides, worstDirection, need, best,
    options: result.options.map((option) => ({ ...withoutCurves(option), fans: option.fans.map(withoutCurves) })),
    unknowns, remarks, conflicts, problems,
  };
}

/** JSON has no number for what is endless, and `null` would say that it is not known. */
function endlessTold(_: string, value: unknown): unknown {
  return value === Number.POSITIVE_INFINITY ? 'endless' : value;
}

function withoutCurves(each: object): object {
  return Object.fromEntries(Object.entries(each).filter(([key]) => key !== 'fanCurve' && key !== 'ductCurve'));
}

function asText(result: AirPathResult): string {
  const { today, need } = result;
  return [
    result.title,
    '',
    `Today: ${range(today.flow, 'L/s')} at ${range(today.pressure, 'Pa')}, ${formatPercent(today.shareOfFreeFlow.value)} of the free flow. ${HELD_BY[result.bottleneck]}${result.bottleneckOfFan === undefined ? '' : ` So it is at fan ${result.bottleneckOfFan}, which feeds the slowest outlet.`}`,
    ...(result.options.find((option) => option.kind === 'leave')?.fans ?? []).map((fan) => `  ${fan.name}: ${range(fan.flow, 'L/s')} at ${range(fan.pressure, 'Pa')}${fan.overpowered >= 0.005 ? `; overpowered by the other in ${formatPercent(fan.overpowered)}` : ''}`),
    ...result.outlets.map((outlet) => `  ${outlet.name}: ${range(outlet.speed, 'm/s')}, ${formatPercent(outlet.share.value)} of the air`),
    [needSentences(need), tooWarmSentence(need)].filter((sentence) => sentence !== undefined).join(' '),
    '',
    'Where the pressure goes:',
    ...result.lossShares.slice(0, 6).map((loss) => `  ${formatPercent(loss.share).padStart(5)}  ${loss.label}`),
    '',
    'What one per cent more would do to the air speed at the slowest outlet:',
    ...result.sensitivity.map(({ change, speedPerPercent }) => `  ${signed(speedPerPercent).padStart(6)} %  ${change}`),
    '',
    'What to change, best first (air speed at the weaker outlet; nine of ten samples lie in the range):',
    ...[nothingEntered(result.geometry) ? 'Nothing of fan or mouths was entered: this rests on usual values alone. Enter the fan’s free flow and the size of each mouth first.' : restsOnConflicts(result)].filter((sentence) => sentence !== undefined),
    ...result.options.flatMap((option) => optionLines(option, result)),
    '',
    ...unknownLines(result),
    ...result.remarks.map(({ sentence }) => sentence),
    ...result.conflicts.map((conflict) => conflict.sentence),
    ...(result.problems.length === 0 ? [] : ['', ...result.problems.map(problemAsText)]),
    '',
  ].join('\n');
}

function signed(percent: number): string {
  const shown = Math.abs(percent).toFixed(2);
  return shown === '0.00' ? '0' : `${percent < 0 ? '−' : '+'}${shown}`;
}

/** What was thought before anything was measured or looked at, beside what is thought now; empty when nothing was. */
function beforeAsText(path: AirPath, now: AirPathResult): string {
  if (path.measured.length === 0 && path.print.sides.length === 0) return '';
  const before = compareAirOptions({ ...path, measured: [], print: { ...path.print, sides: [] } });
  const rows = now.options.map((option) => {
    const then = before.options.find(({ id }) => id === option.id);
    return [option.title, then === undefined ? '' : range(then.weakestSpeed, 'm/s'), range(option.weakestSpeed, 'm/s'), then === undefined ? '' : formatPercent(then.chance), formatPercent(option.chance)];
  });
  const titleOf = (result: AirPathResult): string => result.options.find(({ id }) => id === result.best)?.title ?? result.best;
  return [
    '',
    `Before and after ${path.measured.length} readings and a look at ${path.print.sides.length} sides of the part (air speed at the weaker outlet; chance that it does):`,
    tableOfText([['', 'before', 'after', 'before', 'after'], ...rows]),
    `Best before: ${titleOf(before)}. Best after: ${titleOf(now)}.`,
    '',
  ].join('\n');
}

const HELD_BY = {
  fan: 'The fan holds the air back, not the duct.',
  both: 'Fan and duct hold the air back about equally.',
  duct: 'The duct holds the air back more than the fan.',
} as const;

function optionLines(option: AirOption, result: AirPathResult): string[] {
  const mark = option.id === result.best ? '>' : ' ';
  const costs = [`${option.price} ${result.currency}`, formatMinutes(option.handsTime / 60), ...(option.printingTime > 0 ? [`${formatMinutes(option.printingTime / 60)} printing`] : []), ...(option.timePerPrint > 0 ? [`${formatMinutes(option.timePerPrint / 60)} more per print`] : [])];
  return [
    `${mark} ${option.title}`,
    `    ${range(option.weakestSpeed, 'm/s')}, ${needWords(option)}; reaches it in ${formatPercent(option.chance)}; ${option.handsTime === 0 && option.price === 0 ? 'costs nothing' : costs.join(', ')}`,
    ...option.sideEffects.map((effect) => `    ${effect.sentence}`),
    ...[option.credibility, option.credibilityOfSecond].flatMap((claim) => (claim === undefined || claim.verdict === 'credible' ? [] : [`    ${claim.sentence}`])),
    ...option.electricalFit.filter((point) => point.state === 'stop').map((point) => `    Do not connect it: ${point.sentence}`),
  ];
}

function needWords({ neededSpeed }: AirOption): string {
  const words = neededSpeedWords(neededSpeed, 'm/s');
  return /^\d/u.test(words) ? `needs ${words}` : words;
}

function unknownLines(result: AirPathResult): string[] {
  const [first] = result.unknowns;
  if (first === undefined || first.saving < 0.01) return ['Nothing that could be measured would change the choice.'];
  return [`Most telling unknown: ${first.title} (check ${first.check}, ${formatMinutes(first.minutes)}). The choice would change in ${formatPercent(first.chanceOfChange)} of cases; worth ${first.saving.toFixed(1)} ${result.currency}.`];
}

function range(band: Band, unit: UnitSymbol): string {
  if (!Number.isFinite(band.high)) return `${formatValue(band.low, unit)} or more`;
  return formatRange(band.low, band.high, unit);
}

process.exitCode = main(process.argv.slice(2));
