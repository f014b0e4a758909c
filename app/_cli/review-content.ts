import { readContent } from '@/content/read-content';
import { caseSchema, type CaseFile } from '@/lib/cases';
import { diagnose, nextChecks, sensitivityOfLead, type Figure, type SensitivityOfLead } from '@/lib/diagnosis';
import { completenessProblems, statedOrders, type Basis, type ReadContent } from '@/lib/knowledge';
import { problemAsText } from '@/lib/problems';
import { AMONG, SEPARATES, certainFigures, idleChecks, keptPages, outdoneRemedies, pairsOfCauses, unseparatedProblems, type KeptPages, type Starts } from '@/lib/review';
import { readSolvedCases } from './evaluation/read-solved-cases';
import { tableOfText } from './table-of-text';
import { endWith, wordsOfCommand } from './words-of-command';

/** Decibans of a natural logarithm. */
const DECIBANS = 10 / Math.LN10;

/** npm run -s review:content: what is weak in the knowledge base, beyond the faults that check:content stops at. About a minute. */
wordsOfCommand({ usage: 'npm run -s review:content', gives: 'Lists what is weak in the knowledge base, beyond the faults that check:content stops at. Takes about a minute.', most: 0 });
const reading = readContent();
const content: ReadContent = reading.value ?? endWith(reading.problems);
const { knowledge, pages } = content;
const solved = readSolvedCases().value ?? [];

const certain = certainFigures(knowledge);
const pairs = pairsOfCauses(knowledge);
const unseparated = unseparatedProblems(pairs);
const orders = statedOrders(pages);
const incomplete = [...reading.problems, ...completenessProblems(content)];
const outdone = outdoneRemedies(knowledge);
const sensitivities: { id: string; lead: SensitivityOfLead }[] = [];
const starts = [...solved.map(({ id, file }) => ({ from: id, file })), ...Object.keys(knowledge.symptoms).map((symptom) => ({ from: symptom, file: onlySeen(symptom) }))].flatMap(({ from, file }): Starts[] => {
  const diagnosis = diagnose(file, knowledge, { copies: 0 });
  if (diagnosis.kind !== 'diagnosis') return [];
  const lead = file.source === undefined ? undefined : sensitivityOfLead(diagnosis);
  if (lead) sensitivities.push({ id: from, lead });
  return [{ from, checks: nextChecks(diagnosis, knowledge, { most: 40 }).map(({ check }) => check) }];
});
const idle = keptPages(idleChecks(knowledge, starts, pairs), pages.checks);
const outdoneKept = keptPages(outdone.map(({ remedy }) => remedy), pages.remedies);
const unexplained = [...idle.unexplained, ...outdoneKept.unexplained];

console.log([rulesText(), pairsText(), idleText(), outdoneText(), figuresText(), leadsText()].join('\n\n'));
const stopping = [...incomplete, ...unseparated];
for (const problem of stopping) console.error(problemAsText(problem));
process.exitCode = stopping.length + certain.length + unexplained.length === 0 ? 0 : 2;

function onlySeen(symptom: string): CaseFile {
  const parents = [symptom, ...(knowledge.symptoms[symptom]?.detailOf === undefined ? [] : [knowledge.symptoms[symptom].detailOf])];
  return caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'review', observations: parents.map((each) => ({ symptom: each, state: 'seen' })) });
}

function rulesText(): string {
  const graded = Object.values(knowledge.symptoms).filter((symptom) => symptom.grades !== undefined);
  const gradedLinks = graded.flatMap((symptom) => Object.values(symptom.links)).filter((link) => link.grades !== undefined);
  return tableOfText([
    ['rule', 'looked at', 'found', 'allowed'],
    ['chance of 0 or 1', 'all figures', String(certain.length), '0'],
    ['form, unlinked ids, orders broken, symptom without cause, cause without symptom', 'all pages', String(incomplete.length), '0'],
    [`pair of causes that no check separates by ${SEPARATES} bit`, String(pairs.length), String(unseparated.length), '0'],
    ['order stated and broken', String(orders.length), String(incomplete.filter(({ code }) => code === 'order-broken').length), '0'],
    [`check never among the first ${AMONG} at any start, nor first for any pair`, String(Object.keys(knowledge.checks).length), foundWords(idle), '0 unexplained'],
    ['remedy that cures nothing better than another', String(Object.keys(knowledge.remedies).length), foundWords(outdoneKept), '0 unexplained'],
    ['symptom with grades; links that say which', String(graded.length), String(gradedLinks.length), 'told'],
  ]);
}

function pairsText(): string {
  const weakest = [...pairs].sort((a, b) => (a.best?.bits ?? 0) - (b.best?.bits ?? 0)).slice(0, 12);
  return `Pairs that are hardest to tell apart\n${tableOfText([['bits', 'cause', 'cause', 'by', 'own minutes'], ...weakest.map(({ causes: [a, b], best }) => [(best?.bits ?? 0).toFixed(2), a, b, best?.check ?? 'nothing', best?.minutes.toFixed(0) ?? ''])])}`;
}

function foundWords({ explained, unexplained: left }: KeptPages): string {
  return explained.length === 0 ? String(left.length) : `${explained.length + left.length}, ${left.length} unexplained`;
}

