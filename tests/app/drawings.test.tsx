import { readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { AirPathPlan } from '@/app/_drawings/air-path-plan';
import { layOutAirPath, parallelTo } from '@/app/_drawings/air-path-layout';
import { Drawing, drawingWords } from '@/app/_drawings/drawing';
import { flowArrow, flowWeight } from '@/app/_drawings/flow-line';
import { fit, pathOn, sizes } from '@/app/_drawings/frame';
import type { Size } from '@/app/_drawings/frame';
import { KnownPart } from '@/app/_drawings/known-part';
import { spread } from '@/app/_drawings/labels';
import { stackOf } from '@/app/_drawings/stack-layers';
import { touchLayout } from '@/app/_drawings/touch-layout';
import { TouchPart } from '@/app/_drawings/touch-part';
import { touchZones } from '@/app/_drawings/touch-zones';
import { wordWidth } from '@/app/_drawings/word-width';
import { drawingSchema, ZONES } from '@/lib/knowledge';
import { plans, specimens, specs } from '../site/specimens';
import { collisions, forbidden, outside, renderSheets } from './rendered-sheet';

/** Words are placed with advances rounded into groups; this is their largest error over a label, px. */
const slack = 3;
const allSizes: readonly Size[] = ['row', 'step', 'figure'];

describe('every drawing that the knowledge base can ask for', () => {
  it('has a specimen of every kind in the schema, each valid by it', () => {
    const kinds = drawingSchema.options.map((option) => option.shape.show.value);
    expect(kinds.length).toBeGreaterThan(20);
    expect(new Set(specs.map((spec) => spec.show))).toEqual(new Set(kinds));
    expect(specs.filter((spec) => !drawingSchema.safeParse(spec).success)).toEqual([]);
  });

  it('has a specimen of every mark, fault and test print in the schema', () => {
    const missing = drawingSchema.options.flatMap((option) => {
      const kind = option.shape.show.value;
      return Object.entries(option.shape).flatMap(([name, field]) => optionsOf(field).filter((value) => !specs.some((spec) => spec.show === kind && (spec as Record<string, unknown>)[name] === value)).filter(() => ['mark', 'which', 'on', 'measures', 'state', 'bands', 'kind'].includes(name)).map((value) => `${kind}.${name} = ${value}`));
    });
    expect(missing.filter((m) => !m.endsWith('kind = radial'))).toEqual([]);
  });

  it('renders at every size with sound numbers, words inside the sheet and no words over others', () => {
    const findings = allSizes.flatMap((size) => specs.flatMap((spec) => renderSheets(<Drawing spec={spec} size={size} id="d" />).flatMap((sheet) => [...forbidden(sheet.markup), ...outside(sheet, slack), ...collisions(sheet)].map((found) => `${size} ${JSON.stringify(spec)}: ${found}`))));
    expect(findings).toEqual([]);
  });

  it('keeps its outlines inside the sheet too', () => {
    const findings = allSizes.flatMap((size) => specs.flatMap((spec) => renderSheets(<Drawing spec={spec} size={size} id="d" />).flatMap((sheet) => strayPoints(sheet.markup, sheet.width, sheet.height).map((found) => `${size} ${JSON.stringify(spec)}: ${found}`))));
    expect(findings).toEqual([]);
  });

  it('carries no words at row size, where they would be too small', () => {
    const worded = specs.filter((spec) => renderSheets(<Drawing spec={spec} size="row" id="d" />).some((sheet) => sheet.words.length > 0));
    expect(worded.map((spec) => JSON.stringify(spec))).toEqual([]);
  });

  it('says in words what it shows: other parameters, other words', () => {
    expect(drawingWords({ show: 'stack', curl: 0.9, layers: 8 })).toBe('A steep underside of 8 layers on the bed, the left edge curled up strongly.');
    const said = new Map(specs.map((spec) => [drawingWords(spec), spec]));
    expect(said.size).toBe(specs.length);
    expect([...said.keys()].filter((words) => !/^[A-Z].*\.$/.test(words))).toEqual([]);
  });

  it('is the same markup for the same parameters and id', () => {
    for (const spec of specs) expect(renderToStaticMarkup(<Drawing spec={spec} size="step" id="same" />)).toBe(renderToStaticMarkup(<Drawing spec={spec} size="step" id="same" />));
  });

  it('is left out for screen readers only when told that the words beside it say the same', () => {
    expect(renderToStaticMarkup(<Drawing spec={{ show: 'watch' }} decorative />)).toContain('aria-hidden="true"');
    expect(renderToStaticMarkup(<Drawing spec={{ show: 'watch' }} title="Step 2" />)).toContain('role="img" aria-label="Step 2. A stop watch."');
  });
});

describe('all specimens on one page', () => {
  const page = specimens.map((group) => renderToStaticMarkup(<>{group.items.map((item) => <div key={item.name}>{item.show}</div>)}</>)).join('');

  it('have ids of their own, and every hatch finds its pattern', () => {
    const ids = [...page.matchAll(/<pattern id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids.length).toBeGreaterThan(50);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    expect([...page.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id).filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('use only classes that the style sheet knows', () => {
    const css = readFileSync(`${import.meta.dirname}/../../app/_drawings/drawings.css`, 'utf8');
    const used = new Set([...page.matchAll(/class="([^"]+)"/g)].flatMap(([, names = '']) => names.split(' ')));
    const unknown = [...used].filter((name) => name.startsWith('d-') && !css.includes(`.${name}`));
    expect(used.size).toBeGreaterThan(30);
    expect(unknown.filter((name) => !['d-sheet', 'd-touch-sheet'].includes(name))).toEqual([]);
  });

  it('name every picture or hide it', () => {
    const nameless = [...page.matchAll(/<svg[^>]*>/g)].map(([tag]) => tag).filter((tag) => !tag.includes('aria-hidden="true"') && !/aria-label="[^"]+"/.test(tag) && !tag.includes('d-touch-sheet'));
    expect(nameless).toEqual([]);
  });
});

describe('geometry', () => {
  it('fits a box as large as it will go and carries paths into px', () => {
    const on = fit({ id: 'a', width: 104, height: 64, size: 'row' }, { w: 10, h: 10 }, { left: 2, right: 2, top: 2, bottom: 2 });
    // By hand: 60 px of height for 10 units gives k = 6; (104 − 60) / 2 = 22 px at the left.
    expect([on.k, on.left, on.top]).toEqual([6, 22, 2]);
    expect(pathOn(on, 'M0 0H10V5Q1 1 2 2A5 5 0 0 1 10 10Z')).toBe('M22 2H82V32Q28 8 34 14A30 30 0 0 1 82 62Z');
    expect(() => pathOn(on, 'M0 0l1 1')).toThrow(/expected one of/);
  });

  it('draws a retraction to scale: the filament ends higher by the length told, and the melt runs back or oozes', () => {
    // A step has 114 − 8 px of height for 32 mm where nothing hangs from the nozzle, 37 mm where a drop does.
    const of = (drawnBack: number, oozes: boolean): string => renderToStaticMarkup(<Drawing spec={{ show: 'hot-end', drawnBack, oozes }} size="step" id="r" />);
    const tipOf = (markup: string): number => Number(/d-thin d-fill-mid" d="M[^"]*?Q\S+ (\S+) /.exec(markup)?.[1]);
    expect(tipOf(of(1, false)) - tipOf(of(6, false))).toBeCloseTo((5 * 106) / 32, 1);
    expect(tipOf(of(1, true)) - tipOf(of(6, true))).toBeCloseTo((5 * 106) / 37, 1);
    expect(of(5, false)).toContain('>5 mm<');
    expect(of(0, true)).not.toContain(' mm<');
    expect(drawingWords({ show: 'hot-end', drawnBack: 5 })).toBe('A retraction in the cut hot end: the filament is pulled back by 5 mm, and the melt runs back from the nozzle tip.');
  });

  it('dimensions a length and nothing else: other words stand at the marked place', () => {
    const heads = (markup: string): number => [...markup.matchAll(/d-no-line d-fill-ink2" d="([^"]*)"/g)].reduce((count, [, d = '']) => count + d.split('Z').length - 1, 0);
    const feeder = (marked: string): string => renderToStaticMarkup(<Drawing spec={{ show: 'feeder', mark: 'gear', marked }} id="f" size="figure" />);
    expect([heads(feeder('100 mm asked')), heads(feeder('clicks here')), heads(feeder('1 mm/s'))]).toEqual([2, 0, 0]);
    expect(drawingWords({ show: 'feeder', mark: 'gear', marked: 'clicks here' })).toContain('marked: drive gear, clicks here.');
    expect(drawingWords({ show: 'hot-end', mark: 'heat-sink', temperature: '210 °C', above: '62 °C' })).toBe('The hot end cut along its axis; marked: heat sink, 62 °C; nozzle 210 °C.');
  });

  it('weighs air lines by speed and caps them at 12 m/s', () => {
    // look.md section 6: w = 0.55 + 0.36 v, arrow 8 + 0.7 v by 3 + 0.75 v.
    expect(flowWeight(3)).toBeCloseTo(1.63, 10);
    expect(flowArrow(3)).toEqual({ length: 8 + 2.1, width: 3 + 2.25 });
    expect(flowWeight(40)).toBe(flowWeight(12));
  });

  it('draws the air path to scale: a 40 mm frame is 40 k px, and so is every distance', () => {
    const [plan] = plans;
    const markup = renderToStaticMarkup(<AirPathPlan fan={plan.fan} duct={plan.duct} outlets={plan.outlets} width={700} id="p" />);
    // 3.43 px/mm at full width: 40 mm are 137.2 px, 15 mm to the mouth are 51.45 px.
    expect(markup).toContain('width="137.2" height="137.2"');
    const mouths = layOutAirPath(plan.fan, plan.duct, plan.outlets).outlets.map((o) => o.mouth);
    expect(mouths.map((m) => Math.hypot(m.x, m.y))).toEqual([15, 15]);
  });

  it('puts the fork so that both branches come as long as they are told where there is room', () => {
    const [plan] = plans;
    const drawn = layOutAirPath(plan.fan, plan.duct, plan.outlets).outlets.map(({ way }) => way.slice(2).reduce((sum, p, i) => sum + Math.hypot(p.x - (way[i + 1] ?? p).x, p.y - (way[i + 1] ?? p).y), 0));
    expect(drawn).toEqual([expect.closeTo(72, 6), expect.closeTo(44, 6)]);
  });

  it('says that the way of the branches is schematic, and never that something is not to scale', () => {
    const found = [700, 560, 358, 288].flatMap((width) => plans.map((plan) => renderToStaticMarkup(<AirPathPlan fan={plan.fan} duct={plan.duct} outlets={plan.outlets} width={width} />)));
    expect(found.filter((markup) => !markup.includes('schematic'))).toEqual([]);
    expect(found.filter((markup) => markup.includes('not to scale'))).toEqual([]);
  });

  it('sees the lee at the weaker outlet only, and moves with it', () => {
    const [plan] = plans;
    const swapped = plan.outlets.map((o, i) => ({ ...o, speed: plan.outlets[1 - i]?.speed ?? 0 }));
    expect(layOutAirPath(plan.fan, plan.duct, plan.outlets).outlets.map((o) => o.lee)).toEqual([true, false]);
    expect(layOutAirPath(plan.fan, plan.duct, swapped).outlets.map((o) => o.lee)).toEqual([false, true]);
  });

  it('keeps every plan inside its sheet, wide and on the phone', () => {
    const findings = [700, 560, 400, 358, 288].flatMap((width) => plans.flatMap((plan) => renderSheets(<AirPathPlan fan={plan.fan} duct={plan.duct} outlets={plan.outlets} width={width} id="p" />).flatMap((sheet) => [...forbidden(sheet.markup), ...outside(sheet, slack)].map((found) => `${plan.name} at ${width}: ${found}`))));
    expect(findings).toEqual([]);
  });

  it('makes parallels at the wanted distance, corners mitred', () => {
    const corner = parallelTo([{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }], 2);
    expect(corner.map(({ x, y }) => [x, y])).toEqual([[0, -2], [12, -2], [12, 10]]);
  });

  it('moves labels no closer than their gap and keeps them in range', () => {
    expect(spread([10, 12, 14], 0, 100, 20)).toEqual([10, 30, 50]);
    expect(spread([90, 95], 0, 100, 20)).toEqual([80, 100]);
  });

  it('shifts exactly the layers from the given one up, by the given number of layer heights', () => {
    const plain = stackOf({ show: 'stack', layers: 8 }).layers;
    const moved = stackOf({ show: 'stack', layers: 8, shift: 2, shiftAt: 5 }).layers;
    expect(moved.map((l, i) => l.left - (plain[i]?.left ?? 0))).toEqual([0, 0, 0, 0, 0, 2, 2, 2]);
    expect(moved.map((l) => l.fault)).toEqual([false, false, false, false, false, true, true, true]);
  });

  it('curls more from layer to layer on a steep underside, and only at the told side', () => {
    const lifts = stackOf({ show: 'stack', curl: 1, curlSide: 'left', layers: 9 }).layers;
    const left = lifts.map((l) => l.liftLeft);
    expect(left).toEqual([...left].sort((a, b) => a - b));
    expect(Math.max(...left)).toBeGreaterThan(2);
    expect(lifts.every((l) => l.liftRight === 0)).toBe(true);
  });

  it('reckons the width of words close to what a browser measured', () => {
    // Chromium 156, Sofia Sans Semi Condensed 600 at 1000 px, sums of single advances, 2026-11-25.
    const measured: Readonly<Record<string, number>> = { steep: 0.445 + 0.376 + 0.499 * 2 + 0.513, 'mm/s': 0.799 * 2 + 0.365 + 0.445, Words: 0.82 + 0.513 + 0.348 + 0.517 + 0.445 };
    const off = Object.entries(measured).filter(([word, em]) => Math.abs(wordWidth(word, 1) - em) > 0.05);
    expect(off).toEqual([]);
  });
});

describe('the part that is touched', () => {
  it('has one button for every zone of the knowledge base, each with a target of 44 px', () => {
    const markup = renderToStaticMarkup(<TouchPart width={632} id="t" onSelect={() => undefined} />);
    expect(touchZones.map((z) => z.id).sort()).toEqual([...ZONES].sort());
    expect(markup.match(/role="button" tabindex="0"/g)).toHaveLength(ZONES.length);
    expect(markup.match(/height="44"/g)).toHaveLength(ZONES.length);
  });

  it('says what is chosen and how much can happen there, by word and state, not by colour alone', () => {
    const markup = renderToStaticMarkup(<TouchPart width={632} id="t" selected="seam" counts={{ seam: 3 }} onSelect={() => undefined} />);
    expect(markup).toContain('aria-pressed="true" aria-label="seam, 3 things happen here"');
    expect(markup.match(/aria-pressed="true"/g)).toHaveLength(1);
  });

  it('keeps its words inside the sheet and apart from each other at every width, whatever is chosen', () => {
    const counts = Object.fromEntries(ZONES.map((zone) => [zone, 14]));
    const findings = [632, 358, 288].flatMap((width) => ZONES.flatMap((zone) => renderSheets(<TouchPart width={width} id="t" selected={zone} counts={counts} onSelect={() => undefined} />).flatMap((sheet) => [...forbidden(sheet.markup), ...outside(sheet, slack), ...collisions(sheet)].map((found) => `${width} ${zone}: ${found}`))));
    expect(findings).toEqual([]);
  });

  it('sets the phone’s labels 44 px apart', () => {
    const ys = touchZones.map((zone) => touchLayout(358).labels[zone.id]).filter((l) => l.anchor === 'end').map((l) => l.y).sort((a, b) => a - b);
    expect(ys.slice(1).map((y, i) => y - (ys[i] ?? 0))).toEqual([44, 44, 44, 44, 44]);
  });
});

describe('the part of the case', () => {
  it('draws what was seen and leaves out what was not', () => {
    const fact = { number: 1, about: 'a', drawing: { show: 'stack', curl: 0.7 }, faces: 'left' } as const;
    const seen = renderToStaticMarkup(<KnownPart facts={[{ ...fact, shape: 'seen' }]} />);
    const not = renderToStaticMarkup(<KnownPart facts={[{ ...fact, shape: 'not-seen' }]} />);
    expect(seen).toContain('curled up on the left');
    expect(seen).toContain('front, curl × 2');
    expect(not).toContain('nothing to draw yet');
    expect(not).not.toContain('d-bead-fault');
  });

  it('mirrors with the side that the fact faces', () => {
    const on = (faces: 'left' | 'right') => renderToStaticMarkup(<KnownPart facts={[{ number: 1, about: 'a', shape: 'seen', drawing: { show: 'stack', curl: 0.7 }, faces }]} />);
    expect(on('right')).toContain('curled up on the right');
    expect(on('right')).not.toBe(on('left'));
  });

  it('keeps five balloons on one side inside the sheet', () => {
    const facts = [1, 2, 3, 4, 5].map((number) => ({ number, about: String(number), shape: 'seen' as const, drawing: { show: 'stack' as const, curl: 0.5 }, faces: 'left' as const }));
    expect(renderSheets(<KnownPart facts={facts} />).flatMap((sheet) => outside(sheet, slack))).toEqual([]);
  });
});

/** The values of an enumeration in the schema, also when it may be left out. */
function optionsOf(field: unknown): string[] {
  const inner = typeof field === 'object' && field !== null && 'unwrap' in field && typeof field.unwrap === 'function' ? (field.unwrap as () => unknown)() : field;
  return typeof inner === 'object' && inner !== null && 'options' in inner && Array.isArray(inner.options) ? inner.options.filter((o): o is string => typeof o === 'string' && o !== 'none') : [];
}

/** Points of rectangles, circles and absolute path commands that lie outside the sheet by more than a line's width. */
function strayPoints(markup: string, width: number, height: number): string[] {
  const edge = 4;
  const drawn = markup.replace(/<defs>[\s\S]*?<\/defs>/g, '').replace(/<g transform[\s\S]*?<\/g><\/g>/g, '');
  const rects = [...drawn.matchAll(/<rect[^>]*? x="([^"]+)" y="([^"]+)" width="([^"]+)" height="([^"]+)"/g)].flatMap(([, x, y, w, h]) => [[Number(x), Number(y)], [Number(x) + Number(w), Number(y) + Number(h)]]);
  const circles = [...drawn.matchAll(/<circle[^>]*? cx="([^"]+)" cy="([^"]+)" r="([^"]+)"/g)].flatMap(([, x, y, r]) => [[Number(x) - Number(r), Number(y) - Number(r)], [Number(x) + Number(r), Number(y) + Number(r)]]);
  const starts = [...drawn.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
  return [...rects, ...circles, ...starts].filter(([x = NaN, y = NaN]) => !(x >= -edge && x <= width + edge && y >= -edge && y <= height + edge)).map(([x, y]) => `point ${String(x)}, ${String(y)} outside ${width} × ${height}`).slice(0, 3);
}

it('the sizes are those of the list, the step and the page', () => {
  // look.md section 8: match row 92 × 64, step 150 × 114.
  expect(sizes).toEqual({ row: { width: 92, height: 64 }, step: { width: 150, height: 114 }, figure: { width: 320, height: 220 } });
});
