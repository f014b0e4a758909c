import type { ReactNode } from 'react';
import { BudgetBar, ChanceAxis, ChanceBar, ChangeBar, CurveChart, DirectionAxis, DirectionMarks, IntervalAxis, IntervalBar, IntervalRows, NumberLine, PolarBeforeAfter, ReadingStrip, ReliabilityStrip, TimeBars, WeightBar, directions } from '@/app/_charts';
import { AirPathPlan } from '@/app/_drawings/air-path-plan';
import { BalloonMark } from '@/app/_drawings/balloon';
import { Drawing } from '@/app/_drawings/drawing';
import { KnownPart } from '@/app/_drawings/known-part';
import { Mark } from '@/app/_drawings/mark';
import { FanGlyph, OptionGlyph } from '@/app/_drawings/option-glyph';
import { TouchPart } from '@/app/_drawings/touch-part';
import type { Size } from '@/app/_drawings/frame';
import type { Drawing as Spec } from '@/lib/knowledge';

export interface SpecimenGroup {
  readonly name: string;
  readonly items: readonly { readonly name: string; readonly show: ReactNode }[];
}

/** One or more drawings of every kind, with usual and with extreme parameters. Invented readings. */
export const specs: readonly Spec[] = [
  { show: 'stack' },
  { show: 'stack', curl: 0.6, layers: 8 },
  { show: 'stack', curl: 1, curlSide: 'both', layers: 9 },
  { show: 'stack', curl: 0.5, curlSide: 'right', shape: 'block' },
  { show: 'stack', shift: 2, shiftAt: 5, layers: 9 },
  { show: 'stack', shift: -1 },
  { show: 'stack', lean: 3 },
  { show: 'stack', liftedCorners: 0.8, layers: 6 },
  { show: 'stack', gaps: 5 },
  { show: 'stack', split: 5 },
  { show: 'stack', bands: 'every-few-layers', layers: 12 },
  { show: 'stack', bands: 'irregular', layers: 12 },
  { show: 'stack', ripple: 0.8 },
  { show: 'stack', blobs: 5 },
  { show: 'stack', wideFoot: 1 },
  { show: 'stack', thin: 0.8 },
  { show: 'stack', stopsAt: 5 },
  { show: 'stack', melted: 0.7, shape: 'pyramid' },
  { show: 'stack', melted: 0.5, shape: 'tower' },
  { show: 'stack', layers: 16, curl: 1, shift: 4, lean: 4 },
  { show: 'stack', layers: 3, curl: 1, shift: -4 },
  { show: 'stack', shape: 'pyramid', layers: 10 },
  { show: 'towers', strings: 5 },
  { show: 'towers', strings: 9, thick: true },
  { show: 'bridge' },
  { show: 'bridge', sag: 0.6, loose: 2 },
  { show: 'bridge', sag: 1, loose: 5 },
  ...(['first-layer', 'top', 'wall', 'hole', 'inside'] as const).map((which): Spec => ({ show: 'face', which })),
  ...(['gaps', 'not-stuck', 'ridges', 'scars', 'pillows', 'missing-lines', 'too-thin', 'too-squashed', 'zits', 'one-corner', 'ripple', 'scale-texture'] as const).map((fault): Spec => ({ show: 'face', which: 'top', fault })),
  ...(['gaps', 'ridges', 'scars', 'ripple', 'scale-texture', 'zits', 'delaminated', 'too-thin', 'too-squashed', 'not-stuck'] as const).map((fault): Spec => ({ show: 'face', which: 'wall', fault })),
  { show: 'face', which: 'hole', fault: 'oval' },
  { show: 'face', which: 'hole', fault: 'too-thin' },
  { show: 'face', which: 'inside', fault: 'loose-infill' },
  { show: 'face', which: 'inside', fault: 'gaps' },
  { show: 'face', which: 'inside', fault: 'zits' },
  { show: 'fan' },
  { show: 'fan', kind: 'radial', size: 40, label: '24 V, 0.12 A' },
  { show: 'fan', kind: 'axial', stopped: true },
  { show: 'fan', kind: 'axial' },
  { show: 'fan', stopped: true },
  { show: 'fan', blocked: true },
  { show: 'outlets' },
  { show: 'outlets', left: 0.3, right: 0.7 },
  { show: 'outlets', left: 0.3, right: 0.7, strips: true },
  { show: 'outlets', left: 0.5, right: 0.5, meter: true },
  { show: 'outlets', left: 0.32, right: 0.68, above: true },
  { show: 'outlets', left: 0.68, right: 0.1, above: true, strips: true },
  { show: 'bag', filled: 0 },
  { show: 'bag', filled: 0.55 },
  { show: 'bag', filled: 1, volume: '6 L' },
  { show: 'air-meter', reading: '3.1 m/s' },
  { show: 'air-meter', nozzle: true, reading: '4.2 m/s' },
  { show: 'kitchen-scale', reading: '124 g' },
  { show: 'kitchen-scale', plate: true, reading: '1.8 g' },
  ...(['none', 'nozzle', 'heater', 'sensor', 'heat-break', 'heat-sink', 'liner', 'sleeve', 'leak'] as const).map((mark): Spec => ({ show: 'hot-end', mark })),
  { show: 'hot-end', temperature: '≤ 40 °C', above: '300 mm' },
  { show: 'hot-end', mark: 'heat-sink', temperature: '210 °C', above: '62 °C' },
  { show: 'hot-end', mark: 'nozzle', above: 'pops' },
  { show: 'hot-end', mark: 'nozzle', temperature: 'below 50 °C' },
  { show: 'hot-end', drawnBack: 5 },
  { show: 'hot-end', drawnBack: 0.5, oozes: true },
  { show: 'hot-end', drawnBack: 0, oozes: true },
  { show: 'hot-end', drawnBack: 8 },
  ...(['none', 'gear', 'idler', 'filament', 'dust', 'gap', 'screw'] as const).map((mark): Spec => ({ show: 'feeder', mark })),
  { show: 'feeder', marked: '120 mm' },
  { show: 'feeder', mark: 'filament', marked: '100 mm asked' },
  { show: 'feeder', mark: 'gear', marked: 'clicks here' },
  { show: 'feeder', mark: 'idler', marked: 'too little pressure' },
  { show: 'feeder', mark: 'filament', marked: 'drawn back', stroke: 'back' },
  { show: 'feeder', mark: 'gear', stroke: 'both' },
  { show: 'feeder', mark: 'gap', stroke: 'forth' },
  ...(['none', 'slack', 'pulley-screw', 'idler', 'worn', 'pluck'] as const).map((mark): Spec => ({ show: 'belt', mark })),
  ...(['none', 'bearing', 'rail', 'wheel', 'motor', 'mount', 'screw', 'nut', 'coupler', 'tilt'] as const).map((mark): Spec => ({ show: 'axis', mark })),
  ...(['none', 'plate', 'screws', 'dirt', 'glue', 'clips', 'probe', 'low-corner', 'gap-paper', 'warm'] as const).map((mark): Spec => ({ show: 'bed', mark })),
  ...(['none', 'driver', 'fan-output', 'connector', 'fan', 'supply', 'sensor-plug'] as const).map((mark): Spec => ({ show: 'board', mark })),
  { show: 'board', mark: 'fan-output', reading: '23.6 V' },
  ...(['step', 'wall', 'filament', 'curl', 'outlet', 'part'] as const).map((on): Spec => ({ show: 'calliper', on, reading: '1.62 mm' })),
  { show: 'watch' },
  { show: 'watch', reading: '15.2 s' },
  ...(['volt', 'ohm', 'ampere', 'celsius'] as const).map((measures): Spec => ({ show: 'meter', measures, reading: measures === 'celsius' ? '212 °C' : '23.6' })),
  ...(['none', 'tangle', 'damp', 'brittle', 'drag', 'diameter'] as const).map((mark): Spec => ({ show: 'spool', mark })),
  { show: 'display', text: 'nozzle 210 / 210' },
  { show: 'display', text: 'heating failed, machine stopped' },
  ...(['eight-directions', 'two-towers', 'cube', 'single-wall', 'bridges', 'first-layer-squares', 'temperature-steps'] as const).map((which): Spec => ({ show: 'test-print', which })),
  ...(['layer-time', 'speed', 'fan', 'line-width', 'flow', 'preview', 'profile'] as const).map((mark): Spec => ({ show: 'slicer', mark })),
  { show: 'power', state: 'off' },
  { show: 'power', state: 'on' },
  ...(['none', 'draught', 'enclosure', 'cold'] as const).map((mark): Spec => ({ show: 'room', mark })),
];