function idleText(): string {
  const head = `Checks that never pay (${starts.length} starts)`;
  return keptText(head, `Every check is among the first ${AMONG} somewhere (${starts.length} starts), or first for a pair.`, idle, () => '');
}

function outdoneText(): string {
  const instead = new Map(outdone.map(({ remedy, by }) => [remedy, by.map((row) => `${row.remedy} (${row.cause})`).join(', ')]));
  return keptText('Remedies with nothing over others', 'Every remedy cures something better than each other.', outdoneKept, (id) => instead.get(id) ?? '');
}

/** Weak pages, those without a reason first, then those whose page says why it stays; at last reasons that are idle. */
function keptText(head: string, none: string, { explained, unexplained: left, needless }: KeptPages, instead: (id: string) => string): string {
  const rows = [...left.map((id) => [id, instead(id), 'NO REASON: correct the page, take it out, or say keptBecause']), ...explained.map(({ id, because }) => [id, instead(id), because])];
  const idleReasons = needless.length === 0 ? [] : [`Reasons that are not needed any more: ${needless.join(', ')}`];
  return [rows.length === 0 ? none : `${head}\n${tableOfText([['page', 'instead', 'kept because'], ...rows])}`, ...idleReasons].join('\n');
}

/**
 * Figures on which the leads of the solved cases rest most: slopes added up without their sign. How often a cause occurs stands
 * apart: for the leader and the second that slope is near 1 by nature, so it says which pairs are close, not what is weak.
 */
function figuresText(): string {
  const sums = new Map<string, { figure: Figure; sum: number; first: number }>();
  for (const { lead } of sensitivities) {
    const [top] = statedFigures(lead);
    for (const { figure, slope } of lead.figures) {
      const row = sums.get(nameOf(figure)) ?? { figure, sum: 0, first: 0 };
      sums.set(nameOf(figure), { figure, sum: row.sum + Math.abs(slope), first: row.first + (figure === top?.figure ? 1 : 0) });
    }
  }
  const table = (wanted: (figure: Figure) => boolean, most: number): string => tableOfText([
    ['figure', 'slopes summed', 'first in', 'rests on'],
    ...[...sums].filter(([, { figure }]) => wanted(figure)).sort(([, a], [, b]) => b.sum - a.sum).slice(0, most).map(([name, { figure, sum, first }]) => [name, sum.toFixed(2), String(first), restsOn(figure)]),
  ]);
  const head = `Figures on which the leads of ${sensitivities.length} solved cases rest most (slope: log odds of leader to second per log odds of the figure)`;
  return `${head}\n${table((figure) => figure.kind !== 'how-often', 25)}\n\nHow often, likewise\n${table((figure) => figure.kind === 'how-often', 8)}`;
}

function leadsText(): string {
  const bases = sensitivities.flatMap(({ lead }) => statedFigures(lead).slice(0, 1).map(({ figure }) => restsOn(figure)));
  const unsourced = bases.filter((basis) => !basis.startsWith('source')).length;
  const rows = [...sensitivities].sort((a, b) => a.lead.margin - b.lead.margin).map(({ id, lead }) => {
    const [top] = statedFigures(lead);
    return [id, lead.lead, lead.second, (DECIBANS * lead.margin).toFixed(1), top ? nameOf(top.figure) : 'none', top ? top.slope.toFixed(2) : '', top ? restsOn(top.figure) : ''];
  });
  return `The lead of each solved case, narrowest first; in ${unsourced} of ${bases.length} the weightiest link or leak has no source of its own\n${tableOfText([['case', 'leader', 'second', 'lead dB', 'weightiest figure', 'slope', 'rests on'], ...rows])}`;
}

function statedFigures(lead: SensitivityOfLead): SensitivityOfLead['figures'] {
  return lead.figures.filter(({ figure }) => figure.kind !== 'how-often');
}

function nameOf(figure: Figure): string {
  switch (figure.kind) {
    case 'how-often': return `how often ${figure.cause}`;
    case 'without-cause': return `${figure.about} without known cause`;
    case 'link': return `${figure.cause} → ${figure.about}`;
    case 'follows': return `${figure.from} ⇒ ${figure.about}`;
    default: return impossible(figure);
  }
}

function restsOn(figure: Figure): string {
  switch (figure.kind) {
    case 'how-often': return 'class';
    case 'without-cause': return 'class';
    case 'link': return basisText((knowledge.symptoms[figure.about]?.links[figure.cause] ?? knowledge.checks[figure.about]?.yes[figure.cause] ?? knowledge.checks[figure.about]?.reads[figure.cause])?.basis);
    case 'follows': return basisText(knowledge.symptoms[figure.about]?.followsFrom[figure.from]?.basis);
    default: return impossible(figure);
  }
}

function basisText(basis: Basis | undefined): string {
  if (basis === undefined) return 'nothing';
  if ('source' in basis) return `source ${basis.source}`;
  return 'practice' in basis ? 'common practice' : 'estimate';
}

function impossible(figure: never): never {
  throw new Error(`review: got figure ${JSON.stringify(figure)}, expected one of the kinds of sensitivity-of-lead.ts`);
}
