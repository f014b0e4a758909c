'use client';
import { Fragment } from 'react';
import { restsOnConflicts, tooWarmSentence, type AirPathResult } from '@/lib/airflow';
import { formatRange, type UnitSymbol } from '@/lib/units';
import { IntervalBar, shownShare } from '../_charts';
import { OptionGlyph } from '../_drawings/option-glyph';
import { FitWidth } from '../_parts/fit-width';
import { advisedOption, intervalOf, type LetteredOption } from './air-views';
import { OptionsAxis } from './options-axis';
import { timeWords } from './time-words';

export interface OptionsListProps {
  readonly result: AirPathResult;
  readonly letters: readonly LetteredOption[];
  readonly chosen: LetteredOption | undefined;
  readonly unit: UnitSymbol;
  readonly onPick: (id: string) => void;
}

/** All changes on one axis against what the print needs; the picked one opens with everything it brings. */
export function OptionsList({ result, letters, chosen, unit, onPick }: OptionsListProps) {
  const { from, to, rows, need, needWords } = intervalOf(letters, chosen?.option.id, unit);
  const tooWarm = tooWarmSentence(result.need);
  const doubt = restsOnConflicts(result);
  const advised = advisedOption(result);
  return (
    <section className="air-options" aria-labelledby="options">
      <h2 id="options" className="for-readers-only">What to change</h2>
      {doubt !== undefined && <p><b>{doubt}</b></p>}
      <div className="air-option-head">
        <span className="label">What to change</span>
        <FitWidth usual={430}>{(width) => <OptionsAxis from={from} to={to} unit={unit} need={need} needWords={needWords} width={width} />}</FitWidth>
        <span className="label air-number">reaches it</span><span className="label air-number">costs</span><span className="label air-takes">takes</span><span className="label">besides</span>
      </div>
      <p className="label">Air speed at the weaker outlet, {unit}; a bar holds nine of ten likely values; shaded: what this print needs.</p>
      {tooWarm !== undefined && <p><b>{tooWarm}</b></p>}
      <ul>
        {letters.map(({ letter, option }, index) => {
          const row = rows[index];
          const picked = option.id === chosen?.option.id;
          return (
            <li key={option.id} className={`air-option${picked ? ' air-option-best' : ''}${option.id === advised ? ' air-option-cheapest' : ''}`}>
              <button type="button" className="air-letter" aria-pressed={picked} aria-label={`Option ${letter}: ${option.title}`} onClick={() => onPick(option.id)}>{letter}</button>
              <span className="air-glyph"><OptionGlyph kind={option.kind} /></span>
              <span className="air-name">{option.title}{option.id === advised && <span className="label"> least expected cost</span>}</span>
              <span className="air-bar">{row && <FitWidth usual={430}>{(width) => <IntervalBar row={row} from={from} to={to} need={need} unit={unit} width={width} />}</FitWidth>}</span>
              <span className="air-number"><b>{shownShare(option.chance)}</b></span>
              <span className="air-number">{priceWords(option.price, result.currency)}</span>
              <span className="air-takes">{timeWords(option)}</span>
              <span className="label air-besides">{picked ? undoing(option.reversible) : (option.sideEffects[0]?.sentence ?? '')}</span>
              {picked && <OptionDetail each={option} currency={result.currency} unit={unit} />}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

export const priceWords = (price: number, currency: string): string => (price === 0 ? '0' : `${price} ${currency}`);

export const undoing = (reversible: boolean): string => (reversible ? 'Can be undone.' : 'Cannot be undone.');

/** Everything that a picked change brings: gain, air at each outlet, side effects. */
function OptionDetail({ each, currency, unit }: { readonly each: LetteredOption['option']; readonly currency: string; readonly unit: UnitSymbol }) {
  const times = (value: number): string => value.toFixed(2);
  return (
    <div className="air-option-detail">
      <p>{each.kind === 'leave'
        ? <>The worst side gets <b>{times(each.coverage.low)} to {times(each.coverage.high)} times</b> what it needs.</>
        : <>The worst side gets <b>{times(each.coverage.low)} to {times(each.coverage.high)} times</b> what it needs; that is {signed(each.gain.low)} to {signed(each.gain.high)} against leaving it.</>}
      {' '}Outlets: {each.outlets.map((outlet, index) => <Fragment key={outlet.name}>{index > 0 && ', '}<span className="nowrap">{outlet.name} {formatRange(outlet.speed.low, outlet.speed.high, unit)}</span></Fragment>)}. Expected cost with the failures that remain: {Math.round(each.expectedCost)} {currency}.{each.chanceOfTooMuch >= 0.05 && <> Too much air on the best side: {shownShare(each.chanceOfTooMuch)}.</>}</p>
      {each.sideEffects.length > 0 && <ul>{each.sideEffects.map((effect) => <li key={effect.sentence}>{effect.sentence}</li>)}</ul>}
    </div>
  );
}

const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(2)}`;
