import { quantile } from '../evaluation/bootstrap';

/** One line of the bench: times in ms, and the median that is to be reached (Infinity: a yardstick only). */
export interface BenchRow {
  readonly name: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly target: number;
  readonly note?: string;
}

export interface TimedOptions {
  readonly runs?: number;
  /** Runs before the clock starts, so that the compiler has seen the code. */
  readonly warmUp?: number;
  readonly note?: string;
}

/** Times one piece of work on a warm engine. `run` gets the number of the run, so that it can take turns over inputs. */
export function timed(name: string, target: number, run: (turn: number) => unknown, options: TimedOptions = {}): BenchRow {
  for (let turn = 0; turn < (options.warmUp ?? 15); turn += 1) run(turn);
  const times = Array.from({ length: options.runs ?? 61 }, (_, turn) => {
    const start = performance.now();
    run(turn);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { name, medianMs: quantile(times, 0.5), p95Ms: quantile(times, 0.95), target, ...(options.note === undefined ? {} : { note: options.note }) };
}
