import type { Circumstances, Touched } from '@/lib/knowledge';
import { TOUCHED_WORDS } from '../_parts/touched-words';

/**
 * How much likelier or rarer a cause is in some circumstances, in a sentence. The odds factor is said as if it were a factor
 * of the chance, which it nearly is for causes that start from a few per cent; the factor itself stands beside the sentence.
 * `{ fanMarking: ['none'] }` and 2: "When the part fan has no label, this cause is about twice as likely."
 */
export function timesAsLikely(when: Circumstances, odds: number): string {
  const where = whereWords(when).join(' and ');
  return `${where.charAt(0).toUpperCase()}${where.slice(1)}, this cause is ${factorWords(odds)}.`;
}

/** "with PLA or PETG", "after a change of the nozzle": one phrase for each fact that is asked for. */
function whereWords({ material, kinematics, feedPath, enclosure, supply, touched, onset, fanMarking }: Circumstances): string[] {
  return [
    ...(material ? [`with ${either(material.map((each) => (each === 'filled' ? 'fibre-filled plastic' : each)))}`] : []),
    ...(kinematics ? [`on a machine with ${either(kinematics.map((each) => MOVES[each]))}`] : []),
    ...(feedPath ? [`with ${either(feedPath.map((each) => FEEDS[each]))}`] : []),
    ...(enclosure ? [`in ${either(enclosure.map((each) => (each === 'open' ? 'an open machine' : 'a closed machine')))}`] : []),
    ...(supply ? [`on ${either(supply)}`] : []),
    ...(touched ? [either([...changed(touched), ...(touched.includes('moved') ? ['after the machine was moved'] : []), ...(touched.includes('nothing') ? ['when nothing was changed shortly before'] : [])])] : []),
    ...(onset ? [`when it ${either(onset.map((each) => BEGAN[each]))}`] : []),
    ...(fanMarking ? [`when the part fan ${either(fanMarking.map((each) => MARKED[each]))}`] : []),
  ];
}

const MOVES = { 'moving-bed': 'a bed that moves in Y', 'crossed-belts': 'crossed belts', delta: 'delta arms' } as const;
const FEEDS = { short: 'the feeder on the head', long: 'a long tube between feeder and head' } as const;
const BEGAN = { always: 'was so from the first print', suddenly: 'began suddenly', gradually: 'came bit by bit', sometimes: 'comes and goes' } as const;
const MARKED = { full: 'has a full label', part: 'has a label with only voltage or current', none: 'has no label' } as const;

function changed(touched: readonly Touched[]): string[] {
  const parts = touched.filter((each) => each !== 'moved' && each !== 'nothing').map((each) => TOUCHED_WORDS[each]);
  return parts.length === 0 ? [] : [`after a change of ${either(parts)}`];
}

function either(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1] ?? ''}`;
}

function factorWords(odds: number): string {
  if (odds === 2) return 'about twice as likely';
  if (odds >= 1) return `about ${odds} times as likely`;
  return `about ${Number((1 / odds).toPrecision(2))} times rarer`;
}
