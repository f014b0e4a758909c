import { readKnowledge, type WholeKnowledge } from '@/lib/knowledge';

const body = (sections: readonly string[]): string => `A lead of two short sentences stands here. It says what to do.\n\n${sections.map((section) => `## ${section}\n\nWords.\n`).join('\n')}`;
const page = (front: string, sections: readonly string[]): string => `---\n${front}\n---\n\n${body(sections)}`;
const because = 'basis: { estimate: "a toy figure" }';

/** Roots, leaks and links of the chain table in diagnosis-decisions.md 2, as pages; figures not in words are given as numbers. */
export function chainKnowledge(): WholeKnowledge {
  const cause = (id: string, links: string): { path: string; text: string } => ({
    path: `causes/${id}.mdx`,
    text: page(`title: Cause ${id}\npart: motion\nhowOften: common\nshows: { ${links} }\nsettledBy: [look]\nyes: { look: { how: 0.5, ${because} } }\nexamples: [{ name: one, expects: { notFirst: true } }, { name: two, expects: { notFirst: true } }]`, []),
  });
  const symptom = (id: string, extra = ''): { path: string; text: string } => ({
    path: `symptoms/${id}.mdx`,
    text: page(`title: Symptom ${id}\nsays: [aaa, bbb, ccc]\nzones: [wall]\nseen: on-the-part\ndrawing: { show: stack }\nwithoutKnownCause: uncommon${extra}`, []),
  });
  const read = readKnowledge([
    cause('d0', `curl: { how: 0.8, ${because} }`), cause('d1', `curl: { how: 0.6, ${because} }`), cause('d2', `shift: { how: 0.7, ${because} }`),
    symptom('curl'), symptom('shift', `\nfollowsFrom: { curl: { how: half, ${because} } }`),
    { path: 'checks/look.mdx', text: page('asks: Is it loose?\npart: motion\nanswer: { kind: yes-no, yesMeans: loose, noMeans: tight }\nyesWithoutKnownCause: rare\ndrawing: { show: belt }\nexamples: [{ name: one, answered: "yes" }, { name: two, answered: "no" }]', []) },
    { path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: '{}' },
  ]);
  if (!read.value || read.problems.length > 0) throw new Error(JSON.stringify(read.problems));
  const { knowledge } = read.value;
  const priors: Record<string, number> = { d0: 0.1, d1: 0.08, d2: 0.05 };
  const leaks: Record<string, number> = { curl: 0.02, shift: 0.01 };
  return {
    ...knowledge,
    causes: Object.fromEntries(Object.entries(knowledge.causes).map(([id, each]) => [id, { ...each, prior: priors[id] ?? 0 }])),
    symptoms: Object.fromEntries(Object.entries(knowledge.symptoms).map(([id, each]) => [id, { ...each, leak: leaks[id] ?? 0 }])),
  };
}
