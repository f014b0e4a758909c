import type { MinutesToCure } from '@/lib/diagnosis';
import { formatMinutes } from '@/lib/units';
import { TimeBars, shownShare } from '../_charts';
import { FitWidth } from '../_parts/fit-width';

/** A change of the chance of a cure from which on it is worth a word. */
const MORE_CURED = 0.02;
/** A saving on parts from which on it is worth a word, in the currency of the pages. */
const LEAST_PARTS = 1;

/** What taking the check first is worth, in one sentence, and the two times under it; nothing where there is nothing to say. */
export function TimeToCure({ minutes }: { readonly minutes: MinutesToCure | undefined }) {
  const worth = worthWords(minutes);
  if (worth === undefined || minutes?.after === undefined) return null;
  const { now, after } = minutes;
  return (
    <div className="next-times">
      <p>{worth}</p>
      <p className="label">Average time until it is cured or you give up</p>
      <FitWidth usual={300}>{(width) => <TimeBars now={now.minutes} after={after.minutes} width={width} />}</FitWidth>
    </div>
  );
}

/**
 * What the check is worth when it is taken before any change: time, price of parts and chance of a cure against changes
 * alone. Undefined when it neither saves a minute or a part nor makes a cure likelier. From 89 min and 28 % to 135 min and 40 %:
 * "Checking first raises the chance of a cure from 28 % to 40 %, but takes 46 min longer on average."
 */
export function worthWords(minutes: MinutesToCure | undefined): string | undefined {
  if (minutes?.after === undefined) return undefined;
  const { now, after } = minutes;
  const saved = now.minutes - after.minutes;
  // Both times stand under the sentence in whole minutes: their difference must be the one that is told.
  const told = formatMinutes(Math.abs(Math.round(now.minutes) - Math.round(after.minutes)));
  const more = after.cured - now.cured;
  const chance = `the chance of a cure from ${shownShare(now.cured)} to ${shownShare(after.cured)}`;
  const parts = Math.round(now.money - after.money);
  if (saved >= 1 || (parts >= LEAST_PARTS && saved > -1)) {
    const saves = `Checking first saves ${[...(saved >= 1 ? [told] : []), ...(parts >= LEAST_PARTS ? [`about ${parts} € for parts`] : [])].join(' and ')} on average`;
    if (more >= MORE_CURED) return `${saves} and raises ${chance}.`;
    return more <= -MORE_CURED ? `${saves}, but lowers ${chance}.` : `${saves}.`;
  }
  if (more < MORE_CURED) return undefined;
  return `Checking first raises ${chance}${saved <= -1 ? `, but takes ${told} longer on average` : ''}.`;
}
