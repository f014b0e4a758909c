import { describe, expect, it } from 'vitest';
import { recordVerdict } from '../../app/_case/rounds';
import { observe, tellFinding } from '../../app/_case/tell';
import { toTakeBack } from '../../app/_case/to-take-back';
import { cameBack, canComeBack } from '../../app/case/came-back';
import { cameBackAfter, looksOfProof } from '../../app/case/log/report-proof';
import { readContent } from '../../content/read-content';
import { caseSchema, type CaseFile, type Observation, type Round } from '../../lib/cases';

const knowledge = readContent().value?.knowledge;
if (knowledge === undefined) throw new Error('the content does not read');

const seen = (symptom: string, round = 1, state: Observation['state'] = 'seen'): Observation => ({ symptom, state, round });
const fileOf = (change: Partial<CaseFile>): CaseFile => ({ ...caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'tried' }), ...change });
const FIRST: Round = { number: 1, remedy: 'fit-stronger-part-fan', fittedOn: '2026-11-20T10:00:00Z' };
const CURED = fileOf({
  state: 'closed', rounds: [{ ...FIRST, verdict: 'cured', verdictOn: '2026-11-21T10:00:00Z' }],
  observations: [seen('curled-edges'), { ...seen('curl-worse-one-side'), faces: 'left' }, seen('lifted-corners', 1, 'not-seen'), { ...seen('curled-edges', 2, 'not-seen'), on: '2026-11-21T09:59:00Z' }],
});
const statesIn = (file: CaseFile, round: number): Record<string, string> => Object.fromEntries(file.observations.filter((each) => each.round === round).map((each) => [each.symptom, each.state]));

describe('a verdict', () => {
  it('that is recorded again opens a closed case, in the next round, unless it is cured', () => {
    const again = recordVerdict(CURED, 'better', { observations: [seen('curled-edges', 2)], findings: [] }, undefined, 'Proof: better.');
    expect([again.state, again.rounds.map((round) => [round.number, round.verdict])]).toEqual(['open', [[1, 'better'], [2, undefined]]]);
    expect(statesIn(again, 2)).toEqual({ 'curled-edges': 'seen' });
    expect(recordVerdict(CURED, 'cured', { observations: [], findings: [] }, undefined, 'Proof: cured.')).toMatchObject({ state: 'closed', rounds: [{ number: 1, verdict: 'cured' }] });
  });

  it('begins no second round of the same number', () => {
    const file = fileOf({ rounds: [{ number: 2 }, FIRST] });
    expect(recordVerdict(file, 'worse', { observations: [], findings: [] }, undefined, 'Proof: worse.').rounds.map((round) => round.number)).toEqual([2, 1]);
  });
});

describe('what is told between fitting and verdict', () => {
  const fitted = fileOf({ rounds: [FIRST], observations: [seen('curled-edges')], findings: [{ check: 'outlet-aim-off', answer: 'yes', round: 1 }] });

  it('belongs to the next round, and leaves what was told before the change as it was', () => {
    const after = tellFinding(observe(observe(fitted, 'curled-edges', { state: 'not-seen' }), 'strings', { state: 'seen' }), { check: 'outlet-aim-off', answer: 'no' });
    expect([statesIn(after, 1), statesIn(after, 2)]).toEqual([{ 'curled-edges': 'seen' }, { 'curled-edges': 'not-seen', strings: 'seen' }]);
    expect(after.findings.map(({ round, answer }) => [round, answer])).toEqual([[1, 'yes'], [2, 'no']]);
    expect(statesIn(observe({ ...fitted, rounds: [{ number: 1, remedy: 'fit-stronger-part-fan' }] }, 'strings', {}), 1)).toHaveProperty('strings');
  });

  it('stays when the verdict is recorded, but for what the proof looked at itself', () => {
    const told = observe(observe(fitted, 'curled-edges', { state: 'not-seen' }), 'strings', { state: 'seen' });
    const recorded = recordVerdict(told, 'better', { observations: [seen('curled-edges', 2)], findings: [] }, undefined, 'Proof: better.');
    expect(statesIn(recorded, 2)).toEqual({ 'curled-edges': 'seen', strings: 'seen' });
  });
});

