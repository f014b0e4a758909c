import { readContent } from '@/content/read-content';
import type { Knowledge } from '@/lib/knowledge';
import { problemAsText, stops } from '@/lib/problems';
import { additiveRulesRanker } from './evaluation/additive-rules';
import { bootstrapMean, type MeanWithInterval } from './evaluation/bootstrap';
import { exactRanker } from './evaluation/exact-ranker';
import { ownSourceHeldDownRanker } from './evaluation/own-source-held-down';
import { reliabilityTable } from './evaluation/probability-scores';
import { readSolvedCases, type SolvedCase } from './evaluation/read-solved-cases';
import { LOG_FLOOR, OTHER_FLOORS, pooledChances, scoreCases, type CaseScore } from './evaluation/score-rankers';
import { leaderStays } from './evaluation/leader-stays';
import { scoreWords, slowCall, type WordScore } from './evaluation/score-understanding';
import { singleFaultRanker } from './evaluation/single-fault';
import { structureOnly } from './evaluation/structure-only';
import { tableOfText } from './table-of-text';
import { endWith, wordsOfCommand } from './words-of-command';

/** Figures per case whose mean is shown: name, figure, decimals, and whether it is a share. */
const FIGURES: readonly { readonly name: string; readonly of: (score: CaseScore) => number; readonly share: boolean }[] = [
  { name: 'first', of: (score) => (score.rank <= 1 ? 1 : 0), share: true },
  { name: 'in first 3', of: (score) => (score.rank <= 3 ? 1 : 0), share: true },
  { name: 'mean 1/rank', of: (score) => 1 / score.rank, share: false },
  { name: 'recall', of: (score) => score.recall, share: true },
  { name: 'Brier', of: (score) => score.brier, share: false },
  { name: 'log score', of: (score) => score.log, share: false },
];

/** npm run -s evaluate -- [FOLDER] [--json]: the folder holds case files and sources.json; tests/cases when none is named. */
const { words: folders, json } = wordsOfCommand({ usage: 'npm run -s evaluate -- [FOLDER] [--json]', gives: 'Ranks solved cases and compares the ranking with simpler ones. The folder holds case files and sources.json; tests/cases when none is named.', options: ['--json'], most: 1 });
const content = readContent();
const knowledge = content.value?.knowledge ?? endWith(content.problems);
const reading = readSolvedCases(folders[0]);
for (const problem of reading.problems) console.error(problemAsText(problem));
if (!reading.value || stops(reading.problems)) endWith([]);
const cases = reading.value;
if (cases.length === 0) endWith([{ code: 'no-cases', level: 'stop', where: 'tests/cases', what: 'There is no case to evaluate.', next: 'Run this from a full checkout.' }]);
const rankers = [exactRanker(knowledge), singleFaultRanker(knowledge), additiveRulesRanker(knowledge), exactRanker(structureOnly(knowledge), 'structure only: exact, figures levelled'), ownSourceHeldDownRanker(knowledge, cases, 0.5), ownSourceHeldDownRanker(knowledge, cases, 0.12), ownSourceHeldDownRanker(knowledge, cases, 0)];
const scored: { name: string; scores: CaseScore[] }[] = [];
for (const ranker of rankers) scored.push({ name: ranker.name, scores: await scoreCases(ranker, cases, knowledge) });
const ours = scored[0]?.scores ?? [];
const words = scoreWords(cases, knowledge);
const groups = cases.map(({ where }) => where);
console.log(json ? JSON.stringify(asData(), null, 2) : asText());

function asData(): unknown {
  return {
    cases: cases.length,
    rankers: scored.map(({ name, scores }) => ({ name, figures: Object.fromEntries(FIGURES.map((figure) => [figure.name, bootstrapMean(scores.map(figure.of), { groups })])) })),
    perCase: ours.map((score) => ({ id: score.solved.id, confirmed: score.solved.confirmed, rank: Number.isFinite(score.rank) ? score.rank : null, first: score.ranked.ranking.slice(0, 3) })),
    understand: words.map((score) => ({ id: score.id, rank: Number.isFinite(score.rank) ? score.rank : null, ms: score.ms })),
  };
}

function asText(): string {
  return [headOfReport(cases, knowledge), rankerTable(), differenceTable(), floorsTable(), reliabilityText(), conflictText(), shakenText(), wordsText(words), domainTable(), caseTable(), missedTable()].join('\n\n');
}

function headOfReport(all: readonly SolvedCase[], base: Knowledge): string {
  const without = all.filter(({ confirmed }) => confirmed.length === 0).map(({ id }) => id);
  return [
    `${all.length} solved cases, ${Object.keys(base.causes).length} causes.`,
    `Confirmed cause has a page: ${all.length - without.length} of ${all.length}${without.length > 0 ? ` (none: ${without.join(', ')}; counted as missed everywhere)` : ''}.`,
    `In brackets: 95 % interval, drawn anew 2000 times from the ${new Set(groups).size} places where they are told. Brier and log score over all causes of each case; chances held within ${LOG_FLOOR} and ${1 - LOG_FLOOR} for the log score.`,
    'The writers of the pages knew these failures, and many links cite them: expect less from failures that nobody has seen yet. The last three rows hold down, and at last leave out, what cites the case itself.',
  ].join('\n');
}

function rankerTable(): string {
  return tableOfText([['', ...FIGURES.map((figure) => figure.name)], ...scored.map(({ name, scores }) => [name, ...FIGURES.map((figure) => shown(bootstrapMean(scores.map(figure.of), { groups }), figure.share))])]);
}

