'use client';
import Link from 'next/link';
import type { AirPathResult, Band, PathReading } from '@/lib/airflow';
import { formatRange, formatValue, toUnit, type UnitSymbol } from '@/lib/units';
import { CurveChart } from '../_charts';
import { FitWidth } from '../_parts/fit-width';
import { BandChange } from './band-change';
import { flowUnitOf } from './air-views';

interface ChangedRow {
  readonly name: string;
  readonly unit: UnitSymbol;
  readonly before: Band;
  readonly after: Band;
  readonly read: readonly PathReading[];
}

/** What the readings changed: every quantity before and after them, and the fan's curve. */
export function ReadingsChanged({ result, units, speedUnit }: { readonly result: AirPathResult; readonly units: 'metric' | 'imperial'; readonly speedUnit: UnitSymbol }) {
  const before = result.beforeReadings;
  if (before === undefined) return null;
  const flowUnit = flowUnitOf(units);
  const rows = rowsOf(result, before, flowUnit, speedUnit);
  const curve = (points: readonly { readonly flow: number; readonly pressure: number }[]): { x: number; y: number }[] => points.map((point) => ({ x: toUnit(point.flow, flowUnit), y: point.pressure }));
  return (
    <section className="region" aria-labelledby="readings-changed">
      <h2 id="readings-changed">What the readings changed</h2>
      {result.conflicts.length > 0 && (
        <div className="problem" role="note">
          <p><b>These do not fit together.</b></p>
          {result.conflicts.map((conflict) => <p key={conflict.sentence}>{conflict.sentence}</p>)}
          <p><Link href="/bench">Take it again at the bench</Link></p>
        </div>
      )}
      <div className="air-changed">
        <table className="plain">
          <thead><tr><th scope="col">quantity</th><th scope="col">thin and open: before. Heavy and full: after. Flag: the reading</th><th scope="col" className="number">before</th><th scope="col" className="number">after</th></tr></thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.name}>
                <td>{row.name}</td>
                <td className="air-changed-bar"><FitWidth usual={320}>{(width) => <BandChange {...scaled(row)} name={row.name} width={Math.min(width, 420)} />}</FitWidth></td>
                <td className="number">{formatRange(row.before.low, row.before.high, row.unit)}</td>
                <td className="number"><b>{formatRange(row.after.low, row.after.high, row.unit)}</b></td>
              </tr>
            ))}
          </tbody>
        </table>
        <FitWidth usual={520}>{(width) => (
          <CurveChart
            width={Math.min(width, 560)} height={300} flowAxis={`flow, ${flowUnit}`}
            curves={[
              { name: 'fan as entered', of: 'fan', fitted: false, points: curve(before.fanCurve.middle) },
              { name: 'fan after the readings', of: 'fan', fitted: true, points: curve(result.fanCurve.middle) },
              { name: 'duct', of: 'duct', fitted: true, points: curve(result.ductCurve) },
            ]}
            points={([['1', 'before', before.today], ['2', 'after', result.today]] as const).map(([letter, word, at]) => ({
              letter, flow: toUnit(at.flow.value, flowUnit), pressure: at.pressure.value, words: `${word} ${formatValue(at.flow.value, flowUnit, 2)}`,
              flowRange: [toUnit(at.flow.low, flowUnit), toUnit(at.flow.high, flowUnit)], pressureRange: [at.pressure.low, at.pressure.high],
            }))}
          />
        )}</FitWidth>
      </div>
    </section>
  );
}

function rowsOf(result: AirPathResult, before: NonNullable<AirPathResult['beforeReadings']>, flowUnit: UnitSymbol, speedUnit: UnitSymbol): ChangedRow[] {
  const readings = result.geometry.measured;
  const free = (curve: AirPathResult['fanCurve']): Band => ({ value: endOf(curve.middle), low: endOf(curve.low), high: endOf(curve.high) });
  const isOneFan = result.geometry.fan.arrangement === 'single';
  return [
    // A reading is of one fan by itself; two together move another flow.
    { name: isOneFan ? 'free flow of the fan' : 'free flow of both fans together', unit: flowUnit, before: free(before.fanCurve), after: free(result.fanCurve), read: isOneFan ? readings.filter((reading) => reading.what === 'free-flow') : [] },
    { name: 'flow through the path', unit: flowUnit, before: before.today.flow, after: result.today.flow, read: readings.filter((reading) => reading.what === 'flow-in-duct') },
    { name: 'pressure in the duct', unit: 'Pa', before: before.today.pressure, after: result.today.pressure, read: readings.filter((reading) => reading.what === 'static-pressure') },
    ...result.outlets.map((outlet, index): ChangedRow => ({
      name: `air speed, outlet ${outlet.name}`, unit: speedUnit, before: before.outlets[index]?.speed ?? outlet.speed, after: outlet.speed,
      read: readings.filter((reading) => reading.what === 'outlet-speed' && reading.outlet === index),
    })),
  ];
}

const endOf = (curve: readonly { readonly flow: number }[]): number => curve.at(-1)?.flow ?? 0;

function scaled({ before, after, read, unit }: ChangedRow): { before: Band; after: Band; readings: { value: number; low: number; high: number }[]; unit: string } {
  const inUnit = (band: Band): Band => ({ value: toUnit(band.value, unit), low: toUnit(band.low, unit), high: toUnit(band.high, unit) });
  return { before: inUnit(before), after: inUnit(after), unit, readings: read.map((reading) => inUnit({ value: reading.value, low: reading.value - reading.plusMinus, high: reading.value + reading.plusMinus })) };
}
