import { mapped } from '@/lib/elementary';
import type { OutletFacts, SectionFacts } from './air-path';
import { isThinSlot, type OutletBranch } from './duct-network';
import { DISCHARGE_COEFFICIENT } from './fittings';
import { gapShares, inletLosses } from './path-faults';
import type { FanBranch, PathVariant } from './path-network';
import { ductColumn, fanColumn, logSpread, multiplierOf, outletColumn, sharedColumn, type UncertainInputs } from './uncertain-inputs';

/*
 * Spreads of the loss coefficients (log standard deviations). The published bands behind them: mitre 1.20 to 1.50,
 * contraction 0.31 to 0.50, discharge coefficient 0.58 to 0.70. Friction and branch: estimates; the branch covers the fork.
 */
const SPREAD = { bend: 0.12, contraction: 0.2, friction: 0.15, discharge: 0.05, branch: 0.2 } as const;

/** Columns as multipliers, worked out once per branch so the inner loop only multiplies. */
export interface Multipliers {
  readonly bend: Float64Array;
  readonly contraction: Float64Array;
  readonly friction: Float64Array;
  readonly discharge: Float64Array;
  readonly trunk: Float64Array;
  readonly leak: Float64Array;
  readonly area: readonly Float64Array[];
  /** Of a mouth with its fork, and of the way to it, where the size of the branch counts besides. */
  readonly branch: readonly Float64Array[];
  readonly way: readonly Float64Array[];
  /** Faults that nobody entered: extra gap as a share of all mouths, extra loss at the inlet; undefined when none is to be feared. */
  readonly extraGap: Float64Array | undefined;
  readonly extraInlet: Float64Array | undefined;
}

/** The uncertain inputs of a branch as multipliers, one value per sample each. All are 1 where every deviate is 0 and no fault is likelier than not. */
export function multipliersOf(branch: FanBranch, variant: PathVariant, inputs: UncertainInputs): Multipliers {
  const { section } = variant.duct;
  const shared = (name: Parameters<typeof sharedColumn>[1], spread: number): Float64Array => multiplierOf(inputs, sharedColumn(inputs, name), spread);
  const outletOf = (k: number): OutletFacts | undefined => variant.outlets[k];
  const slot = variant.ductSlot;
  const { faults = NO_FAULTS } = variant;
  const leakArea = variant.leaks.reduce((sum, leak) => sum + leak.area.value, 0);
  const leakPlusMinus = Math.hypot(...variant.leaks.map((leak) => leak.area.plusMinus));
  return {
    bend: shared('bend-loss', SPREAD.bend),
    contraction: shared('contraction-loss', SPREAD.contraction),
    friction: shared('friction', SPREAD.friction),
    discharge: shared('discharge', SPREAD.discharge),
    trunk: multiplierOf(inputs, ductColumn(inputs, slot, 'duct-area'), 2 * areaSpread(section)),
    leak: multiplierOf(inputs, ductColumn(inputs, slot, 'leak'), logSpread(leakArea, leakPlusMinus)),
    area: mapped(branch.outletIndices, (k) => {
      const outlet = outletOf(k);
      return multiplierOf(inputs, outletColumn(inputs, slot, k, 'outlet-area'), outlet === undefined ? 0 : mouthSpread(outlet));
    }),
    way: mapped(branch.outletIndices, (k) => {
      const run = outletOf(k)?.branch;
      return multiplierOf(inputs, outletColumn(inputs, slot, k, 'outlet-branch'), Math.hypot(SPREAD.branch, run === undefined ? 0 : 2 * areaSpread(run.section)));
    }),
    branch: mapped(branch.outletIndices, (k) => multiplierOf(inputs, outletColumn(inputs, slot, k, 'outlet-branch'), SPREAD.branch)),
    extraGap: faults.leak > 0 ? gapShares(ductColumn(inputs, slot, 'leak'), faults.leak) : undefined,
    extraInlet: faults.inlet > 0 ? inletLosses(fanColumn(inputs, variant.fanSlot, 'fan-inlet'), faults.inlet) : undefined,
  };
}

/**
 * How much of the uncertainty of the discharge coefficient counts in a mouth: none without a thin slot, and as far as the duct before
 * it holds the jet together there is nothing uncertain in it.
 */
export function contractsOf(outlet: OutletBranch): number {
  return isThinSlot(outlet) ? (DISCHARGE_COEFFICIENT * (1 - (outlet.area / outlet.branchArea) ** 3)) / outlet.dischargeCoefficient : 0;
}

const NO_FAULTS = { leak: 0, inlet: 0 } as const;

/** Logarithmic spread of an area. A circle has one diameter, which counts twice; two sides are two measurements. Worked: 10 ± 1 mm, a circle: 0.102. */
function areaSpread({ shape, width, height }: SectionFacts): number {
  const ofWidth = logSpread(width.value, width.plusMinus);
  return shape === 'circle' ? 2 * ofWidth : Math.hypot(ofWidth, logSpread(height.value, height.plusMinus));
}

function mouthSpread({ mouth, open }: OutletFacts): number {
  return open === undefined ? areaSpread(mouth) : Math.hypot(areaSpread(mouth), logSpread(open.value, open.plusMinus));
}
