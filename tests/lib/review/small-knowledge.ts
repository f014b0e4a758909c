import { readKnowledge, type WholeKnowledge } from '@/lib/knowledge';

const because = 'basis: { estimate: "a toy figure" }';
const page = (kind: string, id: string, front: string): { path: string; text: string } => ({ path: `${kind}/${id}.mdx`, text: `---\n${front}\n---\n\nWords.\n` });
const links = (list: Readonly<Record<string, number>> | undefined, extra = ''): string => `{ ${Object.entries(list ?? {}).map(([id, how]) => `${id}: { how: ${how}, ${because}${extra} }`).join(', ')} }`;

export interface SmallKnowledge {
  /** Cause → what it shows and which checks it makes come out yes or moves (median and spread as pages state them). */
  readonly causes: Readonly<Record<string, { readonly shows?: Readonly<Record<string, number>>; readonly yes?: Readonly<Record<string, number>>; readonly reads?: Readonly<Record<string, string>> }>>;
  readonly symptoms?: readonly string[];
  /** Yes-no check → minutes of its only method. */
  readonly checks?: Readonly<Record<string, number>>;
  /** Check of a length → what is read when all is well. */
  readonly lengths?: Readonly<Record<string, string>>;
  readonly remedies?: Readonly<Record<string, { readonly minutes: number; readonly needs?: readonly string[]; readonly cures: Readonly<Record<string, number>> }>>;
}

/** A knowledge base of a few lines, read from pages like any other. */
export function smallKnowledge({ causes, symptoms = ['seen'], checks = {}, lengths = {}, remedies = {} }: SmallKnowledge): WholeKnowledge {
  const examples = 'examples: [{ name: one, expects: { notFirst: true } }, { name: two, expects: { notFirst: true } }]';
  const checkExamples = 'examples: [{ name: one, answered: "yes" }, { name: two, answered: "no" }]';
  const [first = 'look'] = [...Object.keys(checks), ...Object.keys(lengths)];
  const method = (check: string, minutes: number): { path: string; text: string } => page('methods', `${check}-by-hand`, `title: Take it by hand\nshort: By hand\ntakes: ${check}\nneeds: []\nminutes: ${minutes}\nsteps: [{ do: Look }, { do: Say so }]\nhazards: []\nmisleads: rare\nexamples: [{ name: one, answered: "yes", expects: "yes" }, { name: two, answered: "no", expects: "no" }]`);
  const reading = readKnowledge([
    { path: 'tools.yaml', text: 'gauge: { title: Gauge, kind: instrument }' }, { path: 'hazards.yaml', text: '{}' },
    ...Object.entries(causes).map(([id, { shows, yes, reads }]) => page('causes', id, `title: Cause ${id}\npart: motion\nhowOften: common\nshows: ${links(shows)}\nyes: ${links(yes)}\nreads: { ${Object.entries(reads ?? {}).map(([check, model]) => `${check}: { ${model}, ${because} }`).join(', ')} }\nsettledBy: [${first}]\n${examples}`)),
    ...symptoms.map((id) => page('symptoms', id, `title: Symptom ${id}\nsays: [aaa, bbb, ccc]\nzones: [wall]\nseen: on-the-part\ndrawing: { show: stack }\nwithoutKnownCause: uncommon`)),
    ...Object.entries(checks).flatMap(([id, minutes]) => [page('checks', id, `asks: Is it loose?\npart: motion\nanswer: { kind: yes-no, yesMeans: loose, noMeans: tight }\nyesWithoutKnownCause: rare\ndrawing: { show: belt }\n${checkExamples}`), method(id, minutes)]),
    ...Object.entries(lengths).flatMap(([id, otherwise]) => [page('checks', id, `asks: How long is it?\npart: motion\nanswer: { kind: quantity, quantity: length, shownIn: mm, means: [{ below: 1, says: short, then: lengthen it }, { says: long, then: shorten it }] }\notherwise: { ${otherwise}, ${because} }\ndrawing: { show: belt }\n${checkExamples}`), method(id, 5)]),
    ...Object.entries(remedies).map(([id, { minutes, needs = [], cures }]) => page('remedies', id, `does: Do ${id}\ncures: ${links(cures)}\nminutes: ${minutes}\nprice: { from: 0, to: 0 }\nreversible: "yes"\nneeds: [${needs.join(', ')}]\nsteps: [{ do: One thing }, { do: Another thing }]\nprovedBy: { print: any part, passes: it is good, minutes: 10 }\nhazards: []\nexamples: [{ name: one, present: [], expects: does-not-apply }, { name: two, present: [], expects: does-not-apply }]`)),
  ]);
  if (!reading.value || reading.problems.length > 0) throw new Error(JSON.stringify(reading.problems));
  return reading.value.knowledge;
}
