import { describe, expect, it } from 'vitest';
import { curedCounts, NO_MACHINE } from '../../app/casebook/cured-counts';
import { asDirections, figuresOf, isBeyond, type BeforeAfterRow } from '../../app/case/prove/before-after-rows';
import { findingOfProof, isGoneWith, judgedOf, recordedLooks, typedRows, verdictOfLooks, verdictOfProof, verdictToShow } from '../../app/case/prove/after-readings';
import { readContent } from '../../content/read-content';
import { caseSchema, type CaseFile, type Criterion, type StoredMeasured } from '../../lib/cases';
import { curedCauses } from '../../lib/diagnosis';
import type { Knowledge } from '../../lib/knowledge';

const mm = (value: number, plusMinus = 0.08): StoredMeasured => ({ quantity: 'length', value, plusMinus, unit: 'mm' });
const row = (place: string, before: number, after?: number): BeforeAfterRow => ({ place, before: mm(before), after: after === undefined ? undefined : mm(after) });
const AROUND = ['left', 'back', 'right', 'front', 'back-left', 'back-right', 'front-left', 'front-right'];

describe('figures of a proof', () => {
  // Rule on figures (GUM 7.2.6 leaves one or two digits of the uncertainty): two when it begins with 1, 2 or 3, else one.
  it.each([[0.08, '1.10'], [0.032, '1.100'], [0.4, '1.1'], [3, '1.0'], [8, '1'], [20, '1']])('a value beside ± %d is written with its decimals', (plusMinus, words) => {
    expect(figuresOf([{ place: 'left', before: mm(1.1, plusMinus), after: undefined }])(plusMinus === 8 || plusMinus === 20 ? 1 : plusMinus === 3 ? 1 : 1.1)).toBe(words);
  });

  it('a reading without ± keeps the decimals it was typed with', () => {
    expect(figuresOf([{ place: 'left', before: mm(1.25, 0), after: undefined }])(2)).toBe('2.00');
  });

  it('a value on the limit keeps it, on either side of good', () => {
    expect(isBeyond(mm(0.3), { limit: mm(0.3), good: 'at-most' })).toBe(false);
    expect(isBeyond(mm(0.31), { limit: mm(0.3), good: undefined })).toBe(true);
    expect(isBeyond(mm(0.29), { limit: mm(0.3), good: 'at-least' })).toBe(true);
    expect(isBeyond(mm(9), { limit: undefined, good: undefined })).toBe(false);
  });
});

describe('the verdict of a proof', () => {
  it('is cured by a reading only when everything was looked at again and nothing is still there', () => {
    expect(verdictOfProof('cured', [undefined, undefined])).toBeUndefined();
    expect(verdictOfProof('cured', ['not-seen', undefined])).toBeUndefined();
    expect(verdictOfProof('cured', ['not-seen', 'cant-tell'])).toBe('cured');
    expect(verdictOfProof('cured', ['not-seen', 'seen'])).toBe('better');
    expect(verdictOfProof('cured', ['seen', undefined])).toBe('better');
    expect(verdictOfProof('cured', [])).toBe('cured');
  });

  it('is otherwise that of the readings, and of the looks where nothing was read', () => {
    expect(verdictOfProof('worse', ['not-seen'])).toBe('worse');
    expect(verdictOfProof(undefined, ['not-seen', 'not-seen'])).toBe('cured');
    expect(verdictOfProof(undefined, [undefined])).toBeUndefined();
  });
});

describe('a proof that is opened again', () => {
  const known = readContent().value?.knowledge;

  it('shows the recorded verdict until something is written, then what was pressed or what readings and looks give', () => {
    expect(verdictToShow(undefined, 'better', 'cured')).toBe('cured');
    expect(verdictToShow({ chosen: undefined }, 'better', 'cured')).toBe('better');
    expect(verdictToShow({ chosen: undefined }, undefined, 'cured')).toBe('cured');
    expect(verdictToShow({ chosen: 'worse' }, 'better', 'cured')).toBe('worse');
    expect(verdictToShow(undefined, 'better', undefined)).toBe('better');
  });

  it('begins with the looks that were recorded, or told since the fitting, without those that only went with their symptom', () => {
    if (known === undefined) throw new Error('the content does not read');
    const look = (symptom: string, round: number, state: 'seen' | 'not-seen') => ({ symptom, round, state });
    const observations = [look('curled-edges', 1, 'seen'), look('curled-edges', 2, 'not-seen'), look('curl-worse-one-side', 2, 'not-seen'), look('strings', 2, 'seen')];
    expect(recordedLooks({ observations }, { number: 1 }, known)).toEqual({ 'curled-edges': 'not-seen', strings: 'seen' });
    expect(recordedLooks({ observations: observations.slice(0, 1) }, { number: 1 }, known)).toEqual({});
  });
});

