import type { Finding, Observation, StoredMeasured } from '@/lib/cases';
import type { Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { findUnit, formatMeasured, fromUnit, preferredUnit, spanFromUnit } from '@/lib/units';

export type BalloonShape = 'seen' | 'measured' | 'not-seen' | 'cant-tell' | 'casebook';

/** The shape of a fact's balloon: circle seen, square measured, struck circle not seen. */
export function shapeOf(item: Evidence): BalloonShape {
  if (item.kind === 'symptom') return item.seen ? 'seen' : 'not-seen';
  return item.kind === 'reading' || item.yes ? 'measured' : 'not-seen';
}

/** What a fact says, in a few words. */
export function factTitle(item: Evidence, knowledge: Knowledge): string {
  if (item.kind === 'symptom') return knowledge.symptoms[item.about]?.title ?? item.about;
  const check = knowledge.checks[item.about];
  if (item.kind === 'answer') return check?.answer.kind === 'yes-no' ? (item.yes ? check.answer.yesMeans : check.answer.noMeans) : (check?.asks ?? item.about);
  return check?.asks ?? item.about;
}

/** The second line of a fact: where, how bad, or the reading. */
export function factDetail(item: Evidence, knowledge: Knowledge, units: 'metric' | 'imperial' = 'metric'): string {
  const round = item.round > 1 ? [`round ${item.round}`] : [];
  if (item.kind === 'symptom') return [item.seen ? 'seen' : 'not seen', ...(item.seen ? placeWords(item.observation, knowledge) : []), ...round].join(' · ');
  return [...findingWords(item.finding, units), ...round].join(' · ');
}

/** "seen in round 1, gone in round 2": what every round said of one thing, first to last. */
export function historyWords(words: readonly Evidence[], units: 'metric' | 'imperial' = 'metric'): string {
  return words.map((item, place) => `${wordOf(item, words[place - 1], units)} in round ${item.round}`).join(', ');
}

function wordOf(item: Evidence, before: Evidence | undefined, units: 'metric' | 'imperial'): string {
  if (item.kind === 'answer') return item.yes ? 'yes' : 'no';
  if (item.kind === 'reading') return item.finding.result ? measuredWords(item.finding.result, units) : 'measured';
  const wasSeen = before?.kind === 'symptom' && before.seen;
  return item.seen ? (wasSeen ? 'still there' : 'seen') : (wasSeen ? 'gone' : 'not seen');
}

/** A stored measurement as people read it: value and ± with the same decimals. */
export function measuredWords(stored: StoredMeasured, units: 'metric' | 'imperial' = 'metric'): string {
  const unit = findUnit(stored.unit, stored.quantity);
  if (unit === undefined) return `${stored.value} ${stored.unit}`;
  const shown = units === 'imperial' ? preferredUnit(stored.quantity, 'imperial') : unit;
  return formatMeasured({ kind: stored.quantity, value: fromUnit(stored.value, unit), plusMinus: spanFromUnit(stored.plusMinus, unit) }, shown);
}

function placeWords(observation: Observation, knowledge: Knowledge): string[] {
  return [
    ...(observation.faces === undefined ? [] : [`faces ${observation.faces.replace('-', ' ')}`]),
    ...(observation.startsAt ? [`from ${observation.startsAt.value} ${observation.startsAt.unit} up`] : []),
    ...(observation.severity === undefined ? [] : [knowledge.symptoms[observation.symptom]?.grades?.[observation.severity] ?? observation.severity]),
  ];
}

function findingWords(finding: Finding, units: 'metric' | 'imperial'): string[] {
  if (finding.result) return [`measured ${measuredWords(finding.result, units)}`, ...(finding.comparedWith ? [`against ${measuredWords(finding.comparedWith, units)}`] : [])];
  // What was found stands in the title, for a no as for a yes.
  return [finding.answer === 'cant-tell' ? 'can’t tell' : 'checked'];
}
