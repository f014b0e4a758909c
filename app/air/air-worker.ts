import { readAirPath, type AirPathResult, type PathFaults } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';

/** An air-path file to reckon; a later one takes the place of an earlier one. */
export interface AirQuestion {
  readonly id: number;
  readonly text: string;
  /** Faults that the case fears; see `useFearedOfCase`. */
  readonly faults: PathFaults | undefined;
}

export interface AirAnswer {
  readonly id: number;
  readonly result: AirPathResult;
}

/** Joint samples for the first answer, while a hand may still be moving. */
const COARSE = 300;
/** Stillness after which the whole answer is reckoned, ms: longer than between two steps of a key that is held. */
const STILL = 140;

let latest = 0;

addEventListener('message', (event: MessageEvent<AirQuestion>) => {
  const { id, text, faults } = event.data;
  const feared = faults === undefined ? {} : { faults };
  latest = id;
  const { value, problems } = readAirPath(text);
  if (value === undefined) return;
  const tell = (result: AirPathResult): void => postMessage({ id, result } satisfies AirAnswer);
  tell(compareAirOptions(value, problems, { samples: COARSE, ...feared }));
  setTimeout(() => { if (latest === id) tell(compareAirOptions(value, problems, feared)); }, STILL);
});
