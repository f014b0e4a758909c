import { rankBands, type Prepared } from '../inference';
import { havingAHand } from './having-a-hand';

/** Range of a chance, and of a place in the ranking, over plausible readings of the figures behind them. */
export interface Band {
  readonly low: number;
  readonly high: number;
  readonly bestRank: number;
  readonly worstRank: number;
}

/** Standard deviation of the log odds by which every figure is shaken (natural log). Choice after diagnosis.md 4. */
const NOISE = 0.5;
const SEED = 20260521;

/**
 * 90 % range of every cause's chance and rank when priors, links and leaks of the knowledge base are each off by a random
 * factor on their odds (log odds normal, standard deviation 0.5), over `copies` copies. The same seed every time, so the
 * same case shows the same band.
 */
export function likelyRange(prepared: Prepared, isFound: boolean, copies: number): Band[] {
  if (copies === 0) return [];
  return rankBands(prepared, { copies, sd: NOISE, seed: SEED, chances: (copy) => havingAHand(copy, prepared.firstState, isFound) });
}
