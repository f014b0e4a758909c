'use client';
import { useState } from 'react';
import { needSentences, neededSpeedWords, tooWarmSentence, type AirPathResult } from '@/lib/airflow';
import { formatMinutes, formatRange, formatValue, type UnitSymbol } from '@/lib/units';
import { shownShare } from '../_charts';
import { ProblemList } from '../_parts/problem-list';
import { fansToday, flowUnitOf, worthMeasuring, type LetteredOption } from './air-views';
import { priceWords } from './options-list';
import { timeWords } from './time-words';
import { placeInWords } from './place-words';

export interface AirTablesProps {
  readonly result: AirPathResult;
  readonly letters: readonly LetteredOption[];
  readonly units: 'metric' | 'imperial';
  readonly speedUnit: UnitSymbol;
  readonly onPlace: (where: string) => void;
}

/** The same as tables, with what was assumed. Closed on screen until asked for; always on paper. */
export function AirTables({ result, letters, units, speedUnit, onPlace }: AirTablesProps) {
  const [open, setOpen] = useState(false);
  return (
    <section className="air-as-tables" aria-label="As tables">
      <button type="button" className="link not-printed" aria-expanded={open} aria-controls="air-tables" onClick={() => setOpen(!open)}>{open ? 'Hide the tables' : 'As tables, with what was assumed'}</button>
      <div id="air-tables" className={open ? 'air-tables' : 'air-tables air-tables-shut'}>
        <OptionTable result={result} letters={letters} speedUnit={speedUnit} units={units} />
        <div className={fansToday(result).length > 0 ? 'air-small-tables air-of-two-fans' : 'air-small-tables'}>
          <SmallTable title="Outlets today" heads={['outlet', 'air speed', 'flow', 'share']} rows={result.outlets.map((outlet) => [outlet.name, formatRange(outlet.speed.low, outlet.speed.high, speedUnit), formatRange(outlet.flow.low, outlet.flow.high, flowUnitOf(units)), formatRange(outlet.share.low, outlet.share.high, '%')])} />
          <SmallTable title="Where the pressure is lost" heads={['place', 'share']} rows={[...result.lossShares].sort((a, b) => b.share - a.share).map((loss) => [loss.label, shownShare(loss.share)])} />
          <SmallTable title="What one per cent more would do" heads={['one per cent more of', 'air speed, slowest outlet']} rows={result.sensitivity.map((each) => [each.change, percentWithSign(each.speedPerPercent)])} />
          <SmallTable title="The two fans today" heads={['fan', 'flow', 'pressure', 'of its free flow', 'overpowered by the other']} rows={fansToday(result).map((fan, index) => [`${index + 1}: ${fan.name}`, formatRange(fan.flow.low, fan.flow.high, flowUnitOf(units)), formatRange(fan.pressure.low, fan.pressure.high, 'Pa'), formatRange(fan.shareOfFreeFlow.low, fan.shareOfFreeFlow.high, '%'), shownShare(fan.overpowered)])} />
          <SmallTable title="What measuring would be worth" heads={['unknown', 'takes', 'saves', 'changes the choice']} rows={worthMeasuring(result).map((unknown) => [unknown.title, formatMinutes(unknown.minutes), `${unknown.saving.toFixed(2)} ${result.currency}`, shownShare(unknown.chanceOfChange)])} />
        </div>
        <p>{needSentences(result.need)} {tooWarmSentence(result.need)} {result.remarks.find(({ about }) => about === 'law')?.sentence} All mouths together have {formatValue(result.outletArea, 'mm²', 3)}; {fansToday(result).length > 0 ? 'the jets are strongest for these fans and this path' : 'the jet is strongest for this fan and duct'} at about {formatValue(result.bestOutletArea, 'mm²', 2)}.</p>
        <ProblemList placeInWords={placeInWords} onPlace={onPlace} problems={result.problems} title="Assumed, because it was not told:" />
      </div>
    </section>
  );
}

/** Worked: 0.424 gives +0.42 %, nothing gives 0. */
function percentWithSign(percent: number): string {
  const shown = Math.abs(percent).toFixed(2);
  return shown === '0.00' ? '0\u00a0%' : `${percent < 0 ? '−' : '+'}${shown}\u00a0%`;
}

function OptionTable({ result, letters, speedUnit, units }: Omit<AirTablesProps, 'onPlace'>) {
  return (
    <>
      <h3>The changes</h3>
      {/* A table that scrolls sideways must be reached by keys, or its right half stays hidden from them. */}
      {/* eslint-disable-next-line jsx-a11y-x/no-noninteractive-tabindex */}
      <div className="scroll-x" tabIndex={0} role="region" aria-label="The changes"><table className="plain air-option-table">
        <thead><tr><th scope="col">change</th><th scope="col" className="number">reaches it</th><th scope="col" className="number">weaker outlet</th><th scope="col" className="number">needs</th><th scope="col" className="number">gain, times the need</th><th scope="col" className="number">meets at</th><th scope="col" className="number">costs</th><th scope="col">takes</th><th scope="col">undone</th><th scope="col">besides</th></tr></thead>
        <tbody>
          {letters.map(({ letter, option }) => (
            <tr key={option.id}>
              <td><b>{letter}</b> {option.title}</td>
              <td className="number">{shownShare(option.chance)} ± {Math.max(1, Math.round(196 * option.chanceError))}</td>
              <td className="number">{formatRange(option.weakestSpeed.low, option.weakestSpeed.high, speedUnit)}</td>
              <td className="number">{neededSpeedWords(option.neededSpeed, speedUnit)}</td>
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
    </>
  );
}

/** A table of names and figures; left out when it has no rows. */
function SmallTable({ title, heads, rows }: { readonly title: string; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] }) {
  if (rows.length === 0) return null;
  return (
    <div>
      <h3>{title}</h3>
      <table className="plain">
        <thead><tr>{heads.map((head, index) => <th key={head} scope="col" {...(index > 0 ? { className: 'number' } : {})}>{head}</th>)}</tr></thead>
        <tbody>{rows.map((row) => <tr key={row[0]}>{row.map((cell, index) => <td key={heads[index]} {...(index > 0 ? { className: 'number' } : {})}>{cell}</td>)}</tr>)}</tbody>
      </table>
    </div>
  );
}
