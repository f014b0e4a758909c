'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Knowledge, KnownRemedy } from '@/lib/knowledge';
import { whatWasTold, type ChangeTogether, type RankedCause, type RankedRemedy } from '@/lib/diagnosis';
import { formatMinutes } from '@/lib/units';
import { changeCase } from '../../_case/current-case';
import { CaseTitleBlock } from '../../_case/case-title-block';
import { DangerWords } from '../../_case/danger-note';
import { dangersNow, rightsDanger } from '../../_case/dangers-now';
import type { Wanted } from '../../_case/later';
import { chooseRemedy } from '../../_case/rounds';
import { changesThatCured } from '../../_case/tried-changes';
import { useDiagnosis } from '../../_case/use-diagnosis';
import { WithCase } from '../../_case/with-case';
import { ChanceBar, shownShare } from '../../_charts';
import { inSentence } from '../../_parts/in-sentence';
import { caseReadings } from '../../air/case-readings';
import { fanSheetOf, fansOnOffer } from '../../air/fan-sheet';
import type { Sheet } from '../../air/sheet';
import { ClosedCase } from '../closed-case';
import { bringsFan } from '../fit/brings-fan';
import { NOTHING_TO_RANK } from '../nothing-found';
import { advisedFirst } from './advised-first';
import { whyChosen } from './why-chosen';
import './decide.css';

/** Choose a change: what each may cure, what it costs, and for cooling the computed comparison of fan and duct. */
export function DecideScreen() {
  return <WithCase>{(file, knowledge) => (file.state === 'closed' ? <ClosedCase file={file} /> : <Decide file={file} knowledge={knowledge} />)}</WithCase>;
}

const WANTED: readonly Wanted[] = ['way-on', 'together'];
const TITLE = 'What to change';
const SHOWN = 6;
/** Minutes below which several changes at once are not worth a word. */
const WORTH_SAYING = 5;
/** From this chance of a cooling cause on, the air path is worth opening. */
const COOLING = 0.25;

