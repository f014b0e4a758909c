/** Runs jobs one after the other and leaves the page free in between. Gives back what calls off those not begun yet. */
export function inSteps(jobs: readonly (() => void)[], pause = 30): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const begin = (index: number): void => {
    timer = setTimeout(() => {
      jobs[index]?.();
      if (index + 1 < jobs.length) begin(index + 1);
    }, pause);
  };
  begin(0);
  return () => clearTimeout(timer);
}
