import type { BendFacts, ChangeFacts, DuctFacts, Fact, LeakFacts, OutletFacts, RunFacts, SectionFacts } from './air-path';
import type { PathFields } from './path-fields';

const QUARTER_TURN = Math.PI / 2;

/** Inner size of a duct or mouth: width and height, or diameter. Faulty or missing sides stand in as assumed. */
export function readSection(fields: PathFields, usualPlusMinus: number, closes = true): SectionFacts {
  const rule = { moreThan: 0, max: 0.2, usualPlusMinus };
  const next = 'Measure the inner size with a calliper.';
  if (fields.has('diameter')) {
    const diameter = fields.quantityOr('diameter', 'length', rule, { value: 10e-3, plusMinus: 4e-3, next });
    if (closes) fields.close();
    return { shape: 'circle', width: diameter, height: diameter };
  }
  const width = fields.quantityOr('width', 'length', rule, { value: 15e-3, plusMinus: 7e-3, next });
  const height = fields.quantityOr('height', 'length', rule, { value: 6e-3, plusMinus: 3e-3, next });
  if (closes) fields.close();
  return { shape: 'rectangle', width, height };
}

/** The duct between fan and fork. Without a section it takes the fan's outlet. */
export function readDuct(fields: PathFields, fanOutlet: SectionFacts): DuctFacts {
  const given = fields.has('section');
  const mode = fields.choice('mode', ['static', 'total'] as const) ?? 'total';
  if (!given) fields.assume('section', 'Measure the inner width and height of the duct behind the fan.');
  const duct: DuctFacts = {
    mode,
    section: given ? readSection(fields.object('section'), 0.3e-3) : assumedSection(fanOutlet),
    length: fields.quantityOr('length', 'length', { min: 0, max: 2, usualPlusMinus: 3e-3 }, { value: 30e-3, plusMinus: 25e-3, next: 'Measure along the middle of the duct.' }),
    bends: readBends(fields),
    changes: readChanges(fields),
    roughness: fields.quantity('roughness', 'length', { min: 0, max: 2e-3, usualShare: 0.5 })
      // Printed walls: 0.02 to 0.1 mm, from memory.
      ?? { kind: 'length', value: 0.05e-3, plusMinus: 0.03e-3, basis: 'assumed' },
  };
  fields.close();
  return duct;
}

/** All outlets, one to four; without any, two opposite ones of usual size with wide limits. */
export function readOutlets(parent: PathFields): readonly OutletFacts[] {
  const entries = parent.list('outlets');
  if (entries.length > 4) parent.tell('too-many-outlets', 'outlets', `${entries.length} outlets stand here.`, 'Join outlets that lie side by side into one.', 'one to four');
  const outlets = entries.slice(0, 4).map((fields, k) => readOutlet(fields, k, entries.length));
  if (outlets.length > 0) return outlets;
  parent.assume('outlets', 'Measure width and height of every outlet, and which way it faces.');
  return [usualOutlet('left', Math.PI), usualOutlet('right', 0)];
}

/** Gaps through which air escapes. A list that is missing leaves a small unknown leak at the seam; an empty list is a sealed path. */
export function readLeaks(parent: PathFields, outlets: readonly OutletFacts[]): readonly LeakFacts[] {
  if (!parent.has('leaks')) {
    parent.assume('leaks', 'Hold a strip of thin paper along the seam between fan and duct with the fan running.');
    return [{ name: 'seam between fan and duct', at: 'fan', outlet: undefined, area: { kind: 'area', value: 2e-6, plusMinus: 4e-6, basis: 'assumed' } }];
  }
  return parent.list('leaks').map((fields, k) => {
    const place = leakPlace(fields, outlets);
    const name = fields.text('name') ?? `gap ${k + 1}`;
    const area = fields.has('area') ? fields.quantity('area', 'area', { min: 0, max: 0.01, usualShare: 0.4 }) : areaOfGap(fields);
    fields.close();
    return { name, ...place, area: area ?? { kind: 'area', value: 4e-6, plusMinus: 6e-6, basis: 'assumed' } };
  });
}

/** At the fan, at the fork, or at an outlet by its name. */
function leakPlace(fields: PathFields, outlets: readonly OutletFacts[]): Pick<LeakFacts, 'at' | 'outlet'> {
  const names = outlets.map((outlet) => outlet.name);
  const typed = fields.choice('at', ['fan', 'fork', ...names]) ?? 'fan';
  if (typed === 'fan' || typed === 'fork') return { at: typed, outlet: undefined };
  return { at: 'outlet', outlet: names.indexOf(typed) };
}

function areaOfGap(fields: PathFields): Fact<'area'> {
  const next = 'Measure how long and how wide the gap is; paper is 0.1 mm thick.';
  const length = fields.quantityOr('length', 'length', { min: 0, max: 1, usualPlusMinus: 2e-3 }, { value: 20e-3, plusMinus: 15e-3, next });
  const gap = fields.quantityOr('gap', 'length', { min: 0, max: 0.02, usualPlusMinus: 0.1e-3 }, { value: 0.2e-3, plusMinus: 0.2e-3, next });
  const plusMinus = Math.hypot(length.plusMinus * gap.value, gap.plusMinus * length.value);
  return { kind: 'area', value: length.value * gap.value, plusMinus, basis: length.basis };
}