const nameOf = (spec: Spec): string => Object.entries(spec).map(([key, value]) => (key === 'show' ? String(value) : `${key} ${String(value)}`)).join(', ');
const drawn = (size: Size): SpecimenGroup => ({ name: size, items: specs.map((spec, i) => ({ name: nameOf(spec), show: <Drawing spec={spec} size={size} id={`${size}${i}`} /> })) });

const need = { value: 5, low: 4.4, high: 5.6 };
export const options = [
  { letter: 'A', name: 'Leave it as it is', value: 3, low: 2.4, high: 3.6, reaches: '<1 %' },
  { letter: 'B', name: 'New fan, 50 × 15', value: 5, low: 4, high: 6, reaches: '50 %' },
  { letter: 'C', name: 'New duct, even fork', value: 6, low: 4.8, high: 7.2, reaches: '93 %', chosen: true },
  { letter: 'D', name: 'New fan and new duct', value: 11.2, low: 9.2, high: 13.2, reaches: '>99 %' },
  { letter: 'E', name: 'Slower layers, 8 s to 15 s', value: 3, low: 2.4, high: 3.6, reaches: '12 %', need: { value: 3.5, low: 2.9, high: 4.1 } },
];

const fanCurve = (flow: number, pressure: number) => Array.from({ length: 25 }, (_, i) => ({ x: (flow * i) / 24, y: pressure * (1 - (i / 24) ** 1.9) }));
const ductCurve = (flow: number, pressure: number) => Array.from({ length: 33 }, (_, i) => ({ x: (1.3 * i) / 24, y: pressure * ((1.3 * i) / 24 / flow) ** 1.9 }));
export const curves = [
  { name: 'fan today', of: 'fan', fitted: true, points: fanCurve(0.72, 118) },
  { name: 'new fan, 50 × 15', of: 'fan', fitted: false, points: fanCurve(1.75, 260).filter((p) => p.x <= 1.2) },
  { name: 'duct today', of: 'duct', fitted: true, points: ductCurve(0.395, 83) },
  { name: 'new duct', of: 'duct', fitted: false, points: ductCurve(0.53, 55) },
] as const;
export const operatingPoints = [
  { letter: 'A', flow: 0.395, pressure: 80.3, words: '0.395 L/s, measured', flowRange: [0.363, 0.427] },
  { letter: 'B', flow: 0.66, pressure: 219.5, words: '0.66 L/s, 32 : 68' },
  { letter: 'C', flow: 0.53, pressure: 52.4, words: '0.53 L/s, 52 : 48', chosen: true },
  { letter: 'D', flow: 0.97, pressure: 174, words: '0.97 L/s, 52 : 48' },
] as const;

