import type { PathVariant } from './path-network';
import { pressureOfOne, throughFirst } from './sampled-pair';
import type { SampledPath } from './sampled-path';

/** One of two fans in every sample: what flows through it, m³/s, its static pressure, Pa, and its free flow by itself, m³/s. */
export interface FanAtWork {
  readonly name: string;
  /** Below 0 where the other fan pushes air back through it. */
  readonly flow: Float64Array;
  /** Below 0 where the other fan's air drives it. */
  readonly pressure: Float64Array;
  readonly freeFlow: Float64Array;
}

/** What each of two fans does in every sample of a solved path; nothing for a fan alone. */
export function fansAtWork({ fan }: PathVariant, path: SampledPath): FanAtWork[] {
  if (fan.arrangement === 'single') return [];
  const names = fan.second === undefined ? [`${fan.name}, first`, `${fan.name}, second`] as const : [fan.name, fan.second.name] as const;
  const [first, second] = flowsAndPressures(fan.arrangement, path);
  const { pair, freeFlow } = path.fan;
  const one = pair?.first.freeFlow ?? (fan.arrangement === 'parallel' ? freeFlow.map((flow) => flow / 2) : freeFlow);
  return [{ name: names[0], ...first, freeFlow: one }, { name: names[1], ...second, freeFlow: pair?.second.freeFlow ?? one }];
}

type Work = Pick<FanAtWork, 'flow' | 'pressure'>;

function flowsAndPressures(arrangement: 'series' | 'parallel' | 'own-ducts', { fan, flow, pressure, second }: SampledPath): readonly [Work, Work] {
  const { pair } = fan;
  switch (arrangement) {
    case 'own-ducts': {
      const other = second ?? { flow: new Float64Array(flow.length), pressure: new Float64Array(flow.length) };
      return [{ flow: flow.map((both, s) => both - (other.flow[s] ?? 0)), pressure }, other];
    }
    case 'series': {
      const half = pressure.map((both) => both / 2);
      if (pair === undefined) return [{ flow, pressure: half }, { flow, pressure: half }];
      return [{ flow, pressure: flow.map((through, s) => pressureOfOne(pair.first, s, through)) }, { flow, pressure: flow.map((through, s) => pressureOfOne(pair.second, s, through)) }];
    }
    case 'parallel': {
      const ofFirst = pair === undefined ? flow.map((both) => both / 2) : flow.map((both, s) => throughFirst(pair, s, both, pressure[s] ?? 0));
      return [{ flow: ofFirst, pressure }, { flow: flow.map((both, s) => both - (ofFirst[s] ?? 0)), pressure }];
    }
    default: return arrangement satisfies never;
  }
}
