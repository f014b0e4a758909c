'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useEffect, useMemo, useState } from 'react';
import { readAirPath, type AirOption, type AirPathResult } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import type { Problem } from '@/lib/problems';
import { formatMinutes, formatRange, formatValue, preferredUnit } from '@/lib/units';
import { CurveChart, IntervalAxis, IntervalBar, shownShare } from '../_charts';
import { AirPathPlan } from '../_drawings/air-path-plan';
import { OptionGlyph } from '../_drawings/option-glyph';
import { saveFile } from '../_browser/save-file';
import { useKnowledge } from '../_browser/knowledge';
import { usePreferences } from '../_browser/preferences';
import { changeCase, useCurrentCase } from '../_case/current-case';
import { chooseRemedy } from '../_case/rounds';
import { FitWidth } from '../_parts/fit-width';
import { ProblemList } from '../_parts/problem-list';
import { chartOf, intervalOf, lettered, planOf, remedyFor } from './air-views';
import { caseReadings } from './case-readings';
import { DEMO_SHEET, EMPTY_SHEET, type Sheet } from './sheet';
import { SheetForm } from './sheet-form';
import './air.css';

const KEPT = 'leeward.air-path';

/** The air path: fan, duct, outlets and part from their dimensions; what each change would reach; what to measure first. */
export function AirScreen() {
  const current = useCurrentCase();
  const file = current.state === 'open' ? current.file : undefined;
  const [own, setOwn] = useState<Sheet>();
  const [editing, setEditing] = useState(false);
  const kept = useKeptSheet();
  const sheet = own ?? file?.airPath ?? kept ?? EMPTY_SHEET;
  const withCase = useMemo(() => caseReadings(sheet, file), [sheet, file]);
  const { result, problems } = useAirPath(withCase);
  const [demo, setDemo] = useState(false);
  const change = (next: Sheet): void => {
    setOwn(next);
    if (file && !demo) void changeCase((each) => ({ ...each, airPath: { ...next } }));
    else keep(next);
  };
  const untouched = sheet === EMPTY_SHEET;
  return (
    <div className="with-bar">
      <div className="air-head">
        <h1>{result?.title ?? 'Air path'}</h1>
        <p className="quiet">Lengths in mm. Solid: fitted now. Dashed: not fitted.</p>
        <span className="air-deeds">
          <button type="button" className="link" aria-expanded={editing || untouched} onClick={() => setEditing(!editing)}>{editing ? 'Hide dimensions' : 'Change dimensions'}</button>
          <button type="button" className="link" onClick={() => { setDemo(true); setOwn(DEMO_SHEET); }}>Show the example</button>
          <button type="button" className="link" onClick={() => saveFile('air-path.json', `${JSON.stringify(withCase, null, 2)}\n`, 'application/json')}>Export</button>
        </span>
      </div>
      {demo && <p className="label">This is the invented example: machine no. 3 of a tool library, printing greenhouse hinges.</p>}
      <ProblemList problems={problems.filter((problem) => problem.level === 'stop')} title="The air path cannot be reckoned yet. What you typed is kept." />
      {(editing || untouched) && <SheetForm sheet={sheet} problems={problems} onChange={change} />}
      {result && <AirResult result={result} fileOpen={file !== undefined} />}
    </div>
  );
}