describe('a closed case that came back', () => {
  const back = cameBack(CURED, knowledge);

  it('is open in a new round, in which what was seen before the cure is seen, with its details', () => {
    expect([back.state, back.rounds.map((round) => round.number)]).toEqual(['open', [1, 2]]);
    expect(statesIn(back, 2)).toEqual({ 'curled-edges': 'seen', 'curl-worse-one-side': 'seen' });
    expect(back.observations.find((each) => each.symptom === 'curl-worse-one-side' && each.round === 2)?.faces).toBe('left');
    expect(back.log.at(-1)).toMatchObject({ what: 'It came back.', round: 2 });
  });

  it('tells no detail whose symptom was gone before the cure', () => {
    const later = fileOf({ state: 'closed', rounds: [{ ...FIRST, verdict: 'better' }, { ...FIRST, number: 2, verdict: 'cured' }], observations: [seen('curled-edges'), seen('curl-worse-one-side'), seen('strings'), seen('curled-edges', 2, 'not-seen')] });
    expect(statesIn(cameBack(later, knowledge), 3)).toEqual({ strings: 'seen' });
  });

  it('tells only what is back, and no detail of what stayed away', () => {
    expect(canComeBack(CURED, knowledge)).toEqual(['curled-edges', 'curl-worse-one-side']);
    expect(statesIn(cameBack(CURED, knowledge, new Set(['curl-worse-one-side'])), 2)).toEqual({ 'curled-edges': 'seen' });
    // What stayed away is as the proof left it.
    expect(statesIn(cameBack(CURED, knowledge, new Set(['curled-edges'])), 2)).toEqual({ 'curled-edges': 'not-seen' });
  });

  it('stays in the round after the cure where that was begun already', () => {
    expect(cameBack({ ...CURED, rounds: [...CURED.rounds, { number: 2 }] }, knowledge).rounds.map((round) => round.number)).toEqual([1, 2]);
  });

  it('keeps the proof as it was: what is seen now is no look of that proof', () => {
    const [proven] = back.rounds;
    if (proven === undefined) throw new Error('the round of the cure is gone');
    expect(looksOfProof(CURED, proven).map((each) => [each.symptom, each.state])).toEqual([['curled-edges', 'not-seen']]);
    expect(looksOfProof(back, proven)).toEqual([]);
    expect([cameBackAfter(CURED, proven), cameBackAfter(back, proven)]).toEqual([false, true]);
  });
});

describe('a change to take back', () => {
  const after = (verdict: Round['verdict'], remedy = 'print-hotter', ...more: Round[]): number | undefined => toTakeBack(fileOf({ rounds: [{ number: 1, remedy, fittedOn: '2026-11-20', verdict }, ...more] }), knowledge)?.number;

  it('is the last one when it made no change or made it worse, until the next one is fitted', () => {
    expect([after('no-change'), after('worse'), after('better'), after('cured')]).toEqual([1, 1, undefined, undefined]);
    expect(after('no-change', 'print-hotter', { number: 2 })).toBe(1);
    expect(after('no-change', 'print-hotter', { number: 2, remedy: 'dry-filament' })).toBe(1);
    expect(after('no-change', 'print-hotter', { number: 2, remedy: 'dry-filament', fittedOn: '2026-11-21' })).toBeUndefined();
    expect(after('no-change', 'print-hotter', { number: 2, remedy: 'slow-retraction', fittedOn: '2026-11-21', verdict: 'better' }, { number: 3 })).toBeUndefined();
  });

  it('is none once it was said what became of it', () => {
    expect((['done', 'kept'] as const).map((takenBack) => toTakeBack(fileOf({ rounds: [{ number: 1, remedy: 'print-hotter', fittedOn: '2026-11-20', verdict: 'no-change', takenBack }] }), knowledge))).toEqual([undefined, undefined]);
  });

  it('is none that cannot be undone, that is mere upkeep by its page, or that is no longer known', () => {
    expect([after('worse', 'drill-holes'), after('no-change', 'clean-part-fan'), after('no-change', 'retension-belt'), after('no-change', 'gone')]).toEqual([undefined, undefined, undefined, undefined]);
    expect(after('no-change', 'free-screw-sideways')).toBe(1);
  });
});
