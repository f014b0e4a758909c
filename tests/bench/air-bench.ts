import { readFileSync } from 'node:fs';
import { readAirPath } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';

export interface BenchRow {
  readonly name: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly target: number;
}

/** Times the whole comparison of the demo path: without readings, with readings, and the coarse one while a size is dragged. */
export function airBench(): Promise<BenchRow[]> {
  const path = readAirPath(readFileSync(`${import.meta.dirname}/../scenarios/greenhouse-hinge/air-path.json`, 'utf8')).value;
  if (path === undefined) throw new Error('air bench: the demo path does not read');
  const bare = { ...path, measured: [] };
  return Promise.resolve([
    timed('air path: all options, 2,000 samples', 30, () => compareAirOptions(bare)),
    timed('air path: all options, 2,000 samples, after readings', 60, () => compareAirOptions(path)),
    timed('air path: all options, 400 samples while dragging', 16, () => compareAirOptions(bare, [], { samples: 400 })),
  ]);
}

function timed(name: string, target: number, run: () => unknown): BenchRow {
  for (let k = 0; k < 15; k += 1) run();
  const times = Array.from({ length: 41 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { name, medianMs: times[20] ?? 0, p95Ms: times[38] ?? 0, target };
}