function differenceTable(): string {
  const rows = scored.slice(1).map(({ name, scores }) => [`less ${name}`, ...FIGURES.map((figure) => shown(bootstrapMean(scores.map((score, index) => figure.of(ours[index] ?? score) - figure.of(score)), { groups }), figure.share))]);
  return `Difference case by case (paired; for Brier and log score, below nought is better)\n${tableOfText([['Leeward', ...FIGURES.map((figure) => figure.name)], ...rows])}`;
}

/** Holding chances away from 0 and 1 forgives sharp answers that are wrong, and charges for every small chance that is right. */
function floorsTable(): string {
  const rows = scored.slice(0, 4).map(({ name, scores }) => [name, ...OTHER_FLOORS.map((_, index) => shown(bootstrapMean(scores.map((score) => score.logAt[index] ?? NaN), { groups }), false))]);
  return `Log score with chances held further from 0 and 1\n${tableOfText([['', ...OTHER_FLOORS.map((floor) => `within ${floor}`)], ...rows])}`;
}

function shown({ mean, low, high }: MeanWithInterval, share: boolean): string {
  const text = (value: number): string => (share ? (100 * value).toFixed(1) : value.toFixed(4));
  return `${text(mean)}${share ? ' %' : ''} [${text(low)} … ${text(high)}]`;
}

function reliabilityText(): string {
  const { chances, so } = pooledChances(ours, knowledge);
  const table = reliabilityTable(chances, so);
  const rows = table.rows.map((row) => [`${row.from.toFixed(1)}–${row.to.toFixed(1)}`, String(row.count), row.count === 0 ? '' : row.stated.toFixed(3), row.count === 0 ? '' : row.came.toFixed(3)]);
  return `Do stated chances hold (Leeward, every cause of every case)\n${tableOfText([['chance', 'forecasts', 'stated', 'came true'], ...rows])}\nmean gap ${table.meanGap.toFixed(4)}, reliability ${table.reliability.toFixed(5)}, resolution ${table.resolution.toFixed(5)}, uncertainty ${table.uncertainty.toFixed(5)}`;
}

function conflictText(): string {
  const answered = ours.flatMap(({ ranked }) => (ranked.diagnosis ? [ranked.diagnosis] : []));
  const unanswered = ours.filter(({ ranked }) => !ranked.diagnosis).map(({ solved }) => solved.id);
  const odd = answered.filter((diagnosis) => diagnosis.conflict > 2).length;
  const unexplained = bootstrapMean(answered.map((diagnosis) => diagnosis.unexplained.share));
  return `Answers that contradict each other (conflict above 2): ${odd} of ${answered.length}. Unexplained share of what was seen, mean: ${shown(unexplained, true)}.${unanswered.length > 0 ? ` Too dense to answer: ${unanswered.join(', ')}.` : ''}`;
}

function shakenText(): string {
  const kept = ours.flatMap(({ ranked }) => (ranked.diagnosis ? [leaderStays(ranked.diagnosis)] : []));
  return `Figures shaken (log odds by 0.5, 100 copies): the leader keeps its place in ${shown(bootstrapMean(kept), true)} of the copies, mean over the cases; by the chance of being there at all.`;
}

function wordsText(scores: readonly WordScore[]): string {
  if (scores.length === 0) return 'Understanding: no case has words.';
  const worst = [...scores].filter((score) => score.rank > 5).sort((a, b) => b.rank - a.rank || (a.id < b.id ? -1 : 1)).slice(0, 10);
  return [
    `Understanding of the words of ${scores.length} cases: something that was seen is among the first five in ${shown(bootstrapMean(scores.map((score) => (score.rank <= 5 ? 1 : 0))), true)}; p95 ${slowCall(scores).toFixed(2)} ms a call.`,
    ...(worst.length === 0 ? [] : ['Ten worst misses']),
    ...worst.map((score) => `  ${score.id}  place ${Number.isFinite(score.rank) ? score.rank : 'none'}: "${score.words.slice(0, 110)}"\n        seen: ${score.seen.join(', ')}\n        first five: ${score.firstFive.join(', ')}`),
  ].join('\n');
}

function domainTable(): string {
  const domains = [...new Set(cases.map(({ domain }) => domain))].sort();
  const rows = domains.map((domain) => {
    const inside = ours.filter(({ solved }) => solved.domain === domain);
    return [domain, String(inside.length), String(inside.filter(({ rank }) => rank <= 1).length), String(inside.filter(({ rank }) => rank <= 3).length)];
  });
  return tableOfText([['domain', 'cases', 'first', 'in first 3'], ...rows]);
}

function caseTable(): string {
  return tableOfText([['case', 'confirmed', 'rank', 'chance'], ...ours.map(({ solved, rank, ranked }) => [solved.id, solved.confirmed.join(' + ') || '(no page)', Number.isFinite(rank) ? String(rank) : '–', solved.confirmed.map((id) => (ranked.chances.get(id) ?? 0).toFixed(3)).join(' ')])]);
}

function missedTable(): string {
  const missed = ours.filter(({ rank }) => rank > 1);
  const line = ({ solved, rank, ranked }: CaseScore): string => `  ${solved.id}  ${solved.confirmed.join(' + ') || '(no page)'} is at ${Number.isFinite(rank) ? rank : '–'}; before it: ${ranked.ranking.filter((id) => !solved.confirmed.includes(id)).slice(0, Math.min(3, rank - 1)).map((id) => `${id} ${(ranked.chances.get(id) ?? 0).toFixed(2)}`).join(', ')}`;
  return [`Not first: ${missed.length} of ${ours.length}`, ...missed.map(line)].join('\n');
}