describe('the reading after a change', () => {
  const known = readContent().value?.knowledge;
  if (known === undefined) throw new Error('the content does not read');
  const speed = (value: number): StoredMeasured => ({ quantity: 'speed', value, plusMinus: 0.4, unit: 'm/s' });
  const ruleOf = (reading: string | undefined, ...before: StoredMeasured[]): Criterion => ({ print: 'any', passes: 'good', ...(reading === undefined ? {} : { reading }), before: before.map((each, k) => ({ place: `place ${k}`, reading: each })) });
  const found = (rule: Criterion, text: string, findings: CaseFile['findings'] = []) => findingOfProof(rule, typedRows(rule, undefined, Object.fromEntries((rule.before ?? []).map(({ place }) => [place, text]))), { findings }, 1, known);

  it('is a finding of the next round where it reads a check at one place', () => {
    expect(found(ruleOf('outlet-speed-weakest', speed(3)), '6,2')).toEqual({ check: 'outlet-speed-weakest', result: speed(6.2), round: 2 });
    expect(found(ruleOf('outlet-speed-weakest', speed(3)), '')).toBeUndefined();
  });

  it('is none where something else is read, at several places, or with nothing told to compare it with', () => {
    expect(found(ruleOf(undefined, speed(3)), '6.2')).toBeUndefined();
    expect(found(ruleOf('outlet-speed-weakest', mm(3)), '0.2')).toBeUndefined();
    expect(found(ruleOf('outlet-speed-weakest', speed(3), speed(6)), '6.2')).toBeUndefined();
    expect(found(ruleOf('seal-leaks', speed(3)), '6.2')).toBeUndefined();
    expect(found(ruleOf('single-wall-thickness', mm(0.6)), '0.45')).toBeUndefined();
  });

  it('is compared with what the last finding of the check was, but not with the rating of a part that may be another now', () => {
    const asked: CaseFile['findings'] = [{ check: 'single-wall-thickness', result: mm(0.6), comparedWith: mm(0.45, 0), round: 1 }];
    expect(found(ruleOf('single-wall-thickness', mm(0.6)), '0.46', asked)).toEqual({ check: 'single-wall-thickness', result: mm(0.46), comparedWith: mm(0.45, 0), round: 2 });
    const flow = (value: number): StoredMeasured => ({ quantity: 'volume-flow', value, plusMinus: 0.02, unit: 'L/s' });
    expect(found(ruleOf('part-fan-free-flow', flow(0.4)), '0.9', [{ check: 'part-fan-free-flow', result: flow(0.4), comparedWith: flow(1), round: 1 }])).toBeUndefined();
  });
});

describe('a detail of a symptom', () => {
  const known = readContent().value?.knowledge;

  it('is gone when its symptom is, and when the symptom of that one is; otherwise it is looked at by itself', () => {
    if (known === undefined) throw new Error('the content does not read');
    expect(isGoneWith('curl-worse-one-side', { 'curled-edges': 'not-seen' }, known)).toBe(true);
    expect(isGoneWith('curl-follows-part', { 'curled-edges': 'not-seen' }, known)).toBe(true);
    expect(isGoneWith('curl-worse-one-side', { 'curled-edges': 'seen' }, known)).toBe(false);
    expect(isGoneWith('curl-worse-one-side', { 'curl-worse-one-side': 'not-seen' }, known)).toBe(false);
    expect(isGoneWith('curled-edges', { 'curled-edges': 'not-seen' }, known)).toBe(false);
  });
});

describe('eight directions', () => {
  const rows = AROUND.map((place, index) => row(place, 1 + index / 10, 0.2));

  it('are put in their order round the machine, back first, whatever the order of the rows', () => {
    expect(asDirections(rows, { limit: mm(0.3), good: 'at-most' })?.before.map((each) => each.direction)).toEqual(['back', 'back-right', 'right', 'front-right', 'front', 'front-left', 'left', 'back-left']);
  });

  it('have no plot after the change until all are read', () => {
    expect(asDirections([...rows.slice(1), row('left', 1)], { limit: mm(0.3), good: 'at-most' })?.after).toBeUndefined();
  });

  it.each([['four places', rows.slice(0, 4), 'at-most' as const], ['a least value', rows, 'at-least' as const]])('are not drawn for %s', (_, some, good) => {
    expect(asDirections(some, { limit: mm(0.3), good })).toBeUndefined();
  });
});