function AirResult({ result, fileOpen }: { readonly result: AirPathResult; readonly fileOpen: boolean }) {
  const router = useRouter();
  const { knowledge } = useKnowledge();
  const { units } = usePreferences();
  const [picked, setPicked] = useState<string>();
  const letters = useMemo(() => lettered(result), [result]);
  const chosen = letters.find((row) => row.option.id === (picked ?? result.best)) ?? letters[0];
  const speedUnit = preferredUnit('speed', units);
  const telling = result.unknowns[0];
  const method = telling && knowledge?.checks[telling.check]?.methods[0];
  const remedy = chosen && knowledge ? remedyFor(chosen.option, knowledge) : undefined;
  const choose = async (option: AirOption): Promise<void> => {
    if (remedy === undefined) return;
    await changeCase((each) => chooseRemedy(each, { remedy, title: option.title, option: option.title, why: `Reaches what this print needs with a chance of ${shownShare(option.chance)}; leaving it as it is, ${shownShare(result.options.find((other) => other.kind === 'leave')?.chance ?? 0)}.` }));
    router.push('/case/fit');
  };
  const { from, to, rows, need } = intervalOf(letters, chosen?.option.id, speedUnit);
  return (
    <>
      <div className="air">
        <figure className="air-plan"><FitWidth usual={700}>{(width) => <AirPathPlan {...planOf(result, speedUnit)} width={Math.min(width, 700)} />}</FitWidth></figure>
        <figure><FitWidth usual={632}>{(width) => <CurveChart {...chartOf(result, letters, chosen?.option.id, units)} width={Math.min(width, 700)} height={Math.min(430, Math.max(300, Math.round(width * 0.68)))} />}</FitWidth></figure>
      </div>
      <ul className="air-facts">
        <li><b>{bottleneckWords(result)}</b> {formatRange(result.today.shareOfFreeFlow.low, result.today.shareOfFreeFlow.high, '%')} of the fan’s free flow gets through.</li>
        {result.lossShares.length > 0 && <li>The pressure is lost at: {[...result.lossShares].sort((a, b) => b.share - a.share).slice(0, 3).map((loss) => `${loss.label} ${shownShare(loss.share)}`).join(', ')}.</li>}
        {result.conflicts.map((conflict) => <li key={conflict.sentence}><b>{conflict.sentence}</b></li>)}
      </ul>
      <section className="air-options" aria-labelledby="options">
        <h2 id="options" className="for-readers-only">What to change</h2>
        <div className="air-option-head">
          <span className="label">What to change</span>
          <FitWidth usual={430}>{(width) => <IntervalAxis from={from} to={to} unit={speedUnit} need={need} needWords="needs" width={width} />}</FitWidth>
          <span className="label air-number">reaches it</span><span className="label air-number">costs</span><span className="label">takes</span><span className="label">besides</span>
        </div>
        <p className="label">Air speed at the weaker outlet, {speedUnit}; bars hold nine of ten samples; grey: what this print needs.</p>
        <ul>
          {letters.map(({ letter, option }, index) => {
            const row = rows[index];
            const best = option.id === chosen?.option.id;
            return (
              <li key={option.id} className={best ? 'air-option air-option-best' : 'air-option'}>
                <button type="button" className="air-letter" aria-pressed={best} aria-label={`Option ${letter}: ${option.title}`} onClick={() => setPicked(option.id)}>{letter}</button>
                <span className="air-glyph"><OptionGlyph kind={option.kind} /></span>
                <span className="air-name">{option.title}{option.id === result.best && <span className="label"> least expected cost</span>}</span>
                <span className="air-bar">{row && <FitWidth usual={430}>{(width) => <IntervalBar row={row} from={from} to={to} need={need} unit={speedUnit} width={width} />}</FitWidth>}</span>
                <span className="air-number"><b>{shownShare(option.chance)}</b></span>
                <span className="air-number">{option.price === 0 ? '0' : `${option.price} ${result.currency}`}</span>
                <span>{timeWords(option)}</span>
                <span className="label">{option.sideEffects[0]?.sentence ?? ''}</span>
              </li>
            );
          })}
        </ul>
      </section>
      <div className="air-choice">
        <p>{telling ? <><b>Most telling unknown: {telling.title}.</b> Measuring it takes {formatMinutes(telling.minutes)} and {telling.chanceOfChange < 0.02 ? 'would hardly change the choice' : <>would change the choice with a chance of {shownShare(telling.chanceOfChange)}</>}.</> : 'No single measurement would change the choice.'}</p>
        <span className="air-buttons">
          {telling && method !== undefined && <Link className="button" href={`/bench/${method}`}>Measure it first</Link>}
          {fileOpen && chosen && chosen.option.kind !== 'leave' && remedy !== undefined && <button type="button" className="button button-next" onClick={() => void choose(chosen.option)}>Choose: {chosen.option.title}</button>}
        </span>
      </div>
      <details className="air-more"><summary>As a table, with what was assumed</summary>
        <table className="plain">
          <thead><tr><th scope="col">Outlet</th><th scope="col" className="number">air speed</th><th scope="col" className="number">flow</th><th scope="col" className="number">share</th></tr></thead>
          <tbody>{result.outlets.map((outlet) => <tr key={outlet.name}><td>{outlet.name}</td><td className="number">{formatRange(outlet.speed.low, outlet.speed.high, speedUnit)}</td><td className="number">{formatRange(outlet.flow.low, outlet.flow.high, preferredUnit('volume-flow', units))}</td><td className="number">{formatRange(outlet.share.low, outlet.share.high, '%')}</td></tr>)}</tbody>
        </table>
        <p>This print needs {formatValue(result.need.coefficient.low, 'W/(m²·K)', 2)} to {formatValue(result.need.coefficient.high, 'W/(m²·K)', 2)} on its worst side. With today’s air the least layer time is {formatValue(result.need.minimumLayerTime.lumped, 's', 2)} to {formatValue(result.need.minimumLayerTime.layerHistory, 's', 2)}.</p>
        <ProblemList problems={result.problems} title="Assumed, because it was not told:" />
      </details>
    </>
  );
}

