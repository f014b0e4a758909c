import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { checksOfCase, stepOfCase } from '../../app/_case/step-of-case';
import { withTool, withoutTool } from '../../app/_case/tools-at-hand';
import { NeededFlow } from '../../app/bench/needed-flow';
import { NextRegion } from '../../app/case/case-screen';
import { CauseTree } from '../../app/case/cause-tree';
import { ConflictNote } from '../../app/case/conflict-note';
import { WhyThisShare } from '../../app/case/decide/decide-screen';
import { NextStep } from '../../app/case/next-step';
import { readContent } from '../../content/read-content';
import { caseSchema, type CaseFile } from '../../lib/cases';
import { BRANCH_TITLES } from '../../lib/knowledge';
import { diagnose, minutesToCure, rankRemedies, toldStep, type Diagnosis, type LookAgain, type ToldStep } from '../../lib/diagnosis';

const content = readContent().value;
if (content === undefined) throw new Error('the content does not read');
const { knowledge } = content;

const fileOf = (...seen: string[]): CaseFile => caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'shown', observations: seen.map((symptom) => ({ symptom, state: 'seen' })) });
function ranking(file: CaseFile): Diagnosis {
  const result = diagnose(file, knowledge, { copies: 0 });
  if (result.kind !== 'diagnosis') throw new Error('got no ranking, expected one');
  return result;
}

describe('the next check', () => {
  const file = fileOf('curled-edges', 'curl-worse-one-side', 'displaced-layers');
  const result = ranking(file);
  const next = checksOfCase(result, file, knowledge);
  const { advice, ways, step } = stepOfCase(result, next, file, knowledge);
  const cardOf = (each: CaseFile): string => renderToStaticMarkup(<NextStep file={each} diagnosis={result} next={next} remedies={rankRemedies(result, knowledge)} minutes={minutesToCure(ways.shown)} step={toldStep(step)} advice={advice} knowledge={knowledge} />);

  it('says before tools and minutes which causes it tells of, with their chances', () => {
    expect(step.kind).toBe('check');
    expect(cardOf(file)).toMatch(/<p>Tells whether this is so: [a-z][^<]* \(\d+\u202F%\)( or [^<]* \(\d+\u202F%\))?\.<\/p>.*<dt>Takes<\/dt>/s);
  });

  it('leaves a way to say that a tool is there after all', () => {
    expect(cardOf(file)).not.toContain('Without:');
    const page = cardOf({ ...file, lacksTools: ['multimeter'] });
    expect(page).toContain('Without: multimeter');
    expect(page).toContain('>I have one</button>');
    expect(cardOf({ ...file, state: 'closed', lacksTools: ['multimeter'] })).not.toContain('Without:');
  });

  it('stands below the notice that its answers do not go together, and above nothing of the kind while they do', () => {
    const diagnosis = { result, next, remedies: rankRemedies(result, knowledge), banded: undefined, step: toldStep(step), lastStep: undefined, reasons: {}, advice, isSettled: true, was: [] };
    const regionWith = (size: number): string => renderToStaticMarkup(<NextRegion file={file} diagnosis={diagnosis} conflict={{ size, again: undefined }} knowledge={knowledge} />);
    expect(regionWith(5)).toMatch(/^<div class="conflict">.*Do this next/s);
    expect(regionWith(0)).not.toContain('conflict');
  });

  it('forgets a tool that is there after all, and keeps the others', () => {
    const lacking = withoutTool(withoutTool(withoutTool(file, 'multimeter'), 'air-speed-meter'), 'multimeter');
    expect(lacking.lacksTools).toEqual(['multimeter', 'air-speed-meter']);
    expect(withTool(lacking, 'multimeter').lacksTools).toEqual(['air-speed-meter']);
    expect(withTool(withTool(lacking, 'multimeter'), 'air-speed-meter')).toEqual(file);
  });
});

