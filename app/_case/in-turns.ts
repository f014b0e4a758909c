/** Runs work a turn at a time and leaves the page free in between; `hear` is told what each turn gave. Gives back what calls it off. */
export function inTurns<T, R>(work: Generator<T, R>, hear: (step: IteratorResult<T, R>) => void, pause: number): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = (): void => {
    timer = setTimeout(() => {
      const step = work.next();
      hear(step);
      if (step.done !== true) wait();
    }, pause);
  };
  wait();
  return () => clearTimeout(timer);
}
