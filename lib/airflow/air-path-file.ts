import { stops, type Problem, type Reading } from '@/lib/problems';
import { formatValue } from '@/lib/units';
import type { AirPath, DuctFacts, FanFacts, OutletFacts, RunFacts, SectionFacts } from './air-path';
import { runningCurrentOf } from './electrical-fit';
import { PathFields } from './path-fields';
import { readDuct, readLeaks, readOutlets } from './read-duct';
import { readFan } from './read-fan';
import { readAir, readBelieved, readCandidates, readMeasured, readOutput, readPrint, readTrusted } from './read-print';

/** The name that stands in every air-path file, and the newest version that is understood. */
export const AIR_PATH_SCHEMA = 'leeward/air-path';
export const AIR_PATH_VERSION = 1;

/** Largest file that is looked at, in characters. A described path takes a few thousand. */
const LONGEST_FILE = 1_000_000;

/** Polymers that a print may name; lib/cooling holds their figures and a test keeps the two lists equal. */
export const POLYMER_NAMES = ['PLA', 'PETG', 'ABS', 'ASA', 'TPU', 'PA', 'PC', 'PP'] as const;

/**
 * Reads an air-path file: JSON text with `schema`, `version` and the parts `air`, `fan`, `duct`, `outlets`, `leaks`, `print`,
 * `candidates`, `measured`, `output`. Every quantity is text with its unit (`"2.5 mm"`, `"0,13 A"`, `"3 ± 0.2 CFM"`) or
 * `{ "value", "unit" }`. Every part may be missing: a usual value with wide limits stands in, and a note says what to measure.
 *
 * Gives back the path and all problems together. A problem of level `stop` leaves the value undefined.
 * Worked: `{}` with schema and version reads, with notes only.
 */
export function readAirPath(text: string): Reading<AirPath> {
  const problems: Problem[] = [];
  const raw = parse(text, problems);
  if (raw === undefined) return { value: undefined, problems };
  const fields = PathFields.open(raw, '', problems);
  if (!isOurs(fields, problems)) return { value: undefined, problems };
  const path = readParts(fields);
  fields.close();
  problems.push(...sizeProblems(path.duct, path.outlets), ...ductOfSecondProblems(path.fan, path.outlets), ...flowProblems(path), ...currentProblems(path));
  return { value: stops(problems) ? undefined : path, problems };
}

function parse(text: string, problems: Problem[]): unknown {
  const stop = (code: string, what: string, next: string): void => {
    problems.push({ code, level: 'stop', where: 'the file', what, next, allowed: `JSON text with "schema": "${AIR_PATH_SCHEMA}"` });
  };
  if (text.length > LONGEST_FILE) {
    stop('too-long', `It has ${text.length} characters; an air path takes a few thousand.`, 'Choose the air-path file itself.');
  } else if (text.trim() === '') {
    stop('empty', 'It is empty.', 'Write the fan and the duct into it, as in the example file.');
  } else {
    try {
      return JSON.parse(text.replace(/^\uFEFF/u, ''));
    } catch (cause) {
      stop('not-json', `It cannot be read as JSON: ${cause instanceof Error ? cause.message : 'unknown fault'}.`, 'Check brackets, commas and quotation marks at that place.');
    }
  }
  return undefined;
}

function isOurs(fields: PathFields, problems: readonly Problem[]): boolean {
  const schema = fields.take('schema');
  if (schema !== AIR_PATH_SCHEMA) {
    fields.tell('foreign-file', 'schema', schema === undefined ? 'The file does not say what it is.' : 'This is a file of another kind.', 'Choose an air-path file, or add the schema line.', `"${AIR_PATH_SCHEMA}"`);
    return false;
  }
  const version = fields.take('version');
  if (version === AIR_PATH_VERSION) return !stops(problems);
  const newer = typeof version === 'number' && version > AIR_PATH_VERSION;
  fields.tell(newer ? 'newer-version' : 'unknown-version', 'version', newer ? `The file is of version ${version}; this program knows ${AIR_PATH_VERSION}.` : 'The version is missing or not known.', newer ? 'Open it with a newer Leeward. The file is left as it is.' : `Write "version": ${AIR_PATH_VERSION}.`, String(AIR_PATH_VERSION));
  return false;
}

