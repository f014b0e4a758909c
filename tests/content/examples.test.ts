import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { chanceOfCure, diagnose, type Diagnosis } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { FORMULAS, isFormulaId, readReadings } from '@/lib/measuring';
import { stops } from '@/lib/problems';
import { readQuantity } from '@/lib/units';
import { exampleCase, measuredOf, type ExampleFacts } from './example-case';

const content = readContent(join(import.meta.dirname, '../../content')).value;
if (!content) throw new Error('content could not be read');
const { pages, knowledge } = content;

function diagnosed(facts: ExampleFacts, base: Knowledge = knowledge): Diagnosis {
  const result = diagnose(exampleCase(facts, base), base, { copies: 0 });
  if (result.kind !== 'diagnosis') throw new Error('an example is too dense to diagnose');
  return result;
}

/** All findings of a walk over examples, gathered so that one run shows them all. */
function failures<T extends { readonly path: string }, E extends { readonly name: string }>(list: readonly T[], examplesOf: (page: T) => readonly E[], run: (page: T, example: E) => string | undefined): string[] {
  expect(list.length).toBeGreaterThan(10);
  return list.flatMap((page) => examplesOf(page).flatMap((example) => {
    try {
      const wrong = run(page, example);
      return wrong === undefined ? [] : [`${page.path}, "${example.name}": ${wrong}`];
    } catch (error) {
      return [`${page.path}, "${example.name}": ${error instanceof Error ? error.message : String(error)}`];
    }
  }));
}

const changeOf = (before: Diagnosis, after: Diagnosis) => (id: string): number => {
  const present = (diagnosis: Diagnosis): number => diagnosis.causes.find((cause) => cause.id === id)?.present ?? 0;
  return Math.log(present(after) / present(before));
};

/** The symptom that both one of the raised causes and the lowered one show most. */
function sharedSymptom(raised: readonly string[], lowered: string): string | undefined {
  const both = Object.values(knowledge.symptoms).map((symptom) => ({ id: symptom.id, chance: Math.min(Math.max(0, ...raised.map((id) => symptom.links[id]?.chance ?? 0)), symptom.links[lowered]?.chance ?? 0) }));
  return both.filter((row) => row.chance > 0).sort((a, b) => b.chance - a.chance)[0]?.id;
}

