import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { KnownFacts } from '../../app/case/known-facts';
import { NextStep } from '../../app/case/next-step';
import { TimeToCure } from '../../app/case/time-to-cure';
import { readContent } from '../../content/read-content';
import { caseSchema, type CaseFile, type Round } from '../../lib/cases';
import { diagnose } from '../../lib/diagnosis';

const content = readContent().value;
if (content === undefined) throw new Error('the content does not read');
const { knowledge } = content;

const fileOf = (state: CaseFile['state'], ...rounds: Round[]): CaseFile => caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'next', state, rounds, observations: [{ symptom: 'curled-edges', state: 'seen' }] });
const proven = (verdict: Round['verdict']): Round => ({ number: 1, remedy: 'print-cooler', fittedOn: '2026-11-20', verdict });

function pageOf(file: CaseFile): string {
  const diagnosis = diagnose(file, knowledge, { copies: 0 });
  if (diagnosis.kind !== 'diagnosis') throw new Error('next step: got no ranking, expected one');
  return renderToStaticMarkup(<><NextStep file={file} diagnosis={diagnosis} next={undefined} remedies={undefined} minutes={undefined} step={undefined} advice={undefined} knowledge={knowledge} /><KnownFacts file={file} items={diagnosis.items} facts={undefined} knowledge={knowledge} /></>);
}

describe('do this next', () => {
  it('lets a closed case go on', () => {
    expect(pageOf(fileOf('closed', proven('cured')))).toContain('>It came back</button>');
    expect(pageOf(fileOf('open', proven('better'), { number: 2 }))).not.toContain('It came back');
  });

  it('says first which change to take back after a proof in vain, above the next step and in the list of changes', () => {
    const page = pageOf(fileOf('open', proven('no-change'), { number: 2 }));
    const words = 'First take back “Print cooler in steps of 5 °C”. One change at a time, or no proof says which one did it.';
    expect(page.indexOf(words)).toBeGreaterThan(-1);
    expect(page.indexOf(words)).toBeLessThan(page.indexOf('Do this next'));
    expect(page).toContain('no change; take it back before the next change');
    expect(page).toMatch(/href="\/handbook\/print-cooler"[^>]*>Its steps and cautions.*>It is taken back<.*>I keep it</s);
    for (const takenBack of ['done', 'kept'] as const) expect(pageOf(fileOf('open', { ...proven('no-change'), takenBack }, { number: 2 }))).not.toMatch(/take it back|take back/);
    expect(pageOf(fileOf('open', proven('better'), { number: 2 }))).not.toMatch(/take it back|take back/);
  });

  it('says that its average times hold with changes alone after the first step', () => {
    const at = { minutes: 60, worst: 90, cured: 0.5, left: 0.5, money: 0 };
    expect(renderToStaticMarkup(<TimeToCure ahead={{ now: at, after: { ...at, minutes: 40 } }} />)).toContain('Average time until it is cured or you give up, with changes alone from there. The plan also weighs the checks after this one, so its figures differ.');
  });
});