function readOutlet(fields: PathFields, k: number, count: number): OutletFacts {
  const name = fields.text('name') ?? `outlet ${k + 1}`;
  const outlet: OutletFacts = {
    name,
    mouth: readSection(fields, 0.2e-3, false),
    open: fields.quantity('open', 'ratio', { min: 0.05, max: 1, usualPlusMinus: 0.05 }),
    ending: fields.choice('ending', ['land', 'thin', 'tapered', 'open'] as const) ?? 'land',
    direction: fields.quantityOr('direction', 'angle', { min: -2 * Math.PI, max: 2 * Math.PI, usualPlusMinus: 0.1 }, {
      value: (Math.PI + (2 * Math.PI * k) / count) % (2 * Math.PI), plusMinus: 0.5, next: 'Say where it stands round the nozzle: 0° right, 90° back, 180° left, 270° front.',
    }),
    tilt: fields.quantityOr('tilt', 'angle', { min: -0.5, max: QUARTER_TURN, usualPlusMinus: 0.07 }, { value: 0.5, plusMinus: 0.4, next: 'Measure how far the jet points down from level.' }),
    distance: fields.quantityOr('distance', 'length', { moreThan: 0, max: 0.3, usualPlusMinus: 1.5e-3 }, { value: 18e-3, plusMinus: 9e-3, next: 'Measure from the mouth to the spot under the nozzle.' }),
    miss: fields.quantity('miss', 'length', { min: 0, max: 0.1, usualPlusMinus: 1e-3 }) ?? { kind: 'length', value: 0, plusMinus: 1e-3, basis: 'assumed' },
    aimError: fields.quantity('aimError', 'angle', { min: 0, max: 1 }) ?? { kind: 'angle', value: (6 * Math.PI) / 180, plusMinus: 0, basis: 'assumed' },
    branch: fields.has('branch') ? readBranch(fields.object('branch')) : undefined,
    fan: fields.count('fan', 1, 2) ?? 1,
  };
  fields.close();
  return outlet;
}

function readBranch(fields: PathFields): RunFacts {
  if (!fields.has('bends')) fields.tell('bends-not-said', 'bends', 'Its bends are not said; it is reckoned without any.', 'Count them from the fork to the mouth. An empty list says that there are none.', undefined, 'note');
  const run: RunFacts = {
    section: readSection(fields.object('section'), 0.3e-3),
    length: fields.quantityOr('length', 'length', { min: 0, max: 2, usualPlusMinus: 2e-3 }, { value: 30e-3, plusMinus: 20e-3, next: 'Measure along the middle of the branch.' }),
    bends: readBends(fields),
    changes: readChanges(fields),
  };
  fields.close();
  return run;
}

/** Places where a run becomes wider or narrower: at most four, each a section with an angle for sloping walls and the length after it. */
function readChanges(parent: PathFields): ChangeFacts[] {
  const entries = parent.list('changes');
  if (entries.length > 4) parent.tell('too-many-changes', 'changes', `${entries.length} changes of section stand here.`, 'Join steps that follow close upon each other into one.', 'up to four');
  return entries.slice(0, 4).map((fields) => {
    const change: ChangeFacts = {
      to: readSection(fields, 0.3e-3, false),
      angle: fields.quantity('angle', 'angle', { min: 0, max: Math.PI, usualPlusMinus: 0.09 }),
      length: fields.quantity('length', 'length', { min: 0, max: 2, usualPlusMinus: 2e-3 }) ?? { kind: 'length', value: 0, plusMinus: 0, basis: 'assumed' },
    };
    fields.close();
    return change;
  });
}

function readBends(parent: PathFields): BendFacts[] {
  return parent.list('bends').map((fields) => {
    const kind = fields.choice('kind', ['mitre', 'radius'] as const) ?? 'mitre';
    const angle = fields.quantity('angle', 'angle', { moreThan: 0, max: 2, usualPlusMinus: 0.09 }) ?? { kind: 'angle', value: QUARTER_TURN, plusMinus: 0.15, basis: 'assumed' as const };
    const radius = kind === 'mitre' ? fields.quantity('radius', 'length') : fields.quantityOr('radius', 'length', { moreThan: 0, max: 1, usualPlusMinus: 1e-3 }, { value: 15e-3, plusMinus: 8e-3, next: 'Measure the radius to the middle of the duct.' });
    fields.close();
    return { kind, angle, radius: kind === 'mitre' ? undefined : radius };
  });
}

function assumedSection(section: SectionFacts): SectionFacts {
  const wide = (fact: Fact<'length'>): Fact<'length'> => ({ ...fact, plusMinus: Math.max(fact.plusMinus, 0.2 * fact.value), basis: 'assumed' });
  return { shape: section.shape, width: wide(section.width), height: wide(section.height) };
}

function usualOutlet(name: string, direction: number): OutletFacts {
  const length = (value: number, plusMinus: number): Fact<'length'> => ({ kind: 'length', value, plusMinus, basis: 'assumed' });
  const angle = (value: number, plusMinus: number): Fact<'angle'> => ({ kind: 'angle', value, plusMinus, basis: 'assumed' });
  return {
    name,
    mouth: { shape: 'rectangle', width: length(15e-3, 6e-3), height: length(4e-3, 2e-3) },
    open: undefined, ending: 'land', direction: angle(direction, 0.5), tilt: angle(0.5, 0.4), distance: length(18e-3, 9e-3), miss: length(0, 2e-3),
    aimError: angle(0.14, 0), branch: undefined, fan: 1,
  };
}
