import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT_PER_MINUTE, readAirPath, readFanPointsText, type AirPath } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';

const FOLDER = 'tests/bad-input/air-path';
const expected = JSON.parse(readFileSync(`${FOLDER}/expected.json`, 'utf8')) as Record<string, { code: string; level: string; where: string }[]>;
const file = (parts: object): string => JSON.stringify({ schema: 'leeward/air-path', version: 1, ...parts });
const read = (parts: object): AirPath => {
  const { value, problems } = readAirPath(file(parts));
  if (value === undefined) throw new Error(problems.map((problem) => problem.code).join(', '));
  return value;
};

describe('broken air-path files', () => {
  it('each get their own message, with place and next step', () => {
    const files = readdirSync(FOLDER).filter((name) => name !== 'expected.json');
    expect(files.length).toBeGreaterThan(15);
    expect(Object.keys(expected).sort()).toEqual([...files].sort());
    const missing = files.flatMap((name) => {
      const { value, problems } = readAirPath(readFileSync(`${FOLDER}/${name}`, 'utf8'));
      const told = (expected[name] ?? []).filter(({ code, level, where }) => !problems.some((problem) => problem.code === code && problem.level === level && problem.where === where));
      const stopped = problems.some((problem) => problem.level === 'stop');
      return [
        ...told.map((one) => `${name}: no ${one.code} at ${one.where}; got ${problems.map((problem) => `${problem.code}@${problem.where}`).join(', ')}`),
        ...(stopped === (value === undefined) ? [] : [`${name}: a stop must leave no value, and nothing else may`]),
        ...problems.filter((problem) => problem.what === '' || problem.next === '').map((problem) => `${name}: ${problem.code} has no sentence`),
      ];
    });
    expect(missing).toEqual([]);
  });

  it('never make the reader throw, whatever stands in them', () => {
    fc.assert(fc.property(fc.json(), (anything) => {
      readAirPath(anything);
      const value: unknown = JSON.parse(anything);
      readAirPath(file({ fan: value, outlets: value, measured: value, print: { layerTime: value } }));
    }), { numRuns: 200 });
  });

  it('tell all problems at once', () => {
    const { problems } = readAirPath(file({ fan: { freeFlow: 'much', frame: 'big' }, print: { polymer: 'glass' } }));
    expect(problems.filter((problem) => problem.level === 'stop').map((problem) => problem.where)).toEqual(['fan.frame', 'fan.freeFlow', 'print.polymer']);
  });

  it('of 200 MB are refused by their length alone', () => {
    expect(readAirPath(' '.repeat(1_000_001)).problems.map((problem) => problem.code)).toEqual(['too-long']);
  });
});

describe('what an air-path file may say', () => {
  it('takes quantities as text, with a decimal comma, or as value and unit', () => {
    const fan = read({ fan: { freeFlow: '3 CFM', current: '0,13 A', maxPressure: { value: 9, unit: 'mmH2O' }, outlet: { width: '0.8 in', height: '1,2 cm' } } }).fan;
    expect(fan.freeFlow.value / CUBIC_FOOT_PER_MINUTE).toBeCloseTo(3, 9);
    expect(fan.current?.value).toBeCloseTo(0.13, 12);
    expect(fan.maxPressure.value).toBeCloseTo(88.26, 2);
    expect([fan.outlet.width.value, fan.outlet.height.value]).toEqual([0.02032, 0.012]);
  });

  it('takes the size of a fan as the label has it, with more words behind it', () => {
    const frames = ['5015', ' 5015 24V', '4010 blower DC 12V', '50 x 15', '50x50x15 mm'].map((frame) => read({ fan: { frame } }).fan.frame);
    expect(frames).toEqual(['5015', '5015', '4010', '5015', '5015']);
    expect(readAirPath(file({ fan: { frame: '501524V' } })).problems.find((problem) => problem.code === 'unknown-frame')?.level).toBe('stop');
  });

  it('says that a branch is reckoned without bends where nothing is said of them', () => {
    const branch = { section: { width: '9 mm', height: '6 mm' }, length: '40 mm' };
    const told = (bends: object): boolean => readAirPath(file({ outlets: [{ name: 'a', branch: { ...branch, ...bends } }] })).problems.some((problem) => problem.code === 'bends-not-said');
    expect([told({}), told({ bends: [] }), told({ bends: [{ kind: 'mitre', angle: '90°' }] })]).toEqual([true, false, false]);
  });

  it('answers with nothing known, in wide bands, and says what to measure', () => {
    const { value, problems } = readAirPath(file({}));
    if (value === undefined) throw new Error('nothing known should still read');
    const result = compareAirOptions(value, problems, { samples: 500 });
    expect(result.today.flow.high / result.today.flow.low).toBeGreaterThan(1.5);
    expect(result.options.length).toBeGreaterThan(4);
    expect(problems.every((problem) => problem.level === 'note' && problem.next.length > 10)).toBe(true);
    expect(result.unknowns.length).toBeGreaterThan(5);
  });

  it('narrows the band as more is given', () => {
    const width = (parts: object): number => { const { low, high } = compareAirOptions(read(parts), [], { samples: 1000 }).today.flow; return high / low; };
    const bare = width({});
    const known = width({ fan: { kind: 'blower', frame: '5015', claim: 'data-sheet', freeFlow: '4.1 CFM', maxPressure: '89 Pa' }, duct: { section: { width: '20 mm', height: '12 mm' }, length: '30 mm' }, outlets: [{ width: '14 mm', height: '3 mm', direction: '0°' }], leaks: [] });
    expect(known).toBeLessThan(0.8 * bare);
  });

  it('reads a pressure-flow table from text with its units in the first line', () => {
    const context = { where: 'the table', kind: 'blower', stallMarked: false } as const;
    const { value, problems } = readFanPointsText('flow (CFM); pressure (mmH2O)\n0; 9,1\n2; 6,0\n4,1; 0\n', context);
    expect(problems).toEqual([]);
    expect(value?.map((point) => Number(point.pressure.toFixed(2)))).toEqual([89.24, 58.84, 0]);
    expect(readFanPointsText('a;b\n1;2', context).problems.map((problem) => problem.code)).toEqual(['columns-unknown']);
  });

  it('solves two fans in series, in parallel and each on its own duct', () => {
    const flow = (arrangement: string): number => {
      const path = read({ fan: { kind: 'blower', frame: '5015', claim: 'data-sheet', freeFlow: '4.1 CFM', maxPressure: '89 Pa', count: 2, arrangement }, outlets: [{ name: 'a', width: '14 mm', height: '2 mm', direction: '0°', fan: 1 }, { name: 'b', width: '14 mm', height: '2 mm', direction: '180°', fan: 2 }], leaks: [] });
      return compareAirOptions(path, [], { samples: 300 }).today.flow.value;
    };
    const one = compareAirOptions(read({ fan: { kind: 'blower', frame: '5015', claim: 'data-sheet', freeFlow: '4.1 CFM', maxPressure: '89 Pa' }, outlets: [{ name: 'a', width: '14 mm', height: '2 mm', direction: '0°' }, { name: 'b', width: '14 mm', height: '2 mm', direction: '180°' }], leaks: [] }), [], { samples: 300 }).today.flow.value;
    expect(flow('series')).toBeGreaterThan(1.2 * one);
    expect(flow('parallel')).toBeLessThan(1.2 * one);
    expect(flow('own-ducts')).toBeGreaterThan(one);
  });
});
