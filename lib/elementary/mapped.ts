/**
 * `list.map(make)` for objects, for code that runs often. The engine gives a list made by `map` one inner form before it
 * has compiled the call and another one after, and what was compiled for lists of the first form is thrown away.
 */
export function mapped<From, To extends object | undefined>(list: readonly From[], make: (item: From, index: number) => To): To[] {
  const made: To[] = [];
  let index = 0;
  for (const item of list) made.push(make(item, index++));
  return made;
}

/** As `mapped`, for numbers: lists of numbers and lists of objects have inner forms of their own. */
export function mappedNumbers<From>(list: readonly From[], make: (item: From, index: number) => number): number[] {
  const made: number[] = [];
  let index = 0;
  for (const item of list) made.push(make(item, index++));
  return made;
}
