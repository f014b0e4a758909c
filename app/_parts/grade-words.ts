import { GRADES, type Grade } from '@/lib/knowledge';
import { shownShare } from '../_charts';

/** "slight in 8 %, clear in 26 %, severe in 66 %" for the shares 0.08, 0.26 and 0.66. */
export function gradeShares(shares: readonly number[]): string {
  return GRADES.map((grade, place) => `${grade} in ${shownShare(shares[place] ?? 0)}`).join(', ');
}

/** The grade with the largest share, and that share. For 0.08, 0.26 and 0.66: severe, 0.66. */
export function mostlyGrade(shares: readonly number[]): { readonly grade: Grade; readonly share: number } {
  return GRADES.map((grade, place) => ({ grade, share: shares[place] ?? 0 })).reduce((most, each) => (each.share > most.share ? each : most));
}
