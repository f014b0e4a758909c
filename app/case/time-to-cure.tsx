import { costOf, type Ahead, type MinutesToCure } from '@/lib/diagnosis';
import { formatMinutes } from '@/lib/units';
import { TimeBars, shownShare } from '../_charts';
import { FitWidth } from '../_parts/fit-width';

/** A change of the chance of a cure from which on it is worth a word. */
const MORE_CURED = 0.02;
/** A difference in parts from which on it is worth a word, in the currency of the pages. */
const LEAST_PARTS = 1;

/** What taking the check first is worth, in a sentence or two, and the two times under it; nothing where there is nothing to say. */
export function TimeToCure({ ahead }: { readonly ahead: Ahead | undefined }) {
  const worth = worthWords(ahead);
  if (worth === undefined || ahead === undefined) return null;
  return (
    <div className="next-times">
      <p>{worth}</p>
      <p className="label">Average time until it is cured or you give up, with changes alone from there. The plan also weighs the checks after this one, so its figures differ.</p>
      <FitWidth usual={300}>{(width) => <TimeBars now={ahead.now.minutes} after={ahead.after.minutes} width={width} />}</FitWidth>
    </div>
  );
}

/**
 * What the check is worth when it is taken before any change: time, price of parts and chance of a cure against changes
 * alone. Undefined when it neither saves a minute or a part nor makes a cure likelier. A cure becomes less likely only where
 * the answer shows that going on costs more than giving up: that is said with it. From 89 min and 28 % to 135 min and 40 %:
 * "Checking first raises the chance of a cure from 28 % to 40 %, but takes 46 min longer on average."
 */
export function worthWords(ahead: Ahead | undefined): string | undefined {
  if (ahead === undefined) return undefined;
  const { now, after } = ahead;
  // Both times stand under the sentence in whole minutes: their difference must be the one that is told.
  const minutes = Math.abs(now.minutes - after.minutes) < 1 ? 0 : Math.round(now.minutes) - Math.round(after.minutes);
  const parts = Math.round(now.money - after.money);
  const more = after.cured - now.cured;
  const saves = joined([...(minutes >= 1 ? [formatMinutes(minutes)] : []), ...(parts >= LEAST_PARTS ? [`about ${parts} € for parts`] : [])]);
  const costs = joined([...(minutes <= -1 ? [`takes ${formatMinutes(-minutes)} longer`] : []), ...(parts <= -LEAST_PARTS ? [`costs about ${-parts} € more for parts`] : [])]);
  const betters = more >= MORE_CURED ? [`raises the chance of a cure from ${shownShare(now.cured)} to ${shownShare(after.cured)}`]
    : now.left - after.left >= MORE_CURED ? [`leaves ${shownShare(after.left)} of the trouble instead of ${shownShare(now.left)}`] : [];
  const gains = joined([...(saves === '' ? [] : [`saves ${saves} on average`]), ...betters]);
  if (gains === '') return undefined;
  const worth = `Checking first ${gains}${costs === '' ? '' : `, but ${costs}${saves === '' ? ' on average' : ''}`}.`;
  return more > -MORE_CURED ? worth : `${worth} It can also show that going on costs more than giving up: if no other check follows, ${shownShare(after.cured)} are cured instead of ${shownShare(now.cured)}.`;
}

/** Changes alone beside this check taken first; undefined where that was not reckoned. */
export function aheadOf(check: string, minutes: MinutesToCure | undefined): Ahead | undefined {
  const after = minutes?.withCheck.get(check);
  return minutes === undefined || after === undefined ? undefined : { now: minutes.now, after };
}

/** All of it as minutes, for a row of a table: "46 min", or "nothing" where the check does not pay by itself. */
export function savesWords(ahead: Ahead | undefined): string {
  const minutes = ahead === undefined ? 0 : Math.round(costOf(ahead.now) - costOf(ahead.after));
  return minutes < 1 ? 'nothing' : formatMinutes(minutes);
}

function joined(words: readonly string[]): string {
  return words.join(' and ');
}
