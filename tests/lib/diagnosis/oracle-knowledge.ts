import type { Knowledge } from '@/lib/knowledge';
import { chainKnowledge } from './toy-knowledge';

/** The net of 4 causes and 4 findings of diagnosis.md 2.2, whose values were enumerated in exact fractions. */
export const ORACLE = {
  priors: { d0: 0.1, d1: 0.05, d2: 0.2, d3: 0.02 },
  leaks: { f0: 0.02, f1: 0.05, f2: 0.01, f3: 0.1 },
  links: { f0: { d0: 0.8, d2: 0.2, d3: 0.9 }, f1: { d0: 0.3, d1: 0.6, d3: 0.9 }, f2: { d1: 0.7, d2: 0.4 }, f3: { d0: 0.5, d3: 0.9 } },
} as const;

const basis = { estimate: 'oracle' };
const link = (chance: number) => ({ chance, said: '', basis, statedIn: '' });

/**
 * The net as a knowledge base. With `asChecks`, the findings listed are yes-no checks that never mislead instead of symptoms;
 * with `fixes`, each cause has a remedy of its own, all alike.
 */
export function oracleKnowledge({ asChecks = [], fixes = false }: { readonly asChecks?: readonly string[]; readonly fixes?: boolean } = {}): Knowledge {
  const toy = chainKnowledge();
  const cause = toy.causes.d0;
  const symptom = toy.symptoms.curl;
  const check = toy.checks.look;
  if (!cause || !symptom || !check) throw new Error('the chain knowledge lacks its first pages');
  const findings = Object.entries(ORACLE.links).map(([id, links]) => ({ id, leak: ORACLE.leaks[id as keyof typeof ORACLE.leaks], links: Object.fromEntries(Object.entries(links).map(([from, chance]) => [from, link(chance)])) }));
  return {
    ...toy,
    causes: Object.fromEntries(Object.entries(ORACLE.priors).map(([id, prior]) => [id, { ...cause, id, title: `Cause ${id}`, prior }])),
    symptoms: Object.fromEntries(findings.filter(({ id }) => !asChecks.includes(id)).map((row) => [row.id, { ...symptom, ...row, title: `Symptom ${row.id}`, followsFrom: {}, details: [] }])),
    checks: Object.fromEntries(findings.filter(({ id }) => asChecks.includes(id)).map(({ id, leak, links }) => [id, { ...check, id, leak, yes: links, reads: {}, methods: ['way'] }])),
    methods: { way: { ...Object.values(toy.methods)[0], id: 'way', title: 'A way', short: 'a way', takes: 'f2', needs: [], hazards: [], minutes: 5, misleads: 1e-12 } } as unknown as Knowledge['methods'],
    remedies: fixes ? Object.fromEntries(Object.keys(ORACLE.priors).map((id) => [`fix-${id}`, { id: `fix-${id}`, does: `Fix ${id}`, cures: { [id]: link(0.9) }, minutes: 10, price: { from: 0, to: 0 }, reversible: 'yes' as const, needs: [], steps: [], provedBy: { print: '', passes: '', minutes: 1 }, hazards: [], examples: [] }])) : {},
  };
}

export type States = readonly boolean[];

/** Every combination of the four causes with its probability before anything was seen. */
export function everyState(): { readonly states: States; readonly chance: number }[] {
  const priors = Object.values(ORACLE.priors);
  return Array.from({ length: 16 }, (_, mask) => {
    const states = priors.map((__, cause) => (mask & (1 << cause)) !== 0);
    return { states, chance: priors.reduce((product, prior, cause) => product * (states[cause] === true ? prior : 1 - prior), 1) };
  });
}

/** Chance that a finding is there when exactly these causes are, by the noisy-OR formula. */
export function chanceSeen(finding: keyof typeof ORACLE.links, states: States): number {
  const links: Readonly<Record<string, number>> = ORACLE.links[finding];
  return 1 - Object.keys(ORACLE.priors).reduce((none, id, cause) => none * (states[cause] === true ? 1 - (links[id] ?? 0) : 1), 1 - ORACLE.leaks[finding]);
}