function readParts(fields: PathFields): AirPath {
  const title = fields.text('title') ?? 'Air path';
  const currency = fields.text('currency') ?? '€';
  const air = readAir(fields.object('air'));
  if (!fields.has('fan')) fields.assume('fan', 'Read voltage, current and size from the label of the fan.');
  const claimed = readFan(fields.object('fan'), 'part fan');
  const trusted = fields.has('trusted') ? readTrusted(fields.object('trusted')) : undefined;
  const fan = readBelieved(fields, claimed, trusted);
  const duct = readDuct(fields.object('duct'), fan.outlet);
  const outlets = readOutlets(fields);
  return {
    title, currency, air, fan, trusted, duct, outlets,
    leaks: readLeaks(fields, outlets),
    print: readPrint(fields.object('print'), POLYMER_NAMES),
    candidates: readCandidates(fields, fan.outlet),
    measured: readMeasured(fields, outlets, fan),
    output: readOutput(fields.object('output')),
  };
}

function sizeProblems(duct: DuctFacts, outlets: readonly OutletFacts[]): Problem[] {
  const endArea = (run: RunFacts): number => area(run.changes[run.changes.length - 1]?.to ?? run.section);
  const trunk = endArea(duct);
  const problems = outlets.flatMap((outlet, k): Problem[] => {
    const before = outlet.branch === undefined ? trunk : endArea(outlet.branch);
    if (area(outlet.mouth) <= before * 1.001) return [];
    return [{
      code: 'outlet-larger-than-duct', level: 'note', where: `outlets[${k + 1}]`,
      what: `The mouth (${formatValue(area(outlet.mouth), 'mm²')}) is larger than the duct before it (${formatValue(before, 'mm²')}): the air does not fill it.`,
      next: 'Check both inner sizes. It is reckoned as a sudden widening.',
    }];
  });
  const names = outlets.map((outlet) => outlet.name);
  const twice = names.find((name, k) => names.indexOf(name) !== k);
  if (twice !== undefined) problems.push({ code: 'name-twice', level: 'stop', where: 'outlets', what: `Two outlets are called “${twice}”.`, next: 'Give each outlet a name of its own.' });
  return problems;
}

/** Two fans with ducts of their own need an outlet each. */
function ductOfSecondProblems({ arrangement }: FanFacts, outlets: readonly OutletFacts[]): Problem[] {
  if (arrangement !== 'own-ducts') return [];
  const told = (what: string, next: string): Problem[] => [{ code: 'fan-feeds-nothing', level: 'note', where: 'outlets', what, next }];
  if (outlets.length < 2) return told('Two fans with ducts of their own are described, but only one outlet: the second fan feeds nothing, and the page leaves it out.', 'Describe the outlet of the second fan, or say that the fans stand side by side.');
  if (new Set(outlets.map((outlet) => outlet.fan)).size > 1) return [];
  const why = outlets[0]?.fan === 2 ? 'Every outlet is said to be fed by the second fan, which leaves the first with none' : 'It is not said which outlet the second fan feeds';
  return told(`${why}: the page gives the first outlet to the first fan, the next to the second, and so on.`, 'Say at each outlet which fan feeds it.');
}

function flowProblems(path: AirPath): Problem[] {
  const free = path.measured.find((reading) => reading.what === 'free-flow');
  const limit = free ?? path.fan.freeFlow;
  return path.measured.flatMap((reading, k): Problem[] => {
    if (reading.what !== 'flow-in-duct' || path.fan.count > 1) return [];
    if (reading.value - reading.plusMinus <= limit.value + limit.plusMinus) return [];
    return [{
      code: 'beyond-free-flow', level: 'stop', where: `measured[${k + 1}]`,
      what: `The flow in the duct (${formatValue(reading.value, 'L/min')}) is more than this fan moves with nothing attached (${formatValue(limit.value, 'L/min')}).`,
      allowed: 'at most the free flow', next: 'Measure both again, with the same instrument and nozzle.',
    }];
  });
}

function currentProblems(path: AirPath): Problem[] {
  const limit = path.output.currentLimit;
  if (limit === undefined) return [];
  const fans = [{ where: 'fan.current', fan: path.fan }, ...path.candidates.flatMap((candidate, k) => (candidate.fan === undefined ? [] : [{ where: `candidates[${k + 1}].fan.current`, fan: candidate.fan }]))];
  return fans.flatMap(({ where, fan }): Problem[] => {
    const current = runningCurrentOf(fan) ?? 0;
    if (current <= limit.value) return [];
    return [{
      code: 'current-above-output', level: 'note', where,
      what: `${fan.second === undefined ? fan.name : 'The two fans together'} ${fan.second === undefined ? 'draws' : 'draw'} ${formatValue(current, 'A')}; the output gives ${formatValue(limit.value, 'A')}. It can destroy the output.`,
      allowed: `up to ${formatValue(limit.value, 'A')}`, next: 'Do not connect it there. Take a smaller fan, or drive it from the supply over a switch made for it.',
    }];
  });
}

function area(section: SectionFacts): number {
  return (section.shape === 'circle' ? Math.PI / 4 : 1) * section.width.value * section.height.value;
}
