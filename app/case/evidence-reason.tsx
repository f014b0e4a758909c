'use client';
import { casebookFactor, chanceByCasebook, circumstancesHold, type Evidence, type RankedCause, type Weight } from '@/lib/diagnosis';
import type { CaseFile, Casebook } from '@/lib/cases';
import type { CitedLink, Grade, WholeKnowledge, WholeSymptom } from '@/lib/knowledge';
import { bareShare, shownShare, weightWords } from '../_charts';
import { gradeShares } from '../_parts/grade-words';
import { comparedWords, multiplesWords } from '../_parts/reading-words';
import { basisInFull } from './basis-in-full';

/** Why one fact weighs what it weighs: the figures of the knowledge base behind it, what they rest on, and the three weights. */
export function EvidenceReason({ cause, weight, item, knowledge }: { readonly cause: RankedCause; readonly weight: Weight; readonly item: Evidence; readonly knowledge: WholeKnowledge | undefined }) {
  return (
    <div className="evidence-reason">
      {knowledge ? <Figures cause={cause.id} item={item} told={toldGrade(weight.items)} knowledge={knowledge} /> : <p>Fetching the figures behind it.</p>}
      <dl className="three-weights">
        <div><dt>On its own</dt><dd>{factorWords(weight.alone)}</dd></div>
        <div><dt>With all else known</dt><dd>{factorWords(weight.leaveOneOut)}</dd></div>
        <div><dt>Its share</dt><dd>{factorWords(weight.averaged)}</dd></div>
      </dl>
      <p className="label">{orderWords(weight)}</p>
    </div>
  );
}

/** Where the chance of a cause starts: how common it is, and what this machine and print make of that. */
export function StartReason({ cause, file, knowledge }: { readonly cause: RankedCause; readonly file: CaseFile; readonly knowledge: WholeKnowledge | undefined }) {
  const known = knowledge?.causes[cause.id];
  if (!known) return <div className="evidence-reason"><p>Fetching the figures behind it.</p></div>;
  const told = (known.context ?? []).filter((row) => circumstancesHold(row.when, file));
  return (
    <div className="evidence-reason">
      <p>{HOW_OFTEN[known.howOften]}: before anything is told it counts with {shownShare(known.prior)}, as one of {Object.keys(knowledge.causes).length} causes that must share one failure. This class is our estimate.</p>
      {told.map((row, index) => <p key={index}>Odds {factorWords(10 * Math.log10(row.odds))} it for {Object.values(row.when).flat().join(', ')}. <span className="quiet">{basisInFull(row.basis, knowledge)}</span></p>)}
      {file.casebook && <CasebookReason cause={cause.id} prior={known.prior} casebook={file.casebook} />}
      {told.length === 0 && (known.context ?? []).length > 0 && <p>Nothing told of machine and print changes that.</p>}
    </div>
  );
}

/** What the casebook makes of it; the words for it stand on the case page. */
function CasebookReason({ cause, prior, casebook }: { readonly cause: string; readonly prior: number; readonly casebook: Casebook }) {
  if (casebook.leftOut === true) return <p>Your casebook is left out.</p>;
  const { mean, deviation } = chanceByCasebook(prior, cause, casebook);
  return <p>Odds {factorWords(10 * Math.log10(casebookFactor(prior, cause, casebook)))} it by your casebook: it was what was cured in {(casebook.cured[cause] ?? 0).toFixed(1)} of {casebook.cases} cases. Class and cases together say {bareShare(mean)} ± {bareShare(deviation)}{'\u202F'}%. <span className="quiet">Each counts by how sure it was; a hundred cases would count as much as the class, and the odds never move by more than four times.</span></p>;
}

const HOW_OFTEN = { rare: 'A rare cause', uncommon: 'An uncommon cause', common: 'A common cause', 'very-common': 'A very common cause' } as const;

function Figures({ cause, item, told, knowledge }: { readonly cause: string; readonly item: Evidence; readonly told: Grade | undefined; readonly knowledge: WholeKnowledge }) {
  switch (item.kind) {
    case 'symptom': return <SymptomFigures cause={cause} symptom={item.about} told={told} knowledge={knowledge} />;
    case 'answer': return <AnswerFigures cause={cause} check={item.about} knowledge={knowledge} />;
    case 'reading': return <ReadingFigures cause={cause} check={item.about} knowledge={knowledge} />;
    default: return item satisfies never;
  }
}