const bump = (at: number, width: number, height: number) => (x: number) => height * Math.exp(-(((x - at) / width) ** 2));
const bumps = [bump(0.12, 0.07, 0.25), bump(0.33, 0.1, 1), bump(0.55, 0.12, 0.62), bump(0.82, 0.14, 0.3)];
export const expected = Array.from({ length: 101 }, (_, i) => ({ value: i / 100, density: bumps.reduce((sum, f) => sum + f(i / 100), 0) }));
export const zones = [
  { from: 0, to: 0.2, range: 'below 0.20, 8 % expected', means: 'Fan hardly runs', next: 'Check its supply, then the file.' },
  { from: 0.2, to: 0.42, range: '0.20 to 0.42, 41 % expected', means: 'Too little for this print: 94 % sure', next: 'Weigh a new fan against a new duct.', hit: true },
  { from: 0.42, to: 0.66, range: '0.42 to 0.66, 30 % expected', means: 'Enough, if evenly shared', next: 'Measure each outlet next.' },
  { from: 0.66, to: 1, range: 'above 0.66, 21 % expected', means: 'Enough, even one-sided', next: 'The air is innocent. Look at heat in the plastic.' },
];
const reading = { value: 0.395, low: 0.363, high: 0.427, words: '0.395 ± 0.032, yours' };
const nothing = (): void => undefined;

