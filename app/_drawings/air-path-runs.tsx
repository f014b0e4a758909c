import { wallThickness } from './air-path-layout';
import { joined } from './air-path-section';
import { airOf } from './air-path-unrolled';
import type { PlacedUnrolled } from './air-path-unrolled';
import { CutWalls } from './cut-walls';
import { FlowLine } from './flow-line';

/** Every branch laid straight and cut open, its bends marked, with the air that leaves its mouth; beside it its channel cut across. */
export function AirPathRuns({ id, unrolled }: { readonly id: string; readonly unrolled: PlacedUnrolled }) {
  const { k, runs, walls, across, ghosts, folds, rounds } = unrolled;
  return (
    <g>
      <CutWalls id={id} cut={joined([walls, across])} thick={wallThickness * k} />
      {ghosts !== '' && <path className="d-line d-ghost" d={ghosts} />}
      {rounds !== '' && <path className="d-line d-thin d-fill-wash" d={rounds} />}
      {folds !== '' && <path className="d-line d-thin" d={folds} />}
      {runs.map((run) => run.laid !== undefined && run.laid.outlet.speed >= 0.05 && <FlowLine key={run.key} points={airOf(run)} speed={run.laid.outlet.speed} />)}
    </g>
  );
}
