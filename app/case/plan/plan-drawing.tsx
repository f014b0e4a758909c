import type { PlanNode } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { px } from '../../_drawings/frame';
import { Words } from '../../_drawings/words';
import { LINE, layOut, type PlacedStep } from './plan-layout';

/** The plan as a tree from left to right; a line is as wide as its way is likely. The list says the same in words. */
export function PlanDrawing({ root, knowledge, width }: { readonly root: PlanNode; readonly knowledge: Knowledge; readonly width: number }) {
  const { steps, height } = layOut(root, knowledge, width);
  return (
    <svg xmlns="http://www.w3.org/2000/svg" className="d-sheet" width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="group" aria-label="The plan as a tree">
      {steps.map((step, index) => <Way key={index} step={step} />)}
      {steps.map((step, index) => <StepOnSheet key={index} step={step} isFirst={index === 0} />)}
    </svg>
  );
}

function Way({ step: { from, x, y, weight } }: { readonly step: PlacedStep }) {
  if (!from) return null;
  const turn = from.x + 16;
  return <path className="d-line d-stroke-ink plan-way" strokeWidth={px(weight)} d={`M${px(from.x + 6)} ${px(from.y)}H${px(turn)}V${px(y)}H${px(x - 6)}`} />;
}

function StepOnSheet({ step, isFirst }: { readonly step: PlacedStep; readonly isFirst: boolean }) {
  const { x, y, branch, title, facts, href, node } = step;
  const firstLine = y + 8 + LINE.title - 5;
  const lines = title.map((line, index) => <Words key={index} x={x} y={firstLine + index * LINE.title} size={15} strong tone={isFirst ? 'accent' : 'ink'}>{line}</Words>);
  const factTop = y + 8 + title.length * LINE.title + 12;
  return (
    <g>
      {branch.map((line, index) => <Words key={index} x={x} y={y - 6 - (branch.length - 1 - index) * LINE.branch} tone="ink2" halo>{line}</Words>)}
      <path className={`d-line ${isFirst ? 'd-accent' : 'd-thin'}`} d={`M${px(x)} ${px(y)}h${px(node.kind === 'cured' ? 40 : 120)}`} />
      {href === undefined ? lines : <a href={href} className="plan-link"><rect className="d-zone-area" x={px(x)} y={px(y + 2)} width={240} height={Math.max(24, title.length * LINE.title + 6)} />{lines}</a>}
      {facts.map((line, index) => <Words key={index} x={x} y={factTop + index * LINE.fact} tone="ink2">{line}</Words>)}
      {node.kind === 'cured' && <circle className="d-fill-ink" cx={px(x + 60)} cy={px(firstLine - 5)} r={6} />}
    </g>
  );
}
