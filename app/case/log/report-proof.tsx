import type { AirPathResult } from '@/lib/airflow';
import type { CaseFile, Observation, Round } from '@/lib/cases';
import { rankRemedies, whatWasTold } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { triedChanges } from '../../_case/tried-changes';
import { bandWords, shownShare } from '../../_charts';
import { inSentence } from '../../_parts/in-sentence';
import { VERDICT_WORDS, VerdictSign } from '../../_parts/signs';
import { judgedOf, typedRows } from '../prove/after-readings';
import { BeforeAfter } from '../prove/before-after';
import { asDirections, figuresOf } from '../prove/before-after-rows';
import { plotAir } from '../prove/case-air';
import { CurledArm } from '../prove/curled-arm';
import { DirectionPlots } from '../prove/direction-plots';
import { FixedRule } from '../prove/fixed-rule';
import { WhatIsLeft } from '../prove/what-is-left';
import type { Beliefs } from './report-facts';

export interface ProofReportProps {
  readonly file: CaseFile;
  readonly round: Round;
  readonly air: AirPathResult | undefined;
  readonly units: 'metric' | 'imperial';
  readonly knowledge: Knowledge;
  /** Said when a case has more than one round. */
  readonly numbered: boolean;
}

/** One round: what was changed and why, the rule fixed before, the readings before and after, and the verdict. */
export function ProofReport({ file, round, air, units, knowledge, numbered }: ProofReportProps) {
  const { criterion } = round;
  const rows = criterion ? typedRows(criterion, round.after, {}) : [];
  const unit = rows[0]?.before.unit ?? criterion?.limit?.unit ?? 'mm';
  const shown = { rows, limit: criterion?.limit, good: criterion?.good, unit };
  return (
    <div className="log-round">
      <p>{numbered && <b>Round {round.number}. </b>}<b>{round.option ?? knowledge.remedies[round.remedy ?? '']?.does}.</b> {round.why}{round.fittedOn === undefined ? ' Not fitted yet.' : ` Fitted ${moment(round.fittedOn)}, ${stepsWords(round.fitted?.length ?? 0)}.`}</p>
      {criterion && <div className="log-rule"><p className="label">Fixed before fitting{criterion.fixedOn !== undefined && `, ${moment(criterion.fixedOn)}`}</p><FixedRule criterion={criterion} /></div>}
      {criterion && rows.length > 0 && (
        <div className="log-proof">
          {asDirections(rows, shown) ? <DirectionPlots {...shown} width={316} alone air={plotAir(air, round, units)} /> : <CurledArm {...shown} passes={criterion.passes} figure={figuresOf(rows)} width={316} />}
          <BeforeAfter {...shown} width={120} rowHeight={25} />
        </div>
      )}
      {round.verdict && <LooksAgain looks={looksOfProof(file, round)} knowledge={knowledge} />}
      <p className="log-verdict">{round.verdict ? <><VerdictSign verdict={round.verdict} /> <b>{VERDICT_WORDS[round.verdict]}</b>{round.verdictOn !== undefined && <span className="quiet">{moment(round.verdictOn)}</span>}{cameBackAfter(file, round) && <span className="quiet">It came back.</span>}</> : <span className="quiet">Not proven yet.</span>}</p>
    </div>
  );
}

/** The looks of a proof. What was told of the next round after the verdict is no look of the proof: it came back, or was seen later. */
export function looksOfProof({ observations }: Pick<CaseFile, 'observations'>, { number, verdictOn }: Pick<Round, 'number' | 'verdictOn'>): Observation[] {
  return observations.filter((each) => each.round === number + 1 && (each.on === undefined || verdictOn === undefined || each.on.slice(0, verdictOn.length) <= verdictOn));
}

/** True where a proof said cured and the case went on all the same. */
export function cameBackAfter({ rounds }: Pick<CaseFile, 'rounds'>, { number, verdict }: Pick<Round, 'number' | 'verdict'>): boolean {
  return verdict === 'cured' && rounds.some((round) => round.number > number);
}

const LOOKED: Readonly<Record<Observation['state'], string>> = { seen: 'still there', 'not-seen': 'gone', 'cant-tell': 'can’t tell' };

function LooksAgain({ looks, knowledge }: { readonly looks: readonly Observation[]; readonly knowledge: Knowledge }) {
  if (looks.length === 0) return null;
  return <p>Looked at again: {looks.map((each, index) => <span key={each.symptom}>{index > 0 && '; '}{inSentence(knowledge.symptoms[each.symptom]?.title ?? each.symptom)}: <b>{LOOKED[each.state]}</b></span>)}.</p>;
}

/** What the last proof leaves open, the likeliest cause now, and the change that would come next. */
export function LeftReport({ file, beliefs, knowledge }: { readonly file: CaseFile; readonly beliefs: Beliefs; readonly knowledge: Knowledge }) {
  const proven = lastProven(file);
  const rows = proven?.criterion ? typedRows(proven.criterion, proven.after, {}) : [];
  const still = proven ? file.observations.filter((each) => each.round === proven.number + 1 && each.state === 'seen').map((each) => knowledge.symptoms[each.symptom]?.title ?? each.symptom) : [];
  const waiting = waitsForProof(file) !== undefined;
  const leader = !waiting && whatWasTold(file, beliefs.now.items) === 'something' ? beliefs.now.causes[0] : undefined;
  const [next] = rankRemedies(beliefs.now, knowledge, triedChanges(file));
  return (
    <>
      {proven?.verdict ? <WhatIsLeft judged={proven.criterion ? judgedOf(rows, proven.criterion) : undefined} looks={still} verdict={proven.verdict} unit={rows[0]?.before.unit ?? 'mm'} figure={figuresOf(rows)} /> : <p>{waiting ? 'The change is fitted; its proof print will say what is left.' : 'Nothing is proven yet.'}</p>}
      {file.state !== 'closed' && leader && <p>Likeliest now: <b>{inSentence(leader.title)}</b>, {shownShare(leader.probability)}{leader.low < leader.high && ` (${bandWords(leader)})`}.{next && <> First change to weigh: {inSentence(next.does)}.</>}</p>}
    </>
  );
}

/** The round whose change is fitted and not proven yet. Until then nobody knows whether its cause is still there. */
export function waitsForProof(file: CaseFile): Round | undefined {
  const round = file.rounds[file.rounds.length - 1];
  return round?.fittedOn !== undefined && round.verdict === undefined ? round : undefined;
}

/** The last round with a verdict. */
export function lastProven(file: CaseFile): Round | undefined {
  return [...file.rounds].reverse().find((round) => round.verdict !== undefined);
}

/** "21 May, 19:40". */
export function moment(on: string): string {
  return new Date(on).toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
}

const stepsWords = (count: number): string => `${count} ${count === 1 ? 'step' : 'steps'} ticked`;