function Decide({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const diagnosis = useDiagnosis(file, knowledge, WANTED);
  const [all, setAll] = useState(false);
  const router = useRouter();
  const result = diagnosis?.result;
  const remedies = diagnosis?.remedies;
  const together = diagnosis?.together;
  if (result?.kind === 'too-much') return <NoChoice file={file} title="Too much at once" words={`${result.items.length} answers are too many for an exact ranking. Keep only what you are sure of; the case page says where to start.`} href="/case" deed="Back to the case" />;
  const told = result && whatWasTold(file, result.items);
  if (told !== undefined && told !== 'something') return <NoChoice file={file} title="Nothing to choose from yet" words={NOTHING_TO_RANK[told]} href="/?add" deed="Say what you see" />;
  if (!result || !remedies) return <><CaseTitleBlock file={file} /><div className="decide-head"><h1>{TITLE}</h1><p role="status" className="quiet">Reckoning</p></div></>;
  const cured = changesThatCured(file);
  const dangers = dangersNow(file, knowledge);
  const isDangerous = dangers.length > 0;
  const offered = isDangerous ? remedies.filter(({ id }) => knowledge.remedies[id] && rightsDanger(knowledge.remedies[id], dangers)) : advisedFirst(remedies, diagnosis.step);
  const shown = offered.slice(0, all ? 30 : SHOWN);
  const cooling = isDangerous ? 0 : result.branches.find((branch) => branch.part === 'part-cooling')?.probability ?? 0;
  const choose = async (remedy: RankedRemedy): Promise<void> => {
    await changeCase((each) => chooseRemedy(each, { remedy: remedy.id, title: remedy.does, fanSheet: onlyFan(each, knowledge.remedies[remedy.id]), why: whyChosen(remedy, result.causes) }));
    router.push('/case/fit');
  };
  return (
    <div className="with-bar">
      <CaseTitleBlock file={file} />
      <div className="decide-head">
        <h1>{TITLE}</h1>
        {isDangerous
          ? <div className="danger-note"><DangerWords dangers={dangers} /><p className="quiet">Here stand only changes that put it right and need nothing printed first. All others wait, as they are tried by running the machine.</p></div>
          : <p className="quiet">In the order in which to try them: the chance of curing something that is at work, weighed against minutes and money. A small chance may come first where the change is cheap and quick to try. Make one change at a time, so that the proof says which one did it.</p>}
      </div>
      {cooling > COOLING && (
        <div className="decide-air region-next">
          <h2 className="here">Fan, duct, both, or slower layers?</h2>
          <p>Cooling is at work with a chance of {shownShare(cooling)}. The air path reckons from your dimensions and readings which change reaches what this print needs.</p>
          <Link className="button button-next" href="/air">Open the air path</Link>
        </div>
      )}
      <h2>{isDangerous ? 'What puts it right, best to try first' : 'Changes, best to try first'}</h2>
      <ul className="options">
        {shown.map((remedy, index) => <RemedyRow key={remedy.id} remedy={remedy} hasCured={cured.has(remedy.id)} best={index === 0 && cooling <= COOLING} causes={result.causes} knowledge={knowledge} onChoose={() => void choose(remedy)} />)}
      </ul>
      {offered.length > shown.length && <button type="button" className="link" onClick={() => setAll(true)}>Show {offered.length - shown.length} more changes</button>}
      {!isDangerous && together && together.saves >= WORTH_SAYING && <Together found={together} knowledge={knowledge} />}
      <p><Link className="link" href="/case">Back to the case</Link></p>
    </div>
  );
}

/** Figures of the fan that a change fits, where only one is on offer; with several the fitting list asks which. */
function onlyFan(file: CaseFile, remedy: KnownRemedy | undefined): Sheet | undefined {
  if (remedy === undefined || !bringsFan(remedy) || file.airPath === undefined) return undefined;
  const sheet = caseReadings(file.airPath, file);
  const [only, another] = fansOnOffer(sheet);
  return only === undefined || another !== undefined ? undefined : fanSheetOf(sheet, only);
}

/** No ranking, so no change to recommend: why, and where to go. */
function NoChoice({ file, title, words, href, deed }: { readonly file: CaseFile; readonly title: string; readonly words: string; readonly href: '/case' | '/?add'; readonly deed: string }) {
  return <><CaseTitleBlock file={file} /><div className="no-case"><h1>{title}</h1><p className="lead">{words}</p><p><Link className="button button-next" href={href}>{deed}</Link></p></div></>;
}

/** Several changes before one proof: what it saves, and what the record no longer says. */
function Together({ found, knowledge }: { readonly found: ChangeTogether; readonly knowledge: Knowledge }) {
  const named = (id: string): string => knowledge.remedies[id]?.does ?? id;
  return (
    <div className="decide-together region">
      <h2>Or several at once</h2>
      <p>Make these before one proof print; that saves about {formatMinutes(found.saves)} on average over one at a time, and passes with a chance of {shownShare(found.cured)}:</p>
      <ul className="decide-batch">{found.together.map((id) => <li key={id}>{named(id)}</li>)}</ul>
      <p className="quiet">What it costs: when the proof passes, it does not say which change did it. The likeliest alone, “{named(found.likeliestAlone.change)}”, would have done it in {shownShare(found.likeliestAlone.chance)} of those cases. All of them can be undone: take the others back one by one and see whether the cure holds.</p>
    </div>
  );
}

/** Causes that a share is explained by. */
const EXPLAINED = 4;

/** Which causes a share comes from: how likely each is at work, and how often the change cures it then. */
export function WhyThisShare({ remedy, page, causes }: { readonly remedy: RankedRemedy; readonly page: Pick<KnownRemedy, 'cures'> | undefined; readonly causes: readonly Pick<RankedCause, 'id' | 'title' | 'probability'>[] }) {
  const rows = causes.filter(({ id, probability }) => probability > 0 && page?.cures[id] !== undefined);
  if (rows.length === 0) return null;
  const less = rows.length - EXPLAINED;
  return (
    <details>
      <summary>Why {shownShare(remedy.chance)}<span className="for-readers-only">: {remedy.does}</span></summary>
      <ul>
        {rows.slice(0, EXPLAINED).map(({ id, title, probability }) => <li key={id}>{title}: at work with {shownShare(probability)}, cured by this in {shownShare(page?.cures[id]?.chance ?? 0)} of such cases</li>)}
        {less > 0 && <li>{less === 1 ? 'one less likely cause' : `${less} less likely causes`}</li>}
      </ul>
    </details>
  );
}

function RemedyRow({ remedy, hasCured, best, causes, knowledge, onChoose }: { readonly remedy: RankedRemedy; readonly hasCured: boolean; readonly best: boolean; readonly causes: readonly RankedCause[]; readonly knowledge: Knowledge; readonly onChoose: () => void }) {
  const page = knowledge.remedies[remedy.id];
  return (
    <li className={best ? 'option option-best' : 'option'}>
      <div className="option-words">
        <h3>{remedy.does}{(remedy.isTried || hasCured) && <span className="quiet"> {remedy.isTried ? '(tried)' : '(cured it before)'}</span>}</h3>
        <p className="label">cures: {remedy.cures.slice(0, 3).map((id) => inSentence(knowledge.causes[id]?.title ?? id)).join('; ')}{remedy.cures.length > 3 && '; more'}</p>
        {page?.sideEffects && page.sideEffects.length > 0 && <p className="label">side effects: {page.sideEffects.map(inSentence).join('; ')}</p>}
      </div>
      <div className="option-bar">
        <span className="label">cures something at work</span>
        <ChanceBar chance={remedy.chance} low={remedy.chance} high={remedy.chance} accent={best} decorative /><b>{shownShare(remedy.chance)}</b>
        <WhyThisShare remedy={remedy} page={page} causes={causes} />
      </div>
      <dl className="option-facts">
        <div><dt className="label">hands</dt><dd>{formatMinutes(page?.minutes ?? remedy.minutes)}</dd></div>
        <div><dt className="label">printing</dt><dd>{formatMinutes((page?.printMinutes ?? 0) + (page?.provedBy.minutes ?? 0))}</dd>{page?.waitMinutes !== undefined && <dd className="label">{formatMinutes(page.waitMinutes)} waiting</dd>}</div>
        <div><dt className="label">money</dt><dd>{remedy.price.to === 0 ? '0' : `${remedy.price.from}–${remedy.price.to} €`}</dd></div>
        <div><dt className="label">undo</dt><dd>{page?.reversible ?? ''}</dd></div>
      </dl>
      <button type="button" className={best ? 'button button-next' : 'button'} onClick={onChoose}>Choose<span className="for-readers-only">: {remedy.does}</span></button>
    </li>
  );
}
