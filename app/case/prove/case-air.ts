'use client';
import { useEffect, useMemo, useState } from 'react';
import { readAirPath, type AirPath, type AirPathResult, type OutletResult } from '@/lib/airflow';
import type { CaseFile, Round } from '@/lib/cases';
import { compareAirOptions } from '@/lib/decision';
import { formatValue, preferredUnit } from '@/lib/units';
import { caseReadings } from '../../air/case-readings';
import { useFearedOfCase } from '../../air/faults-of-case';
import { beforeChangeOf } from '../../air/fitted-sheet';
import type { PlotAir } from './direction-plots';

/** The air path of a case as it was described, and what it gives. */
export interface CaseAir {
  readonly path: AirPath;
  readonly result: AirPathResult;
}

/**
 * The air path of a case as it was before the change of a round, with the readings taken until then; without a round, before the
 * first change that was fitted: as it was found.
 */
export function useCaseAir(file: CaseFile, round?: number): CaseAir | undefined {
  const then = useMemo(() => beforeChangeOf(file, round ?? file.rounds.find((each) => each.fittedOn !== undefined)?.number ?? Infinity), [file, round]);
  const text = useMemo(() => (then.airPath === undefined ? undefined : JSON.stringify(caseReadings(then.airPath, then))), [then]);
  const read = useMemo(() => (text === undefined ? undefined : readAirPath(text)), [text]);
  const feared = useFearedOfCase(text === undefined ? undefined : then);
  const [found, setFound] = useState<{ readonly of: unknown; readonly air: CaseAir }>();
  useEffect(() => {
    if (!read?.value) return;
    const { value, problems } = read;
    const timer = setTimeout(() => setFound({ of: read, air: { path: value, result: compareAirOptions(value, problems, feared === undefined ? {} : { faults: feared.faults }) } }), 60);
    return () => clearTimeout(timer);
  }, [read, feared]);
  return found && found.of === read ? found.air : undefined;
}

/** The air at the outlets that face a side of the part, before and with the change of a round. */
export function plotAir(air: AirPathResult | undefined, round: Round, units: 'metric' | 'imperial'): PlotAir | undefined {
  const chosen = air?.options.find((option) => option.title === round.option);
  if (!air || !chosen) return undefined;
  const arrows = (outlets: readonly OutletResult[]): PlotAir['before'] => outlets.flatMap((outlet) => {
    const from = sideOf(outlet.direction);
    return from === undefined ? [] : [{ from, speed: outlet.speed.value, words: formatValue(outlet.speed.value, preferredUnit('speed', units), 2) }];
  });
  return { before: arrows(air.outlets), after: arrows(chosen.outlets) };
}

/** The side of the machine on which an outlet stands, rad from +X against the clock; undefined between two sides. */
function sideOf(direction: number): PlotAir['before'][number]['from'] | undefined {
  const quarter = direction / (Math.PI / 2);
  const nearest = Math.round(quarter);
  if (Math.abs(quarter - nearest) > 0.25) return undefined;
  return (['right', 'back', 'left', 'front'] as const)[((nearest % 4) + 4) % 4];
}
