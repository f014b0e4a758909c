// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { TouchPart } from '@/app/_drawings/touch-part';

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

let told: (string | undefined)[] = [];
let place: HTMLElement;
let root: ReturnType<typeof createRoot>;

beforeEach(() => {
  told = [];
  place = document.createElement('div');
  document.body.append(place);
  root = createRoot(place);
  act(() => root.render(<TouchPart width={632} id="t" selected="wall" onSelect={(zone) => told.push(zone)} />));
});
afterEach(() => act(() => root.unmount()));

const button = (name: string): Element => {
  const found = place.querySelector(`[aria-label="${name}"]`);
  if (found === null) throw new Error(`no button "${name}"`);
  return found;
};
const click = (on: Element | undefined): void => void on?.dispatchEvent(new MouseEvent('click', { bubbles: true }));
const press = (name: string, key: string): boolean => button(name).dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));

it('tells the touched place, and nothing when the chosen one is touched again', () => {
  act(() => { click(button('seam')); });
  act(() => { click(button('wall')); });
  expect(told).toEqual(['seam', undefined]);
});

it('obeys enter and space, keeps the page from scrolling, and leaves other keys alone', () => {
  let kept = [true];
  act(() => { kept = [press('hole', 'Enter'), press('thin tip', ' '), press('corner', 'Tab')]; });
  expect(told).toEqual(['hole', 'thin-tip']);
  expect(kept).toEqual([false, false, true]);
});

it('takes the area on the part as well as the words', () => {
  const [area] = button('steep underside').querySelectorAll('path.d-zone-area');
  act(() => { click(area); });
  expect(told).toEqual(['steep-underside']);
});
