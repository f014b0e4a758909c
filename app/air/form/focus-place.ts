/** What can hold the focus inside a marked place. */
const FIELD = 'input, select, textarea';

/**
 * The places to look for, nearest first: the place itself without what stands round it ("the ± of", ", line 3"), then one step less
 * each time. Worked: `fan.points[2].flow` gives `fan.points[2].flow`, `fan.points[2]`, `fan.points`, `fan`.
 */
export function placesToTry(where: string): string[] {
  const place = /^(?:the ± of )?([A-Za-z]+(?:\[\d+\])?(?:\.[A-Za-z]+(?:\[\d+\])?)*)/u.exec(where)?.[1] ?? '';
  const steps = place.split(/(?=[.[])/u).filter(Boolean);
  return steps.map((_, index) => steps.slice(0, steps.length - index).join(''));
}

/** Brings the focus to the field of a place in the form, or to the nearest one that there is; closed groups are opened on the way. */
export function focusPlace(form: HTMLElement, where: string): void {
  const marked = [...form.querySelectorAll<HTMLElement>('[data-place]')];
  const told = (element: HTMLElement): string => element.dataset.place ?? '';
  const inside = (place: string, of: string): boolean => place === of || place.startsWith(`${of}.`) || place.startsWith(`${of}[`);
  const found = placesToTry(where).map((place) => marked.find((element) => told(element) === place) ?? marked.find((element) => inside(told(element), place))).find((element) => element !== undefined);
  for (let group = found?.closest('details'); group; group = group.parentElement?.closest('details')) group.open = true;
  const field = (found ?? form).querySelector<HTMLElement>(FIELD);
  field?.scrollIntoView({ block: 'center' });
  field?.focus({ preventScroll: true });
}
