import { formatMinutes } from '@/lib/units';

/** How long a thing takes from start to end, and how much of that nobody has to stand by: "1 h 15, of which 1 h waiting". */
export function takesWords({ minutes, waitMinutes = 0 }: { readonly minutes: number; readonly waitMinutes?: number | undefined }): string {
  return waitMinutes > 0 ? `${formatMinutes(minutes)}, of which ${formatMinutes(waitMinutes)} waiting` : formatMinutes(minutes);
}