const fan = { size: 40, kind: 'radial', name: 'part fan, 40 × 10 radial', reading: '0.36 to 0.43 L/s' } as const;
const outlet = { width: 14, height: 3, distance: 15, channel: 11, bends: 3 };
export const plans = [
  { name: 'two outlets, one-sided', fan, duct: { width: 16, length: 6 }, outlets: [{ ...outlet, name: 'left', direction: 180, branch: 72, speed: 3, reading: '2.4 to 3.6 m/s' }, { ...outlet, name: 'right', direction: 0, branch: 44, bends: 1, speed: 6.4, reading: '5.6 to 7.2 m/s' }] },
  { name: 'even fork', fan, duct: { width: 14, length: 12 }, outlets: [{ ...outlet, name: 'left', direction: 180, branch: 55, speed: 5.9, reading: '5.2 to 6.6 m/s' }, { ...outlet, name: 'right', direction: 0, branch: 55, speed: 6.1, reading: '5.4 to 6.8 m/s' }] },
  { name: 'one outlet behind', fan: { ...fan, kind: 'axial', size: 30 } as const, duct: { width: 18, length: 20 }, outlets: [{ ...outlet, name: 'back', direction: 90, branch: 20, bends: 0, speed: 4, reading: '3 to 5 m/s' }] },
  { name: 'four outlets', fan, duct: { width: 16, length: 10 }, outlets: [{ ...outlet, name: 'left', direction: 180, branch: 60, speed: 4, reading: '4 m/s' }, { ...outlet, name: 'right', direction: 0, branch: 60, speed: 4.2, reading: '4 m/s' }, { ...outlet, name: 'back', direction: 90, width: 10, branch: 10, bends: 0, speed: 5, reading: '5 m/s' }, { ...outlet, name: 'front', direction: 270, width: 10, branch: 130, bends: 4, speed: 2, reading: '2 m/s' }] },
  { name: 'two at an angle', fan, duct: { width: 16, length: 8 }, outlets: [{ ...outlet, name: 'back-left', direction: 150, branch: 40, speed: 5, reading: '5 m/s' }, { ...outlet, name: 'back-right', direction: 30, branch: 40, speed: 5, reading: '5 m/s' }] },
] as const;

const beforeValues = [0.42, 0.22, 0.18, 0.26, 0.55, 0.96, 1.42, 1.1];
const afterValues = [0.2, 0.16, 0.15, 0.17, 0.19, 0.24, 0.21, 0.42];
const readingsOf = (values: readonly number[]) => directions.map((direction, i) => ({ direction, value: values[i] ?? 0, low: Math.max(0, (values[i] ?? 0) - 0.08), high: (values[i] ?? 0) + 0.08 }));
export const before = readingsOf(beforeValues);
export const after = readingsOf(afterValues);
const optionKinds = ['leave', 'new-fan', 'new-duct', 'new-fan-and-duct', 'slower-layers', 'seal-leak', 'open-outlets', 'smooth-bends', 're-aim', 'second-outlet', 'cooler-melt'] as const;

