import { PRANDTL_NUMBER_OF_AIR, conductivityOfAir, roundJetConvection, shareAtStall, slotJetConvection, viscosityOfAir, type Air, type AirRemark, type PathVariant, type SampledPath } from '@/lib/airflow';
import { wettedReach } from '@/lib/cooling';
import { FILM_TEMPERATURE } from './air-samples';
import type { MostLikelyPoint } from './most-likely-points';

/** From this share of the samples on, a side of the stall counts as possible. */
const POSSIBLE = 0.02;

/**
 * What the figures of today's path rest on and do not show themselves, as sentences. Told are: a fan that may stall on
 * this duct, or does, and jets outside the range in which the law of heat transfer was measured.
 */
export function remarksOf(today: PathVariant, path: SampledPath, points: readonly MostLikelyPoint[], air: Air): AirRemark[] {
  return [
    ...stallRemark(path, points).map((sentence): AirRemark => ({ about: 'stall', sentence })),
    ...rangeRemark(today, points, air).map((sentence): AirRemark => ({ about: 'law', sentence })),
  ];
}

function stallRemark({ fan, flow }: SampledPath, points: readonly MostLikelyPoint[]): string[] {
  const stall = fan.table === undefined ? 0 : shareAtStall(fan.table);
  if (stall === 0) return [];
  let low = 0;
  for (let s = 0; s < flow.length; s += 1) if ((flow[s] ?? 0) <= stall * (fan.freeFlow[s] ?? 0)) low += 1;
  const share = low / flow.length;
  if (share > 1 - POSSIBLE) return ['This fan works in its stall: on the rising side of its curve, with little flow and more noise. A wider duct, or a fan for more pressure, takes it out of there.'];
  const isNear = points.some(({ point }) => point.remarks.includes('stall-near'));
  if (share < POSSIBLE && !isNear) return [];
  return [`This fan may stall on this duct: its curve rises in the middle, and in ${Math.round(100 * share)} % of the samples it works below that. It can jump between two flows while it runs, so the range of its flow holds both.`];
}

/** Laws of heat transfer by jets: which of their ranges the jets leave, at the most likely point. */
function rangeRemark({ outlets }: PathVariant, points: readonly MostLikelyPoint[], air: Air): string[] {
  const film = { kinematicViscosity: (viscosityOfAir(FILM_TEMPERATURE) / air.density) * (FILM_TEMPERATURE / 298.15), conductivity: conductivityOfAir(FILM_TEMPERATURE), prandtl: PRANDTL_NUMBER_OF_AIR };
  const flags = points.flatMap(({ point, outletIndices }) => point.outlets.flatMap(({ jetSpeed }, k) => {
    const outlet = outlets[outletIndices[k] ?? -1];
    if (outlet === undefined) return [];
    const { mouth, distance } = outlet;
    const short = Math.min(mouth.width.value, mouth.height.value);
    const reach = wettedReach(short);
    const { reynolds } = mouth.shape === 'circle' ? roundJetConvection(short, jetSpeed, distance.value, reach, film) : slotJetConvection(short, jetSpeed, distance.value, reach, film);
    return [{ reynolds, least: mouth.shape === 'circle' ? 2000 : 3000 }];
  })).filter(({ reynolds, least }) => reynolds < least);
  const [slowest] = [...flags].sort((a, b) => a.reynolds - b.reynolds);
  if (slowest === undefined) return [];
  return [`The law of heat transfer was measured on faster jets (Reynolds number ${slowest.least} and more; here ${Math.round(slowest.reynolds / 10) * 10}). It is carried on below that, and its give or take of a fifth counts in every chance.`];
}