describe('readings after the change', () => {
  const criterion: Criterion = { print: 'test', passes: 'curl is 0.3 mm or less', limit: mm(0.3, 0), before: [{ place: 'left', reading: mm(1.42) }, { place: 'back', reading: mm(0.42) }] };

  it('give no verdict while one is missing or cannot be read', () => {
    expect(judgedOf(typedRows(criterion, undefined, { left: '0.2' }), criterion)).toBeUndefined();
    const rows = typedRows(criterion, undefined, { left: '0.2', back: '3 kg' });
    expect(rows[1]?.problem?.level).toBe('stop');
    expect(judgedOf(rows, criterion)).toBeUndefined();
  });

  it('take the ± of the reading before, unless one is typed, and turn inches into the unit before', () => {
    const [left, back] = typedRows(criterion, undefined, { left: '0,2', back: '0.01 in ± 0.001 in' });
    expect(left?.after).toEqual(mm(0.2));
    expect(back?.after?.value).toBeCloseTo(0.254, 9); // 1 in is 25.4 mm by definition
    expect(back?.after?.plusMinus).toBeCloseTo(0.0254, 4);
  });

  it('that were recorded stand until something else is typed', () => {
    const recorded = [{ place: 'left', reading: mm(0.21) }];
    expect(typedRows(criterion, recorded, {})[0]?.after).toEqual(mm(0.21));
    expect(typedRows(criterion, recorded, { left: '' })[0]?.after).toBeUndefined();
  });
});

describe('a verdict by looking', () => {
  it.each([[['not-seen', 'not-seen'], 'cured'], [['not-seen', undefined], 'better'], [['not-seen', 'seen'], 'better'], [['seen', 'cant-tell'], 'no-change'], [['cant-tell', undefined], undefined]] as const)('of %j is %s', (looks, verdict) => {
    expect(verdictOfLooks(looks)).toBe(verdict);
  });
});

describe('counts of the casebook', () => {
  const knowledge = { remedies: { both: { cures: { a: {}, b: {} } }, one: { cures: { a: {} } } } } as unknown as Knowledge;
  const closed = (remedy: string, verdict: 'cured' | 'better', machine?: string, state: 'open' | 'closed' = 'closed'): CaseFile => ({ schema: 'leeward/case', version: 1, id: `${remedy} ${machine ?? ''}`, title: '', words: '', machine: machine === undefined ? {} : { name: machine }, print: {}, observations: [], findings: [], rounds: [{ number: 1, remedy, verdict }], log: [], state });

  it('hold each cause that a proven change cures once a case where no chance is known, by machine, most frequent first', () => {
    expect(curedCounts([closed('both', 'cured', 'no. 3'), closed('one', 'cured', 'no. 3'), closed('one', 'cured')], knowledge, (file) => (file.rounds[0]?.remedy === 'both' ? undefined : new Map()))).toEqual([
      { cause: 'a', cases: 3, machines: [{ name: 'no. 3', cases: 2 }, { name: NO_MACHINE, cases: 1 }] },
      { cause: 'b', cases: 1, machines: [{ name: 'no. 3', cases: 1 }] },
    ]);
  });

  it('leave out open cases, changes that did not cure, and changes that are no longer known', () => {
    expect(curedCounts([closed('one', 'cured', 'no. 3', 'open'), closed('one', 'better'), closed('gone', 'cured')], knowledge, (file) => (file.rounds[0]?.remedy === 'one' ? new Map([['a', 0.9]]) : undefined))).toEqual([]);
  });

  it('hold those causes that were as likely cured as not, else the likeliest', () => {
    const counted = (...chances: [string, number][]): string[] => curedCounts([closed('both', 'cured')], knowledge, () => new Map(chances)).map((row) => row.cause);
    expect(counted(['a', 0.5], ['b', 0.7])).toEqual(['a', 'b']);
    expect(counted(['a', 0.3], ['b', 0.7])).toEqual(['b']);
    expect(counted(['a', 0.4], ['b', 0.3])).toEqual(['a']);
  });

  it('do not hold everything that a change may cure when what was seen points to one cause of it', () => {
    const known = readContent().value?.knowledge;
    if (known === undefined) throw new Error('the content does not read');
    const proven = caseSchema.parse({
      schema: 'leeward/case', version: 1, id: 'proven', state: 'closed', rounds: [{ number: 1, remedy: 'choose-less-shrinking-plastic', fittedOn: '2026-11-20', verdict: 'cured' }],
      observations: [{ symptom: 'lifted-corners', state: 'seen', round: 1 }, { symptom: 'lifted-corners', state: 'not-seen', round: 2 }],
    });
    expect(Object.keys(known.remedies['choose-less-shrinking-plastic']?.cures ?? {})).toContain('shrinkage-not-allowed-for');
    expect(curedCounts([proven], known, (file) => curedCauses(file, known)).map((row) => row.cause)).toEqual(['shrinking-plastic-cold-room']);
  });
});