export const specimens: readonly SpecimenGroup[] = [
  drawn('row'),
  drawn('step'),
  drawn('figure'),
  {
    name: 'special',
    items: [
      { name: 'touch part, wide', show: <TouchPart width={632} id="tw" selected="steep-underside" counts={{ 'steep-underside': 4 }} onSelect={nothing} /> },
      { name: 'touch part, wide, right side chosen', show: <TouchPart width={632} id="tx" selected="seam" counts={{ seam: 3 }} onSelect={nothing} /> },
      { name: 'touch part, phone', show: <TouchPart width={358} id="tn" selected="span" counts={{ span: 4 }} onSelect={nothing} /> },
      { name: 'touch part, small phone', show: <TouchPart width={288} id="ts" onSelect={nothing} /> },
      {
        name: 'known part', show: <KnownPart shiftHeight="31" facts={[
          { number: 1, about: 'curled-edges', shape: 'seen', drawing: { show: 'stack', curl: 0.7 }, faces: 'left' },
          { number: 2, about: 'one-side', shape: 'seen', drawing: { show: 'stack', curl: 0.6 }, faces: 'left' },
          { number: 3, about: 'displaced', shape: 'measured', drawing: { show: 'stack', shift: 2 }, size: '1.6' },
          { number: 4, about: 'corners', shape: 'not-seen', drawing: { show: 'stack', liftedCorners: 0.5 } },
        ]} />,
      },
      { name: 'known part, other faults', show: <KnownPart facts={[{ number: 1, about: 'a', shape: 'seen', drawing: { show: 'stack', liftedCorners: 0.8 } }, { number: 2, about: 'b', shape: 'seen', drawing: { show: 'stack', split: 4 } }, { number: 3, about: 'c', shape: 'seen', drawing: { show: 'stack', gaps: 4 } }]} /> },
      { name: 'known part, nothing known', show: <KnownPart facts={[]} /> },
      { name: 'mark', show: <Mark /> },
      { name: 'balloons', show: <span>{(['seen', 'measured', 'not-seen', 'cant-tell', 'casebook', 'option', 'chosen-option'] as const).map((kind) => <BalloonMark key={kind} kind={kind} label={kind === 'casebook' ? 'K' : kind.includes('option') ? 'C' : 12} />)}</span> },
    ],
  },
  {
    name: 'air',
    items: [
      ...plans.map(({ name, ...plan }, i) => ({ name, show: <AirPathPlan {...plan} width={700} id={`plan${i}`} /> })),
      { name: 'phone', show: <AirPathPlan fan={plans[0].fan} duct={plans[0].duct} outlets={plans[0].outlets} width={358} id="plan-phone" /> },
      { name: 'options', show: <span>{optionKinds.map((kind) => <OptionGlyph key={kind} kind={kind} />)}<FanGlyph kind="radial" /><FanGlyph kind="axial" /></span> },
    ],
  },
  {
    name: 'charts',
    items: [
      { name: 'chance', show: <div><ChanceAxis /><ChanceBar chance={0.58} low={0.44} high={0.71} accent was={0.4} name="Duct" /><ChanceBar chance={0.47} low={0.29} high={0.66} /><ChanceBar chance={0.005} low={0} high={0.03} /><ChanceBar chance={0.995} low={0.95} high={1} /></div> },
      { name: 'weight', show: <div>{[2.6, 4.2, 1.3, 1 / 1.4, 1 / 1.1, 400, 1 / 400, 1].map((f) => <WeightBar key={f} factor={f} />)}</div> },
      { name: 'readings', show: <ReadingStrip readings={[15.2, 14.8, 15.6]} mean={{ value: 15.2, low: 14.2, high: 16.2 }} unit="s" name="Time" /> },
      { name: 'one reading', show: <ReadingStrip readings={[15.2]} unit="s" name="Time" width={300} /> },
      { name: 'number line', show: <NumberLine from={0} to={1} unit="L/s" expected={expected} zones={zones} reading={reading} name="Air delivered" width={1326} /> },
      { name: 'number line, phone', show: <NumberLine from={0} to={1} unit="L/s" expected={expected} zones={zones} reading={reading} name="Air delivered" width={358} words="none" /> },
      { name: 'number line, log, narrow zones', show: <NumberLine from={0.02} to={5} log unit="mm" expected={expected.slice(2).map((p) => ({ value: p.value * 4, density: p.density }))} zones={[{ from: 0.02, to: 0.1, range: 'below 0.10', means: 'Sound' }, { from: 0.1, to: 0.12, range: '0.10 to 0.12', means: 'Doubtful', hit: true }, { from: 0.12, to: 5, range: 'above 0.12', means: 'Slack', next: 'Tighten the belt.' }]} reading={{ value: 0.11, low: 0.09, high: 0.13, words: '0.11 ± 0.02, yours' }} name="Play" width={660} /> },
      { name: 'curves', show: <CurveChart curves={curves} points={operatingPoints} /> },
      { name: 'curves, phone', show: <CurveChart curves={curves} points={operatingPoints} width={358} height={320} /> },
      { name: 'option rows', show: <IntervalRows rows={options} from={0} to={14} unit="m/s" need={need} needWords="needs 5.0 ± 0.6" /> },
      { name: 'option cells', show: <div><IntervalAxis from={0} to={14} unit="m/s" need={need} needWords="needs 5.0 ± 0.6" /><br />{options.slice(0, 3).map((row) => <IntervalBar key={row.letter} row={row} from={0} to={14} need={need} unit="m/s" />)}</div> },
      { name: 'before', show: <PolarBeforeAfter readings={before} limit={0.3} unit="mm" rim={1.5} name="Curl" id="pol1" air={[{ from: 'left', speed: 3, words: '3.0 m/s' }, { from: 'right', speed: 6.4, words: '6.4 m/s' }]} /> },
      { name: 'after', show: <PolarBeforeAfter readings={after} ghost={before} limit={0.3} unit="mm" rim={1.5} name="Curl" id="pol2" air={[{ from: 'left', speed: 5.9, words: '5.9 m/s' }, { from: 'right', speed: 6.3, words: '6.3 m/s' }]} /> },
      { name: 'after, phone, own rim', show: <PolarBeforeAfter readings={after} limit={0.3} unit="mm" name="Curl" id="pol3" width={358} /> },
      { name: 'directions', show: <div><DirectionAxis limit={0.3} to={1.5} unit="mm" />{before.map((b, j) => <DirectionMarks key={b.direction} direction={b.direction} before={b} after={after[j]} limit={0.3} to={1.5} unit="mm" />)}</div> },
      { name: 'change', show: <div><ChangeBar was={0.47} is={0.71} /><ChangeBar was={0.58} is={0.63} /><ChangeBar was={0.12} is={0.09} /></div> },
      { name: 'budget', show: <BudgetBar id="bud" name="What the ± is made of" parts={[{ words: 'watch and hand', share: 0.63 }, { words: 'bag', share: 0.37 }]} /> },
      { name: 'budget of four', show: <BudgetBar id="bud4" name="What the ± is made of" parts={[{ words: 'repeat', share: 0.5 }, { words: 'instrument', share: 0.3 }, { words: 'angle', share: 0.15 }, { words: 'air density', share: 0.05 }]} /> },
      { name: 'times', show: <TimeBars now={112} after={78} /> },
      { name: 'times, short', show: <TimeBars now={112} after={9} width={280} /> },
      { name: 'reliability', show: <ReliabilityStrip name="Told and true" bins={[{ told: 0.1, came: 0.08, low: 0.04, high: 0.14, count: 90 }, { told: 0.3, came: 0.36, low: 0.24, high: 0.5, count: 40 }, { told: 0.55, came: 0.5, low: 0.34, high: 0.66, count: 30 }, { told: 0.85, came: 0.88, low: 0.72, high: 0.96, count: 24 }]} /> },
    ],
  },
];
