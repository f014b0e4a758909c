'use client';
import { memo, useEffect, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { nothingEntered, type AirPathResult } from '@/lib/airflow';
import type { Round } from '@/lib/cases';
import { stops } from '@/lib/problems';
import { CurveChart } from '../_charts';
import { useKnowledge } from '../_browser/knowledge';
import { saveFile } from '../_browser/save-file';
import { usePreferences } from '../_browser/preferences';
import { changeCase, useCurrentCase } from '../_case/current-case';
import { UnlessDanger } from '../_case/danger-note';
import { dangersNow } from '../_case/dangers-now';
import { chooseRemedy } from '../_case/rounds';
import { note } from '../_case/tell';
import { FitWidth } from '../_parts/fit-width';
import { ProblemList } from '../_parts/problem-list';
import { AirResult, type SheetHands } from './air-result';
import { AnswerLine } from './answer-line';
import { advisedOption, chartOf, lettered, type LetteredOption } from './air-views';
import { broughtByCase, caseReadings } from './case-readings';
import { useFearedOfCase } from './faults-of-case';
import { FearedFaults } from './feared-faults';
import { fanOfOption, fanSheetOf } from './fan-sheet';
import { fittedUndescribed, isDescribed, withFittedSheet } from './fitted-sheet';
import { focusPlace } from './form/focus-place';
import { SheetForm } from './form/sheet-form';
import { keepSheet, useKeptSheet } from './kept-sheet';
import { PathDrawing } from './path-drawing';
import { placeInWords } from './place-words';
import { DEMO_SHEET, EMPTY_SHEET, type Sheet } from './sheet';
import { useAirPath } from './use-air-path';
import './air.css';

/** The air path: fan, duct, outlets and part from their dimensions; what each change would reach; what to measure first. */
export function AirScreen() {
  const current = useCurrentCase();
  const file = current.state === 'open' ? current.file : undefined;
  const [own, setOwn] = useState<Sheet>();
  const [demo, setDemo] = useState(false);
  const kept = useKeptSheet();
  const sheet = own ?? file?.airPath ?? kept ?? EMPTY_SHEET;
  const withCase = useMemo(() => (demo ? sheet : caseReadings(sheet, file)), [demo, sheet, file]);
  const feared = useFearedOfCase(demo ? undefined : file);
  const { path, result, problems } = useAirPath(withCase, feared?.faults);
  const untouched = sheet === EMPTY_SHEET;
  const [form, setForm] = useState<boolean>();
  const { knowledge } = useKnowledge();
  const isDangerous = !demo && file !== undefined && knowledge !== undefined && dangersNow(file, knowledge).length > 0;
  const editing = form ?? untouched;
  const [picked, setPicked] = useState<string>();
  const letters = useMemo(() => (result ? lettered(result) : []), [result]);
  const advised = result && advisedOption(result);
  const chosen = letters.find((row) => row.option.id === (picked ?? advised)) ?? (advised === undefined ? undefined : letters[0]);
  const shown = result && !nothingEntered(result.geometry) ? result : undefined;
  const change = (next: Sheet): void => {
    setOwn(next);
    // The form that an untouched sheet opened stays open when the first entry has touched it.
    setForm(editing);
    if (file && !demo) void changeCase((each) => ({ ...each, airPath: { ...next } }));
    else if (!demo) keepSheet(next);
  };
  const undescribed = demo || !file ? undefined : fittedUndescribed(file);
  const describe = (round: Round): void => {
    setOwn(undefined);
    setPicked(undefined);
    void changeCase((each) => note(withFittedSheet({ ...each, airPath: { ...sheet } }, round), `The air path is described as fitted in round ${round.number}.`));
  };
  const brought = broughtByCase(sheet, withCase);
  const page = useRef<HTMLDivElement>(null);
  const hands = useSheetHands({
    edit: (edit) => change(edit(sheet)),
    choose: async (option, remedies, why) => {
      const fan = fanOfOption(withCase, option.id);
      const choice = { ...remedies, title: option.title, option: option.title, airOption: option.id, why, fanSheet: fan === undefined ? undefined : fanSheetOf(withCase, fan) };
      // A path that was entered before the case was opened belongs to it from now on: the proof compares with it.
      await changeCase((each) => chooseRemedy({ ...each, airPath: each.airPath ?? { ...sheet } }, choice));
    },
    goTo: (where) => {
      flushSync(() => setForm(true));
      const opened = page.current?.querySelector<HTMLElement>('.sheet-form');
      if (opened) focusPlace(opened, where);
    },
  });
  return (
    <div ref={page} className="with-bar air-page">
      <div className="air-head">
        <h1>{path?.title ?? 'Air path'}</h1>
        <p className="quiet">Lengths in mm. Solid: fitted now. Dashed: not fitted. <span className="not-printed">Touch a figure to change it.</span></p>
        <span className="air-deeds not-printed">
          <button type="button" className="link" aria-expanded={editing} onClick={() => setForm(!editing)}>{editing ? 'Hide the form' : 'Change in a form'}</button>
          {demo ? <button type="button" className="link" onClick={() => { setDemo(false); setOwn(undefined); setForm(undefined); }}>Back to my own</button>
            : <button type="button" className="link" onClick={() => { setDemo(true); setOwn(DEMO_SHEET); setForm(false); }}>Show the example</button>}
          <button type="button" className="link" onClick={() => window.print()}>Print</button>
          <button type="button" className="link" onClick={() => saveFile('air-path.json', `${JSON.stringify(withCase, null, 2)}\n`, 'application/json')}>Export</button>
        </span>
      </div>
      {file && knowledge && isDangerous && <UnlessDanger file={file} knowledge={knowledge} />}
      {demo && <p className="label">This is the invented example: machine no. 3 of a tool library, printing greenhouse hinges. Nothing of it is kept.</p>}
      {undescribed?.airOption !== undefined && (
        <div className="problem air-fitted">
          <p><b>Fitted in round {undescribed.number}: {undescribed.option ?? 'a new part'}.</b> This page still shows the path before it. {isDescribed(undescribed.airOption) ? '' : 'The sizes of the new duct are yours to enter.'}</p>
          <p><button type="button" className="button" onClick={() => describe(undescribed)}>Show it as fitted</button></p>
          <p className="label">Readings of the old path are left out then; the report keeps it as it was.</p>
        </div>
      )}
      {brought.length > 0 && <p className="label">From the case: {brought.join(', ')}.</p>}
      <div className={editing ? 'air air-editing' : 'air'}>
        <figure className="air-plan">{path && <FitWidth usual={700}>{(width) => <PathDrawing sheet={sheet} path={path} result={result} problems={problems} width={Math.min(width, 700)} onChange={change} />}</FitWidth>}</figure>
        {editing ? <SheetForm sheet={sheet} problems={problems} onChange={change} answer={result && <AnswerLine result={result} letters={letters} />} /> : shown && <Chart result={shown} letters={letters} chosen={chosen} />}
      </div>
      {/* Under the picture: above it, a slip in a field would push away the field that is being typed in. */}
      {stops(problems) && <ProblemList placeInWords={placeInWords} onPlace={hands.goTo} problems={problems.filter((problem) => problem.level === 'stop')} title="The air path cannot be reckoned yet. What you typed is kept; the picture shows the last one that could." />}
      {editing && shown && <Chart result={shown} letters={letters} chosen={chosen} />}
      {!isDangerous && (result ? <AirResult result={result} letters={letters} chosen={chosen} fileOpen={file !== undefined && !demo} onPick={setPicked} hands={hands} /> : <p role="status" className="quiet">Reckoning</p>)}
      {result && feared && <FearedFaults faults={result.faults} titleOf={feared.titleOf} />}
    </div>
  );
}

/** The same functions for as long as the page stands, each doing what the newest ones do. */
function useSheetHands(newest: SheetHands): SheetHands {
  const held = useRef(newest);
  useEffect(() => { held.current = newest; });
  return useMemo(() => ({ edit: (change) => held.current.edit(change), choose: (...choice) => held.current.choose(...choice), goTo: (where) => held.current.goTo(where) }), []);
}

/** Drawn anew only when something new was reckoned, not on every stroke of a key. */
const Chart = memo(function Chart({ result, letters, chosen }: { readonly result: AirPathResult; readonly letters: readonly LetteredOption[]; readonly chosen: LetteredOption | undefined }) {
  const { units } = usePreferences();
  return <figure className="air-chart"><FitWidth usual={632}>{(width) => <CurveChart {...chartOf(result, letters, chosen?.option.id, units)} width={Math.min(width, 700)} height={Math.min(400, Math.max(300, Math.round(width * 0.56)))} />}</FitWidth></figure>;
});
