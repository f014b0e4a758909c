import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSolvedCases } from '../../app/_cli/evaluation/read-solved-cases';
import { laterOf, type LaterPart } from '../../app/_case/later';
import { readContent } from '../../content/read-content';
import { caseSchema } from '../../lib/cases';
import { costOf, diagnose, endingsOfChanges, endingsWithCheck, inOneGo, possibilitiesOf, prospectOf, standingOf, waysOfCase, withBands } from '../../lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('the content does not read');
const cases = (readSolvedCases(join(import.meta.dirname, '../cases')).value ?? []).map(({ file }) => file);
const TRIED = cases.filter((_, index) => index % 28 === 0);
const told = (turns: ReturnType<typeof laterOf>): LaterPart[] => [...turns].filter((part) => part !== undefined);
const parts = TRIED.map((file) => ({ file, parts: told(laterOf(file, knowledge, ['way-on', 'reasons', 'together'])) }));
const wayOnOf = (all: readonly LaterPart[]) => all.flatMap((part) => (part.kind === 'way-on' ? [part.wayOn] : []))[0];

describe('what follows a ranking', () => {
  it('is plain data: nothing of it is lost on the way from a worker', () => {
    expect(TRIED.length).toBeGreaterThan(3);
    for (const { parts: all } of parts) expect(structuredClone(all)).toEqual(all);
  });

  it('begins with the way on, then the bands, then the reasons, each of them once', () => {
    for (const { parts: all } of parts) {
      expect(all.map(({ kind }) => kind)).toEqual(['way-on', 'bands', ...Array<string>(5).fill('reasons')]);
      expect(Object.assign({}, ...all.flatMap((part) => (part.kind === 'reasons' ? [part.reasons] : [])))).toHaveProperty('flip');
    }
  });

  it('takes its time in turns, so that a changed case is heard between two checks', () => {
    for (const file of TRIED) {
      const turns = [...laterOf(file, knowledge, ['way-on'])];
      const [wayOn] = told(laterOf(file, knowledge, ['way-on']));
      if (wayOn?.kind !== 'way-on') throw new Error('got no way on, expected one');
      expect(turns.indexOf(turns.find((part) => part !== undefined))).toBe(wayOn.wayOn.minutes.withCheck.size + 3);
    }
  });

  it('leaves out what no screen asked for', () => {
    const [file] = TRIED;
    const all = file === undefined ? [] : told(laterOf(file, knowledge, ['way-on']));
    expect(all.map(({ kind }) => kind)).toEqual(['way-on', 'bands']);
    expect(wayOnOf(all)?.together).toBeUndefined();
    expect(file && told(laterOf(file, knowledge, [])).map(({ kind }) => kind)).toEqual(['bands']);
  });

  it('says nothing of a case that holds too much at once', () => {
    const file = caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'all', observations: Object.keys(knowledge.symptoms).map((symptom) => ({ symptom, state: 'seen' })) });
    expect(diagnose(file, knowledge, { copies: 0 }).kind).toBe('too-much');
    expect(told(laterOf(file, knowledge, ['way-on', 'reasons']))).toEqual([]);
  });
});

describe('the checks that a page lists', () => {
  it('save what is told of them: all that comes after each, against changes alone', () => {
    for (const { file, parts: all } of parts) {
      const result = diagnose(file, knowledge, { copies: 0 });
      if (result.kind !== 'diagnosis') throw new Error('got no ranking, expected one');
      const standing = standingOf(result, possibilitiesOf(knowledge));
      const { minutes } = wayOnOf(all) ?? {};
      expect(minutes?.now).toEqual(prospectOf(endingsOfChanges(standing)));
      for (const [id, after] of [...(minutes?.withCheck ?? [])].slice(0, 3)) {
        const check = standing.checks.find((each) => each.id === id);
        expect(check && prospectOf(endingsWithCheck(standing, check))).toEqual(after);
      }
    }
  });

  it('are advised by what is told of them: none that the rule weighs has more to save than the one advised', () => {
    let advised = 0;
    for (const { file, parts: all } of parts) {
      const { minutes, step } = wayOnOf(all) ?? {};
      const result = diagnose(file, knowledge, { copies: 0 });
      if (step?.kind !== 'check' || minutes === undefined || result.kind !== 'diagnosis') continue;
      advised += 1;
      const costs = inOneGo(waysOfCase(standingOf(result, possibilitiesOf(knowledge)), [])).weighed.checks.map(({ cost }) => cost);
      expect(costOf(minutes.withCheck.get(step.id) ?? minutes.now)).toBe(Math.min(...costs));
      expect(Math.min(...costs)).toBeLessThan(costOf(minutes.now));
    }
    expect(advised).toBeGreaterThan(0);
  });
});

describe('bands that were reckoned elsewhere', () => {
  it('take the place of the causes alone: everything else is that of the ranking', () => {
    const [file] = TRIED;
    const result = file && diagnose(file, knowledge, { copies: 0 });
    if (result?.kind !== 'diagnosis') throw new Error('got no ranking, expected one');
    const causes = result.causes.map((cause) => ({ ...cause, low: 0 }));
    const banded = withBands(result, causes);
    expect(banded.causes).toBe(causes);
    expect([banded.kind, banded.conflict, banded.unexplained, banded.answer, banded.branches]).toEqual([result.kind, result.conflict, result.unexplained, result.answer, result.branches]);
    expect(result.causes[0]?.low).toBe(result.causes[0]?.probability);
  });
});
