import { describe, expect, it } from 'vitest';
import { figureRows, rivalsOf, withFigures } from '@/app/air/form/advertised-figures';
import { EMPTY_SHEET, valueAt } from '@/app/air/sheet';
import { readAdvertisement, readAirPath } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { toUnit } from '@/lib/units';

const LINE = 'Radial blower 50x15 24V 0,10A 6000RPM 5.36 CFM 45 dB(A) 2.4 W';
const at = ['candidates', 0, 'fan'] as const;
const offered = { ...EMPTY_SHEET, candidates: [{ name: 'offer', price: 9, fan: { claim: 'advertised' } }] };
const rowsOf = (line: string, edits = {}) => figureRows(readAdvertisement(line).value ?? [], edits);

describe('a pasted line of an advertisement', () => {
  it('is confirmed figure by figure, each with the words it was read from; power and noise are not asked about', () => {
    expect(rowsOf(LINE).map(({ name, words, text, on }) => [name, words, text, on])).toEqual([
      ['Kind', 'Radial', 'blower', true], ['Size', '50x15', '5015', true], ['Voltage', '24V', '24 V', true], ['Current', '0,10A', '0.1 A', true], ['Speed', '6000RPM', '6000 rpm', true], ['Free flow', '5.36 CFM', '5.36 CFM', true],
    ]);
  });

  it('says what a figure means in the unit of the page', () => {
    // 1 CFM is 0.3048³ / 60 m³/s by definition of the foot: 5.36 CFM are 2.5296 L/s.
    expect(rowsOf(LINE).find((row) => row.field === 'freeFlow')?.means).toBe('2.53\u00a0L/s');
  });

  it('goes into the sheet as text that the reader understands', () => {
    const { value } = readAirPath(JSON.stringify(withFigures(offered, at, rowsOf(LINE))));
    const fan = value?.candidates[0]?.fan;
    expect([fan?.kind, fan?.frame, fan?.voltage?.value, fan?.current?.value, fan?.speed?.value, fan?.freeFlow.value]).toEqual(['blower', '5015', 24, 0.1, 100, expect.closeTo(5.36 * 0.3048 ** 3 / 60, 12)]);
  });

  it('says where the figures come from, and leaves what was said by hand', () => {
    const claimOf = (fan: object, line = LINE, edits = {}): unknown => valueAt(withFigures({ ...EMPTY_SHEET, fan }, ['fan'], rowsOf(line, edits)), ['fan', 'claim']);
    expect(['data-sheet', 'measured', 'advertised'].map((claim) => claimOf({ kind: 'blower', claim }))).toEqual(['data-sheet', 'measured', 'advertised']);
    expect(claimOf({ kind: 'blower' })).toBe('advertised');
    // Nothing ticked, nothing said.
    const [row] = rowsOf('5.4 CFM');
    expect(claimOf({ kind: 'blower' }, '5.4 CFM', { [row?.start ?? -1]: { on: false } })).toBeUndefined();
  });

  it('puts usual, largest and starting current where each belongs', () => {
    const fanOf = (line: string, edits = {}): unknown => valueAt(withFigures(offered, at, rowsOf(line, edits)), at);
    expect(fanOf('24V rated 0.10 A, max 0.16 A')).toMatchObject({ current: '0.1 A', startCurrent: '0.16 A' });
    expect(fanOf('24V rated 0.10 A, max 0.16 A')).not.toHaveProperty('currentIsLargest');
    expect(fanOf('24V rated 0.10 A, max 0.16 A, start 0.3 A')).toMatchObject({ current: '0.1 A', startCurrent: '0.3 A' });
    expect(fanOf('24V 0.16 A max')).toMatchObject({ current: '0.16 A', currentIsLargest: true });
    expect(fanOf('24V 0.16 A max')).not.toHaveProperty('startCurrent');
    // Without the usual one the largest is what stands on the label.
    const [rated] = rowsOf('0.10 A rated, max 0.16 A');
    expect(fanOf('0.10 A rated, max 0.16 A', { [rated?.start ?? -1]: { on: false } })).toMatchObject({ current: '0.16 A', currentIsLargest: true });
  });

  it('reads them back: the largest as what the fan may draw while starting, or as a label that says the most', () => {
    const fanOf = (line: string) => readAirPath(JSON.stringify(withFigures(offered, at, rowsOf(line)))).value?.candidates[0]?.fan;
    expect([fanOf('24V rated 0.10 A, max 0.16 A')].map((fan) => [fan?.current?.value, fan?.startCurrent?.value, fan?.currentIsLargest])).toEqual([[0.1, 0.16, false]]);
    expect([fanOf('24V 0.16 A max')].map((fan) => [fan?.current?.value, fan?.startCurrent, fan?.currentIsLargest])).toEqual([[0.16, undefined, true]]);
    expect(fanOf('6000 rpm ±10 %')?.speed).toMatchObject({ value: 100, plusMinus: expect.closeTo(10, 9) as number });
  });

  it('takes the tick of the largest away with a current that is not the largest', () => {
    const before = withFigures(offered, at, rowsOf('0.16 A max'));
    expect(valueAt(withFigures(before, at, rowsOf('0.10 A')), at)).toEqual({ claim: 'advertised', current: '0.1 A' });
    expect(valueAt(withFigures(before, at, rowsOf('6000 rpm')), [...at, 'currentIsLargest'])).toBe(true);
  });

  it('lets one figure at a time into each entry', () => {
    const line = '24V rated 0.10 A, max 0.16 A, start 0.3 A';
    const rows = rowsOf(line);
    const largest = rows.find((row) => row.field === 'largestCurrent');
    expect(rows.map((row) => [row.field, row.on])).toEqual([['voltage', true], ['current', true], ['largestCurrent', false], ['startCurrent', true]]);
    expect(largest && rivalsOf(largest, rows).map((row) => row.field)).toEqual(['startCurrent']);
  });

  it('ticks only the first of two figures that contradict each other', () => {
    expect(rowsOf('blower 12 V 5.4 CFM or 324 CFM').filter((row) => row.field === 'freeFlow').map((row) => row.on)).toEqual([true, false]);
  });

  it('leaves out what is unticked and takes what was corrected', () => {
    const rows = rowsOf(LINE);
    const edits = Object.fromEntries(rows.map((row) => [row.start, row.field === 'current' ? { on: false } : row.field === 'speed' ? { text: '6500 rpm' } : {}]));
    const sheet = withFigures(offered, at, rowsOf(LINE, edits));
    expect([valueAt(sheet, [...at, 'current']), valueAt(sheet, [...at, 'speed'])]).toEqual([undefined, '6500 rpm']);
  });

  it('holds a corrected figure back while it cannot be read', () => {
    const speed = rowsOf(LINE).find((row) => row.field === 'speed');
    expect(rowsOf(LINE, { [speed?.start ?? -1]: { text: '6500 kg' } }).find((row) => row.field === 'speed')?.problem).toBeDefined();
  });
});

