'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { CaseFile, Round } from '@/lib/cases';
import type { Diagnosis } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { saveFile } from '../../_browser/save-file';
import { caseLink } from '../../_browser/case-link';
import { CaseTitleBlock, caseHeading, machineWords } from '../../_case/case-title-block';
import { changeCase, newCase, openCase, roundOf } from '../../_case/current-case';
import { factDetail, factTitle, measuredWords, shapeOf } from '../../_case/fact-words';
import { useDiagnosis } from '../../_case/use-diagnosis';
import { WithCase } from '../../_case/with-case';
import { ChanceBar, shareRange, shownShare } from '../../_charts';
import { Mark } from '../../_drawings/mark';
import { KnownPart } from '../../_drawings/known-part';
import { FactBalloon } from '../../_parts/fact-balloon';
import { TextField } from '../../_parts/text-field';
import { VERDICT_WORDS, VerdictSign } from '../../_parts/signs';
import { BeforeAfter } from '../prove/before-after';
import './log.css';

/** The record of a case: a report in numbered sections that prints on two sheets, and the ways to keep and send it. */
export function LogScreen() {
  return <WithCase>{(file, knowledge) => <Log file={file} knowledge={knowledge} />}</WithCase>;
}

function Log({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const diagnosis = useDiagnosis(file, knowledge);
  const result = diagnosis?.result.kind === 'diagnosis' ? diagnosis.result : undefined;
  return (
    <>
    <div className="not-printed"><CaseTitleBlock file={file} /></div>
    <div className="log">
      <div className="not-printed"><Deeds file={file} /></div>
      <h1 className="log-title">{caseHeading(file)}</h1>
      {result && <p className="lead">{summary(file, result, knowledge)}</p>}
      {result && <KnownSection file={file} result={result} knowledge={knowledge} />}
      {result && <CausesSection result={result} />}
      {result && <FoundSection file={file} result={result} knowledge={knowledge} />}
      {file.rounds.filter((round) => round.remedy !== undefined).map((round) => <RoundSection key={round.number} round={round} knowledge={knowledge} />)}
      <section className="region"><h2>What happened, in order</h2>
        {file.log.length === 0 ? <p className="quiet">Nothing was decided or measured yet.</p> : (
          <table className="plain"><thead><tr><th scope="col">When</th><th scope="col">Round</th><th scope="col">What</th><th scope="col">Leader then</th></tr></thead>
            <tbody>{file.log.map((entry, index) => <tr key={index}><td className="nowrap">{entry.on === undefined ? '' : moment(entry.on)}</td><td>{entry.round}</td><td>{entry.what}</td><td>{entry.leader !== undefined && <>{entry.leader}{entry.chance !== undefined && `, ${shownShare(entry.chance)}`}</>}</td></tr>)}</tbody>
          </table>
        )}
      </section>
      <p className="label">Chances by exact inference over all listed causes; ranges are 90 %, every ± is 95 %. Rankings rest in part on estimates; every figure opens to its basis in the handbook.</p>
      <SheetFoot file={file} knowledge={knowledge} />
    </div>
    </>
  );
}

function Deeds({ file }: { readonly file: CaseFile }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const copy = async (): Promise<void> => {
    const link = await caseLink(file);
    await navigator.clipboard.writeText(link).then(() => setSaid(`The link holds the whole case (${link.length} letters). It is copied.`), () => setSaid('The browser does not allow copying here. Export the case instead.'));
  };
  const again = async (): Promise<void> => {
    await openCase({ ...newCase(), machine: file.machine, print: { ...(file.print.material === undefined ? {} : { material: file.print.material }) } });
    router.push('/?add');
  };
  return (
    <div className="deeds">
      <TextField label="Name of this case" value={file.title} placeholder="left side curls, then the layers shift" onChange={(title) => void changeCase((each) => ({ ...each, title }))} />
      <div className="deeds-row">
        <button type="button" className="button" onClick={() => print()}>Print the report</button>
        <button type="button" className="button" onClick={() => saveFile(`leeward-${file.id}.json`, `${JSON.stringify(file, null, 2)}\n`, 'application/json')}>Export as a file</button>
        <button type="button" className="button" onClick={() => void copy()}>Copy a link that holds it</button>
        <button type="button" className="button" onClick={() => void again()}>New case on this machine</button>
        <Link className="link" href="/case">Back to the case</Link>
        <Link className="link" href="/casebook">Casebook</Link>
      </div>
      <p aria-live="polite" className="label">{said}</p>
    </div>
  );
}

function KnownSection({ file, result, knowledge }: { readonly file: CaseFile; readonly result: Diagnosis; readonly knowledge: Knowledge }) {
  return (
    <section className="region"><h2>1 What was known</h2>
      <div className="log-known">
        <KnownPart facts={result.items.map((item, index) => ({ number: index + 1, about: item.about, shape: shapeOf(item), ...(item.kind === 'symptom' && item.seen ? { drawing: knowledge.symptoms[item.about]?.drawing } : {}) }))} />
        <ol className="facts-list log-facts">
          {result.items.filter((item) => item.kind === 'symptom').map((item) => <li key={`${item.about} ${item.round}`}><FactBalloon number={result.items.indexOf(item) + 1} shape={shapeOf(item)} /><div><p className="fact-title">{factTitle(item, knowledge)}</p><p className="label">{factDetail(item)}</p></div></li>)}
        </ol>
      </div>
      {file.words !== '' && <p className="label">In the person’s words: “{file.words}”</p>}
    </section>
  );
}

function CausesSection({ result }: { readonly result: Diagnosis }) {
  return (
    <section className="region"><h2>2 What could cause it <span className="quiet log-note">chance that it is at work now; several can be</span></h2>
      <table className="plain log-causes"><tbody>
        {result.causes.slice(0, 7).map((cause, index) => <tr key={cause.id}><th scope="row">{cause.title}</th><td><ChanceBar chance={cause.probability} low={cause.low} high={cause.high} accent={index === 0} decorative /></td><td className="number"><b>{shownShare(cause.probability)}</b> <span className="quiet">{shareRange(cause.low, cause.high)}</span></td></tr>)}
        <tr><th scope="row">Something not listed here</th><td><ChanceBar chance={result.unexplained.share} low={result.unexplained.share} high={result.unexplained.share} decorative /></td><td className="number"><b>{shownShare(result.unexplained.share)}</b></td></tr>
      </tbody></table>
    </section>
  );
}

function FoundSection({ file, result, knowledge }: { readonly file: CaseFile; readonly result: Diagnosis; readonly knowledge: Knowledge }) {
  const found = result.items.filter((item) => item.kind !== 'symptom');
  if (found.length === 0) return null;
  return (
    <section className="region"><h2>3 What was found out</h2>
      <table className="plain"><tbody>
        {found.map((item) => <tr key={`${item.about} ${item.round}`}><td><FactBalloon number={result.items.indexOf(item) + 1} shape={shapeOf(item)} /></td><td>{factTitle(item, knowledge)}</td><td>{factDetail(item)}</td><td className="quiet">{knowledge.methods[item.finding.method ?? '']?.short ?? ''}{readingsWords(file, item.about)}</td></tr>)}
      </tbody></table>
    </section>
  );
}

function RoundSection({ round, knowledge }: { readonly round: Round; readonly knowledge: Knowledge }) {
  const { criterion } = round;
  const after = new Map((round.after ?? []).map((row) => [row.place, row.reading]));
  return (
    <section className="region"><h2>Round {round.number}: {round.option ?? knowledge.remedies[round.remedy ?? '']?.does}</h2>
      {round.why !== undefined && <p>{round.why}</p>}
      {criterion && <p><b>Fixed{criterion.fixedOn !== undefined && ` ${moment(criterion.fixedOn)}`}, before fitting:</b> {criterion.print}. Cured when: {criterion.passes}{criterion.limit && <> Limit {measuredWords({ ...criterion.limit, plusMinus: 0 })}.</>}</p>}
      {round.fittedOn !== undefined && <p><b>Fitted {moment(round.fittedOn)}</b>, {round.fitted?.length ?? 0} steps ticked.</p>}
      {criterion?.before && criterion.before.length > 0 && <BeforeAfter rows={criterion.before.map((row) => ({ place: row.place, before: row.reading, after: after.get(row.place) }))} limit={criterion.limit} unit={criterion.before[0]?.reading.unit ?? ''} />}
      <p className="log-verdict">{round.verdict ? <><VerdictSign verdict={round.verdict} /> <b>{VERDICT_WORDS[round.verdict]}</b></> : <span className="quiet">Not proven yet.</span>}</p>
    </section>
  );
}

/** The title block of each printed sheet. */
function SheetFoot({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const last = [...file.rounds].reverse().find((round) => round.remedy !== undefined);
  return (
    <dl className="sheet-foot" aria-hidden="true">
      <div className="sheet-mark"><Mark /> Leeward</div>
      <div><dt>Part</dt><dd>{[file.print.name, file.print.material].filter(Boolean).join(', ') || 'not named'}</dd></div>
      <div><dt>Machine</dt><dd>{machineWords(file)}</dd></div>
      <div><dt>Case</dt><dd>{file.id}</dd></div>
      <div><dt>One change made</dt><dd>{last ? (last.option ?? knowledge.remedies[last.remedy ?? '']?.does ?? '') : 'none yet'}</dd></div>
      <div><dt>Verdict</dt><dd>{last?.verdict ? VERDICT_WORDS[last.verdict] : 'open'}</dd></div>
      <div><dt>Date</dt><dd>{file.changedOn === undefined ? '' : new Date(file.changedOn).toLocaleDateString('en-GB', { dateStyle: 'medium' })}</dd></div>
      <div><dt>Round</dt><dd>{roundOf(file)}</dd></div>
    </dl>
  );
}

function summary(file: CaseFile, result: Diagnosis, knowledge: Knowledge): string {
  const proven = [...file.rounds].reverse().find((round) => round.verdict !== undefined);
  const leader = result.causes[0];
  if (proven) return `${knowledge.remedies[proven.remedy ?? '']?.does ?? 'The change'}: ${proven.verdict ? VERDICT_WORDS[proven.verdict] : ''}.${proven.verdict === 'cured' ? '' : leader ? ` Likeliest now: ${leader.title.toLowerCase()} (${shownShare(leader.probability)}).` : ''}`;
  return leader ? `Likeliest now: ${leader.title.toLowerCase()}, ${shownShare(leader.probability)} (${shareRange(leader.low, leader.high)}).` : '';
}

function readingsWords(file: CaseFile, check: string): string {
  const finding = [...file.findings].reverse().find((each) => each.check === check);
  const texts = Object.values(finding?.readings ?? {}).flat().filter((text) => text !== '');
  return texts.length === 0 ? '' : `: ${texts.join(', ')}`;
}

function moment(on: string): string {
  return new Date(on).toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
}