describe('the worked examples of the pages', () => {
  it('rank each cause where its page expects it', () => {
    const wrong = failures(pages.causes, (page) => page.front.examples, (page, example) => {
      const { causes } = diagnosed(example);
      const rank = causes.findIndex((cause) => cause.id === page.id) + 1;
      const chance = causes[rank - 1]?.probability ?? 0;
      const told = `it is number ${rank} with ${(100 * chance).toFixed(1)} %; first is ${causes[0]?.id ?? ''} with ${(100 * (causes[0]?.probability ?? 0)).toFixed(1)} %`;
      const { expects } = example;
      if ('first' in expects) return rank === 1 ? undefined : `expected first, ${told}`;
      if ('inFirst' in expects) return rank <= expects.inFirst ? undefined : `expected in the first ${expects.inFirst}, ${told}`;
      if ('below' in expects) return chance < expects.below ? undefined : `expected below ${expects.below}, ${told}`;
      // Being first among causes that are all unlikely convicts nobody.
      return rank > 1 || chance < 0.15 ? undefined : `expected not first, ${told}`;
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('move the causes that each check says it moves', () => {
    const before = diagnosed({});
    const wrong = failures(pages.checks, (page) => page.front.examples, (page, example) => {
      const facts: ExampleFacts = example.answered === 'yes' ? { yes: [page.id] } : example.answered === 'no' ? { no: [page.id] } : { measured: { [page.id]: example.answered } };
      const alone = changeOf(before, diagnosed(facts));
      const change = (id: string): number => {
        if (id in (knowledge.checks[page.id]?.yes ?? {}) || id in (knowledge.checks[page.id]?.reads ?? {})) return alone(id);
        // A cause that the check does not hear of is lowered only by explaining away: something is seen that both would show.
        const shared = sharedSymptom(example.raises ?? [], id);
        return shared === undefined ? 0 : changeOf(diagnosed({ seen: [shared] }), diagnosed({ ...facts, seen: [shared] }))(id);
      };
      const faults = [
        ...(example.raises ?? []).filter((id) => change(id) <= 0.02).map((id) => `does not raise ${id}`),
        ...(example.lowers ?? []).filter((id) => change(id) >= -0.002).map((id) => `does not lower ${id}`),
        ...(example.leaves ?? []).filter((id) => Math.abs(alone(id)) > 0.05).map((id) => `does not leave ${id} as it was`),
      ];
      return faults.length > 0 ? faults.join(', ') : undefined;
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('reckon what each way of measuring expects, and refuse what it expects to be refused', () => {
    const wrong = failures(pages.methods, (page) => page.front.examples, (page, example) => {
      const { formula } = page.front;
      if (formula === undefined) return example.answered !== undefined || (typeof example.expects === 'string' && example.expects.startsWith('does not apply')) ? undefined : 'it gives no answer, and does not say that it does not apply';
      if (!isFormulaId(formula)) return `there is no formula "${formula}"`;
      const kind = page.front.readings?.[0]?.quantity;
      const read = readReadings(FORMULAS[formula], example.readings ?? {}, kind);
      const computed = read.value ? FORMULAS[formula].compute(read.value) : undefined;
      const problems = [...read.problems, ...(computed?.problems ?? [])];
      if (typeof example.expects !== 'string') {
        const { problem } = example.expects;
        return problems.some((each) => each.code === problem) ? undefined : `expected the problem ${problem}, got ${problems.map((each) => each.code).join(', ') || 'none'}`;
      }
      const result = computed?.value?.result;
      if (!result || stops(problems)) return `expected ${example.expects}, got ${problems.map((each) => `${each.code}: ${each.what}`).join(', ')}`;
      const wanted = readQuantity(example.expects, result.kind, { where: 'expects' });
      if (!wanted.value) return `cannot read "${example.expects}" as ${result.kind}`;
      const room = Math.max(wanted.value.plusMinusTyped ? Math.abs(wanted.value.value) * 0.005 : wanted.value.plusMinus * 1.01, 1e-12);
      if (Math.abs(result.value - wanted.value.value) > room) return `expected ${example.expects}, got ${result.value} in SI`;
      // The page writes the ± with two figures: half a unit of the second figure is all the room there is.
      return wanted.value.plusMinusTyped && Math.abs(result.plusMinus - wanted.value.plusMinus) > 0.06 * wanted.value.plusMinus ? `expected ± ${wanted.value.plusMinus}, got ± ${result.plusMinus} in SI` : undefined;
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('let each change help where its page says that it helps, and only there', () => {
    const wrong = failures(pages.remedies, (page) => page.front.examples, (page, example) => {
      const cures = new Map(Object.entries(knowledge.remedies[page.id]?.cures ?? {}).map(([id, link]) => [id, link.chance]));
      const present = new Set(example.present);
      const base = diagnosed({});
      const weights = base.net.causes.map((id) => ({ weights: present.has(id) ? [0.02, 0.98] : [0.98, 0.02] }));
      const told = { ...base, net: { ...base.net, net: { ...base.net.net, causes: weights } } };
      const chance = chanceOfCure({ ...told, answer: { ...base.answer, logEvidence: weights.reduce((sum, { weights: [absent = 0, there = 0] }) => sum + Math.log(absent + there), 0) } }, cures);
      const helps = chance > 0.4;
      return helps === (example.expects === 'helps') ? undefined : `expected ${example.expects}, the chance of a cure is ${chance.toFixed(2)}`;
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('are read without a stray unit', () => {
    expect(measuredOf('part-fan-free-flow', '45 %', knowledge).value).toBeCloseTo(0.45, 12);
  });
});