describe('a claim beside a trusted data sheet of the same frame', () => {
  it('is judged with both: 3.07 to 4.52 CFM, the claim outside and the later measurement of 3.8 CFM inside', () => {
    // Check value of the trade (common practice, no source): trusted 5 CFM, 6500 rpm, 0.18 A; claim 5.36 CFM, 6000 rpm, 0.10 A; measured afterwards 3.8 CFM.
    const sheet = { ...EMPTY_SHEET, candidates: [{ name: 'offer', fan: { kind: 'blower', claim: 'advertised', frame: '50 x 15', freeFlow: '5.36 CFM', speed: '6000 rpm', current: '0.10 A', voltage: '24 V' }, trusted: { freeFlow: '5 CFM', speed: '6500 rpm', current: '0.18 A', voltage: '24 V' } }] };
    const { value, problems } = readAirPath(JSON.stringify(sheet));
    expect(problems.filter((problem) => problem.level === 'stop')).toEqual([]);
    const credibility = value && compareAirOptions(value, [], { samples: 200 }).options.find((option) => option.id === 'candidate-1')?.credibility;
    const inCfm = (flow = 0): number => toUnit(flow, 'CFM');
    expect(credibility?.verdict).toBe('not-credible');
    // By hand: power ratio 0.10 / 0.18; 5·0.5556^0.65 = 3.412 less a tenth; 5·0.5556^(1/3) = 4.111 and a tenth more.
    expect([inCfm(credibility?.band?.low), inCfm(credibility?.band?.high)]).toEqual([expect.closeTo(3.07, 2), expect.closeTo(4.52, 2)]);
    expect(inCfm(credibility?.band?.low)).toBeLessThan(3.8);
    expect(inCfm(credibility?.band?.high)).toBeGreaterThan(3.8);
  });

  it('says what is missing in a trusted sheet that cannot be read, at its place', () => {
    const broken = readAirPath(JSON.stringify({ ...EMPTY_SHEET, candidates: [{ name: 'offer', fan: { kind: 'blower' }, trusted: { freeFlow: '5 kg' } }] }));
    expect(broken.problems.find((problem) => problem.level === 'stop')?.where).toBe('candidates[1].trusted.freeFlow');
  });
});
