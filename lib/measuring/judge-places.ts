/** One place of a proof print: reading before and after the change, each with its 95 % half-width, one unit throughout. */
export interface PlaceReading {
  readonly place: string;
  readonly before: { readonly value: number; readonly plusMinus: number } | undefined;
  readonly after: { readonly value: number; readonly plusMinus: number };
}

export interface PlaceJudged extends PlaceReading {
  /** Within the limit; `unsure` when the interval reaches across it. */
  readonly keeps: 'yes' | 'unsure' | 'no';
  /** Change that is larger than the uncertainty of both readings together. */
  readonly moved: 'down' | 'up' | 'not-surely';
}

export interface ProofJudged {
  readonly verdict: 'cured' | 'better' | 'no-change' | 'worse';
  readonly places: readonly PlaceJudged[];
  /** Places still beyond the limit, worst first. */
  readonly left: readonly PlaceJudged[];
}

/**
 * Judges a change by several places of one proof print against a limit that was fixed before. `good` says on which side of the
 * limit a reading is good; the words below are for "at most".
 *
 * Cured: every reading is at or below the limit. Better: not cured, more places fell than rose, and at least one fell by
 * more than the uncertainty of both readings together (root of the sum of squares). Worse: more places rose than fell.
 * Otherwise no change. Any unit; throws without readings.
 * Worked: limit 0.30; 1.42 ± 0.08 to 0.21 ± 0.08 and 1.10 ± 0.08 to 0.42 ± 0.08 is "better", with the second left.
 */
export function judgePlaces(readings: readonly PlaceReading[], limit: number, good: 'at-most' | 'at-least' = 'at-most'): ProofJudged {
  if (readings.length === 0) throw new Error('judgePlaces: got no readings, expected at least one place');
  if (good === 'at-least') return turned(judgePlaces(readings.map((reading) => turnedReading(reading)), -limit));
  const places = readings.map((reading): PlaceJudged => ({ ...reading, keeps: keepsLimit(reading.after, limit), moved: movedOf(reading) }));
  const left = places.filter((place) => place.after.value > limit).sort((a, b) => b.after.value - a.after.value);
  const fell = places.filter((place) => place.moved === 'down').length;
  const rose = places.filter((place) => place.moved === 'up').length;
  const verdict = left.length === 0 ? 'cured' : rose > fell ? 'worse' : fell > rose ? 'better' : 'no-change';
  return { verdict, places, left };
}

function turnedReading<T extends PlaceReading>(reading: T): T {
  const turn = <V extends { readonly value: number }>(each: V): V => ({ ...each, value: -each.value });
  return { ...reading, before: reading.before && turn(reading.before), after: turn(reading.after) };
}

function turned({ verdict, places, left }: ProofJudged): ProofJudged {
  const back = (place: PlaceJudged): PlaceJudged => ({ ...turnedReading(place), moved: place.moved === 'down' ? 'up' : place.moved === 'up' ? 'down' : 'not-surely' });
  return { verdict, places: places.map(back), left: left.map(back) };
}

function keepsLimit({ value, plusMinus }: PlaceReading['after'], limit: number): PlaceJudged['keeps'] {
  if (value + plusMinus <= limit) return 'yes';
  return value - plusMinus > limit ? 'no' : 'unsure';
}

function movedOf({ before, after }: PlaceReading): PlaceJudged['moved'] {
  if (before === undefined) return 'not-surely';
  const doubt = Math.hypot(before.plusMinus, after.plusMinus);
  const change = after.value - before.value;
  if (Math.abs(change) <= doubt) return 'not-surely';
  return change < 0 ? 'down' : 'up';
}
