import Link from 'next/link';
import { GRADES, type WholeKnowledge } from '@/lib/knowledge';
import { shownShare } from '../_charts';
import { Drawing } from '../_drawings/drawing';
import { mostlyGrade } from '../_parts/grade-words';
import type { LeafSides } from './leaf-sides';
import { LinkTable, RestsOn, SourceNumbers, basisWords, cited, rowsOf } from './link-table';

/** What the knowledge base states of a symptom: its causes, what it follows from, and the words people use for it. */
export function symptomSides(id: string, knowledge: WholeKnowledge): LeafSides {
  const symptom = knowledge.symptoms[id];
  if (!symptom) return {};
  const sources = new SourceNumbers();
  const causes = cited(rowsOf(symptom.links), sources);
  const follows = cited(rowsOf(symptom.followsFrom), sources);
  const { grades } = symptom;
  const without = grades?.otherwise && { ...mostlyGrade(symptom.leakGrades), rests: basisWords(grades.otherwise.basis, sources) };
  return {
    figure: <Drawing spec={symptom.drawing} width={420} height={280} size="figure" />,
    right: (
      <>
        {grades && (
          <section>
            <h2>How bad it can be</h2>
            <dl className="facts">{GRADES.map((grade) => [<dt key={grade}>{grade}</dt>, <dd key={`${grade} words`}>{grades[grade]}</dd>])}</dl>
            {without && <p>Without a listed cause it is mostly {without.grade} {shownShare(without.share)} <span className="quiet">({without.rests})</span>.</p>}
          </section>
        )}
        <section><h2>What causes it</h2><LinkTable head="Cause" rows={causes} knowledge={knowledge} /></section>
        {follows.length > 0 && <section><h2>What it follows from</h2><LinkTable head="Seen earlier" rows={follows} knowledge={knowledge} /></section>}
      </>
    ),
    left: (
      <>
        {symptom.details.length > 0 && (
          <section><h2>Worth looking at when it is seen</h2><ul className="shelf-list">{symptom.details.map((detail) => <li key={detail}><Link prefetch={false} href={`/handbook/${detail}`}>{knowledge.symptoms[detail]?.title ?? detail}</Link></li>)}</ul></section>
        )}
        <section><h2>People say</h2><p className="quiet">{symptom.says.map((say) => `“${say}”`).join(', ')}</p></section>
        <RestsOn sources={sources} knowledge={knowledge} />
      </>
    ),
  };
}