/** Coarse at once, whole a moment later; a broken sheet keeps the last good picture. */
function useAirPath(sheet: Sheet): { readonly result: AirPathResult | undefined; readonly problems: readonly Problem[] } {
  const read = useMemo(() => readAirPath(JSON.stringify(sheet)), [sheet]);
  const coarse = useMemo(() => (read.value ? compareAirOptions(read.value, read.problems, { samples: 300 }) : undefined), [read]);
  const [fine, setFine] = useState<{ readonly of: unknown; readonly result: AirPathResult }>();
  useEffect(() => {
    const { value, problems } = read;
    if (!value) return;
    const timer = setTimeout(() => setFine({ of: read, result: compareAirOptions(value, problems) }), 120);
    return () => clearTimeout(timer);
  }, [read]);
  return { result: fine?.of === read ? fine.result : (coarse ?? fine?.result), problems: read.problems };
}

function useKeptSheet(): Sheet | undefined {
  const [sheet, setSheet] = useState<Sheet>();
  useEffect(() => {
    const timer = setTimeout(() => {
      try {
        const text = localStorage.getItem(KEPT);
        if (text !== null) setSheet(JSON.parse(text) as Sheet);
      } catch {
        /* nothing kept, or not readable: begin anew */
      }
    }, 0);
    return () => clearTimeout(timer);
  }, []);
  return sheet;
}

function keep(sheet: Sheet): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(sheet));
  } catch {
    /* storage forbidden: the sheet lasts as long as the page */
  }
}

function bottleneckWords(result: AirPathResult): string {
  switch (result.bottleneck) {
    case 'fan': return 'The fan is the limit; the duct costs little.';
    case 'duct': return 'The duct is the limit; a stronger fan gains little.';
    case 'both': return 'Fan and duct limit each other about alike.';
    default: return result.bottleneck satisfies never;
  }
}

function timeWords(option: AirOption): string {
  const parts = [
    ...(option.handsTime > 0 ? [`${formatMinutes(option.handsTime / 60)} of hands`] : []),
    ...(option.printingTime > 0 ? [`${formatMinutes(option.printingTime / 60)} printing`] : []),
    ...(option.timePerPrint > 0 ? [`${formatMinutes(option.timePerPrint / 60)} more on every print`] : []),
  ];
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}