describe('what stands beside a figure', () => {
  it('a cause that nothing told points to gets no nought, and says why', () => {
    const file = fileOf('strings');
    const none = { ...ranking(file), branches: [{ part: 'bed' as const, probability: 0, causes: ['dirty-plate'] }] };
    const tree = renderToStaticMarkup(<CauseTree diagnosis={none} banded={undefined} weights={undefined} was={[]} next={undefined} step={undefined} file={file} knowledge={knowledge} />).split('class="unlisted')[0] ?? '';
    expect(tree).toContain('nothing told points here');
    expect(tree).not.toMatch(/>0\u202F%|0–0/);
  });

  it('the part of the machine that the next step is about is shown, also where nothing stands out in it', () => {
    const file = fileOf('strings');
    const result = ranking(file);
    const treeFor = (step: ToldStep | undefined): string => renderToStaticMarkup(<CauseTree diagnosis={result} banded={undefined} weights={undefined} was={[]} next={undefined} step={step} file={file} knowledge={knowledge} />);
    expect(treeFor(undefined)).not.toContain(BRANCH_TITLES['part-cooling']);
    expect(treeFor({ kind: 'change', id: 'fit-stronger-part-fan' })).toContain(BRANCH_TITLES['part-cooling']);
  });

  it('a part of the machine that is likelier than one shown is shown', () => {
    const file = fileOf('strings');
    const result = ranking(file);
    // Nothing in the electrics is raised; as a whole they are made likelier here than the least of what stands out.
    const branches = result.branches.map((branch) => (branch.part === 'electrics' ? { ...branch, get probability() { return 0.9; } } : branch));
    const causes = result.causes.map((cause) => (cause.part === 'electrics' ? { ...cause, probability: 0.07, before: 0.07 } : cause));
    const tree = renderToStaticMarkup(<CauseTree diagnosis={{ ...result, branches, causes }} banded={undefined} weights={undefined} was={[]} next={undefined} step={undefined} file={file} knowledge={knowledge} />);
    expect(tree).toContain(BRANCH_TITLES.electrics);
  });

  it('a lead below a tenth is none: the conflict notice does not name it', () => {
    const [item] = ranking(fileOf('strings')).items;
    if (item === undefined) throw new Error('got nothing told, expected one thing');
    const noteWith = (chance: number): string => renderToStaticMarkup(<ConflictNote size={5} again={{ items: [item], conflictWithout: 0, leaderWithout: { id: 'damp-filament', chance } } as unknown as LookAgain} knowledge={knowledge} />);
    expect(noteWith(0.4)).toContain('leads with 40\u202F%');
    expect(noteWith(0.02)).toMatch(/Without it the rest goes together\.</);
  });

  it('a change says from which causes its chance comes', () => {
    const result = ranking(fileOf('curled-edges'));
    const remedy = rankRemedies(result, knowledge).find(({ id }) => id === 'fit-stronger-part-fan');
    if (remedy === undefined) throw new Error('got no stronger fan among the changes, expected one');
    const why = renderToStaticMarkup(<WhyThisShare remedy={remedy} page={knowledge.remedies[remedy.id]} causes={result.causes} />);
    expect(why).toMatch(/<summary>Why \d+\u202F%</);
    expect(why).toMatch(/The part fan moves too little air: at work with \d+\u202F%, cured by this in \d+\u202F% of such cases/);
    expect(renderToStaticMarkup(<WhyThisShare remedy={remedy} page={{ cures: {} }} causes={result.causes} />)).toBe('');
  });

  it('a flow that is held against the need of the print leads to the air path, and nothing else does', () => {
    const linkOf = (check: string): string => renderToStaticMarkup(<>{knowledge.checks[check] && <NeededFlow answer={knowledge.checks[check].answer} />}</>);
    expect(linkOf('part-fan-flow-in-duct')).toContain('href="/air"');
    expect(linkOf('retraction-length-set')).toBe('');
    expect(linkOf('file-asks-for-fan')).toBe('');
  });
});