function SymptomFigures({ cause, symptom, told, knowledge }: { readonly cause: string; readonly symptom: string; readonly told: Grade | undefined; readonly knowledge: WholeKnowledge }) {
  const known = knowledge.symptoms[symptom];
  if (!known) return null;
  const link = known.links[cause];
  const steps = Object.entries(known.followsFrom).filter(([earlier]) => knowledge.symptoms[earlier]?.links[cause]);
  return (
    <>
      {link && <LinkWords link={link} what="This cause shows it" knowledge={knowledge} />}
      {steps.map(([earlier, step]) => <LinkWords key={earlier} link={step} what={`It follows from “${knowledge.symptoms[earlier]?.title ?? earlier}”, which this cause shows,`} knowledge={knowledge} />)}
      {!link && steps.length === 0 && <p>This cause does not show it. It weighs only through the others: what another cause accounts for needs no second one.</p>}
      <p>With no listed cause it is seen in {shownShare(known.leak)} of such prints <span className="quiet">(class, our estimate)</span>.</p>
      {told && known.grades && <GradeFigures told={told} links={link ? [link] : steps.map(([, step]) => step)} symptom={known} knowledge={knowledge} />}
    </>
  );
}

/** How bad the symptom mostly is with this cause, and without any: what the told grade is held against. */
function GradeFigures({ told, links, symptom, knowledge }: { readonly told: Grade; readonly links: readonly CitedLink[]; readonly symptom: WholeSymptom; readonly knowledge: WholeKnowledge }) {
  const graded = links.filter((link) => link.grades !== undefined);
  const without = symptom.grades?.otherwise;
  return (
    <>
      <p>How bad it is was told: {told} ({symptom.grades?.[told]}).</p>
      {graded.map((link) => <p key={link.statedIn}>With this cause it is {gradeShares(link.grades ?? [])} of cases. {link.gradesRestOn && <span className="quiet">{basisInFull(link.gradesRestOn, knowledge)}</span>}</p>)}
      {links.length > 0 && graded.length === 0 && <p>How bad it is with this cause is not known: each grade is held for equally likely.</p>}
      <p>With no listed cause {without ? <>it is {gradeShares(symptom.leakGrades)}. <span className="quiet">{basisInFull(without.basis, knowledge)}</span></> : 'each grade is held for equally likely.'}</p>
    </>
  );
}

/** The grade told last: it is the one that counts. */
function toldGrade(items: readonly Evidence[]): Grade | undefined {
  return items.reduce<Grade | undefined>((last, item) => (item.kind === 'symptom' && item.seen ? (item.observation.severity ?? last) : last), undefined);
}

function AnswerFigures({ cause, check, knowledge }: { readonly cause: string; readonly check: string; readonly knowledge: WholeKnowledge }) {
  const known = knowledge.checks[check];
  const link = known?.yes[cause];
  if (!known) return null;
  return (
    <>
      {link ? <LinkWords link={link} what="With this cause the answer is “yes”" knowledge={knowledge} /> : <p>This check does not listen for this cause. It weighs only through the others.</p>}
      <p>With no listed cause the answer is “yes” in {shownShare(known.leak)} of cases <span className="quiet">(class, our estimate)</span>.</p>
    </>
  );
}

function ReadingFigures({ cause, check, knowledge }: { readonly cause: string; readonly check: string; readonly knowledge: WholeKnowledge }) {
  const known = knowledge.checks[check];
  const { answer } = known ?? {};
  if (!known || answer?.kind !== 'quantity') return null;
  const read = known.reads[cause];
  const usual = (median: number): string => comparedWords(median, answer);
  return (
    <>
      {read ? <p>With this cause it reads around {usual(read.median)}{read.multiplesOf && `, in ${multiplesWords(read.multiplesOf, answer) ?? ''}`}, in {shownShare(read.chance)} of cases. <span className="quiet">{basisInFull(read.basis, knowledge)}</span></p> : <p>This reading does not listen for this cause. It weighs only through the others.</p>}
      {known.otherwise && <p>On a sound machine it reads around {usual(known.otherwise.median)}.</p>}
    </>
  );
}

function LinkWords({ link, what, knowledge }: { readonly link: CitedLink; readonly what: string; readonly knowledge: WholeKnowledge }) {
  return <p>{what} in {shownShare(link.chance)} of cases{link.said === '' ? '' : ` (“${link.said.replace('-', ' ')}”)`}. <span className="quiet">{basisInFull(link.basis, knowledge)}</span></p>;
}

/** Why the three weights differ, when they do. */
function orderWords({ alone, leaveOneOut }: Weight): string {
  const sum = 'The shares of all facts multiply to the whole change.';
  if (Math.abs(alone - leaveOneOut) < 1) return `It weighs the same whatever else is known. ${sum}`;
  if (alone > 0 && leaveOneOut < alone) return `With all else known it says less for this cause: other facts or other causes account for it already. ${sum}`;
  return `What else is known changes what it says. Its share is the mean over every order in which the facts could have come. ${sum}`;
}

function factorWords(decibans: number): string {
  return weightWords(10 ** (decibans / 10)).words;
}
