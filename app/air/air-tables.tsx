'use client';
import { useState } from 'react';
import type { AirPathResult } from '@/lib/airflow';
import { formatMinutes, formatRange, formatValue, type UnitSymbol } from '@/lib/units';
import { shownShare } from '../_charts';
import { ProblemList } from '../_parts/problem-list';
import { flowUnitOf, type LetteredOption } from './air-views';
import { priceWords } from './options-list';
import { timeWords } from './time-words';

export interface AirTablesProps {
  readonly result: AirPathResult;
  readonly letters: readonly LetteredOption[];
  readonly units: 'metric' | 'imperial';
  readonly speedUnit: UnitSymbol;
}

/** The same as tables, with what was assumed. Closed on screen until asked for; always on paper. */
export function AirTables({ result, letters, units, speedUnit }: AirTablesProps) {
  const [open, setOpen] = useState(false);
  return (
    <section className="air-as-tables" aria-label="As tables">
      <button type="button" className="link not-printed" aria-expanded={open} aria-controls="air-tables" onClick={() => setOpen(!open)}>{open ? 'Hide the tables' : 'As tables, with what was assumed'}</button>
      <div id="air-tables" className={open ? 'air-tables' : 'air-tables air-tables-shut'}>
        <OptionTable result={result} letters={letters} speedUnit={speedUnit} units={units} />
        <h3>Outlets today</h3>
        <div className="scroll-x"><table className="plain">
          <thead><tr><th scope="col">outlet</th><th scope="col" className="number">air speed</th><th scope="col" className="number">flow</th><th scope="col" className="number">share</th></tr></thead>
          <tbody>{result.outlets.map((outlet) => <tr key={outlet.name}><td>{outlet.name}</td><td className="number">{formatRange(outlet.speed.low, outlet.speed.high, speedUnit)}</td><td className="number">{formatRange(outlet.flow.low, outlet.flow.high, flowUnitOf(units))}</td><td className="number">{formatRange(outlet.share.low, outlet.share.high, '%')}</td></tr>)}</tbody>
        </table></div>
        <h3>Where the pressure is lost</h3>
        <table className="plain air-table-small">
          <thead><tr><th scope="col">place</th><th scope="col" className="number">share</th></tr></thead>
          <tbody>{[...result.lossShares].sort((a, b) => b.share - a.share).map((loss) => <tr key={loss.label}><td>{loss.label}</td><td className="number">{shownShare(loss.share)}</td></tr>)}</tbody>
        </table>
        <h3>What one per cent more would do</h3>
        <table className="plain air-table-small">
          <thead><tr><th scope="col">one per cent more of</th><th scope="col" className="number">air speed</th></tr></thead>
          <tbody>{result.sensitivity.map((each) => <tr key={each.change}><td>{each.change}</td><td className="number">{each.speedPerPercent < 0 ? '−' : '+'}{Math.abs(each.speedPerPercent).toFixed(2)} %</td></tr>)}</tbody>
        </table>
        <p>This print needs {formatValue(result.need.coefficient.low, 'W/(m²·K)', 2)} to {formatValue(result.need.coefficient.high, 'W/(m²·K)', 2)} on its worst side. With today’s air the least layer time is {formatValue(result.need.minimumLayerTime.lumped, 's', 2)} to {formatValue(result.need.minimumLayerTime.layerHistory, 's', 2)}. All mouths together have {formatValue(result.outletArea, 'mm²', 3)}; the jet is strongest for this fan and duct at about {formatValue(result.bestOutletArea, 'mm²', 2)}.</p>
        <ProblemList problems={result.problems} title="Assumed, because it was not told:" />
      </div>
    </section>
  );
}

function OptionTable({ result, letters, speedUnit, units }: AirTablesProps) {
  return (
    <>
      <h3>The changes</h3>
      <div className="scroll-x"><table className="plain air-option-table">
        <thead><tr><th scope="col">change</th><th scope="col" className="number">reaches it</th><th scope="col" className="number">weaker outlet</th><th scope="col" className="number">needs</th><th scope="col" className="number">gain, times the need</th><th scope="col" className="number">meets at</th><th scope="col" className="number">costs</th><th scope="col">takes</th><th scope="col">undone</th><th scope="col">besides</th></tr></thead>
        <tbody>
          {letters.map(({ letter, option }) => (
            <tr key={option.id}>
              <td><b>{letter}</b> {option.title}</td>
              <td className="number">{shownShare(option.chance)} ± {Math.max(1, Math.round(196 * option.chanceError))}</td>
              <td className="number">{formatRange(option.weakestSpeed.low, option.weakestSpeed.high, speedUnit)}</td>
              <td className="number">{formatRange(option.neededSpeed.low, option.neededSpeed.high, speedUnit)}</td>
              <td className="number">{option.gain.low.toFixed(2)} to {option.gain.high.toFixed(2)}</td>
              <td className="number">{formatValue(option.operating.flow.value, flowUnitOf(units), 2)}, {formatValue(option.operating.pressure.value, 'Pa', 2)}</td>
              <td className="number">{priceWords(option.price, result.currency)}</td>
              <td>{timeWords(option)}</td>
              <td>{option.reversible ? 'yes' : 'no'}</td>
              <td>{option.sideEffects.map((effect) => effect.sentence).join(' ')}</td>
            </tr>
          ))}
        </tbody>
      </table></div>
      {result.unknowns.length > 0 && (
        <>
          <h3>What measuring would be worth</h3>
          <table className="plain air-table-small">
            <thead><tr><th scope="col">unknown</th><th scope="col" className="number">takes</th><th scope="col" className="number">saves</th><th scope="col" className="number">changes the choice</th></tr></thead>
            <tbody>{result.unknowns.map((unknown) => <tr key={unknown.id}><td>{unknown.title}</td><td className="number">{formatMinutes(unknown.minutes)}</td><td className="number">{unknown.saving.toFixed(2)} {result.currency}</td><td className="number">{shownShare(unknown.chanceOfChange)}</td></tr>)}</tbody>
          </table>
        </>
      )}
    </>
  );
}
