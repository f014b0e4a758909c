import type { KnownRemedy } from '@/lib/knowledge';

/** From this chance on of curing a weak fan, a change that the air path decides is another fan; slower layers only help with it. */
const SURE = 0.8;

/** Whether a change fits a new fan. */
export const bringsFan = (remedy: KnownRemedy): boolean => remedy.decidedBy === 'air-path' && (remedy.cures['weak-part-fan']?.chance ?? 0) > SURE;
