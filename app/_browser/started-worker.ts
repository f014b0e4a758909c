/** The worker that this makes; undefined where the browser has none or refuses it at once. */
export function startedWorker(make: () => Worker): Worker | undefined {
  if (typeof Worker === 'undefined') return undefined;
  try {
    return make();
  } catch {
    return undefined;
  }
}
