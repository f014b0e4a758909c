import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { driedAfter, dryingHours } from '@/app/handbook/moving/drying-hours';
import { ductWithSlot, fanMeetsDuct, meetsAt } from '@/app/handbook/moving/fan-meets-duct';
import { layerTimeAndCurl, topLayerAt } from '@/app/handbook/moving/layer-time-and-curl';
import { motorAndSpeed, pullAt, speedingUpForce, strikeForce } from '@/app/handbook/moving/motor-and-speed';
import { MovingDrawing } from '@/app/handbook/moving/moving-drawing';
import { rounded, type MovingFigure } from '@/app/handbook/moving/moving-figure';
import { pushAndFlow, pushAt } from '@/app/handbook/moving/push-and-flow';
import { doubtOfMean, readingsAndDoubt } from '@/app/handbook/moving/readings-and-doubt';
import { ripplesAlongWall, ripplesAt } from '@/app/handbook/moving/ripple-spacing';
import { keptTogether } from '@/app/_parts/kept-together';
import { airAt, curveFromEnds, pressureAsked, pressureOnCurve } from '@/lib/airflow';
import library from '../../independent/airflow/library-values.json';

const FIGURES: Readonly<Record<string, MovingFigure>> = { dryingHours, fanMeetsDuct, layerTimeAndCurl, motorAndSpeed, pushAndFlow, readingsAndDoubt, ripplesAlongWall };
const startOf = (figure: MovingFigure): number[] => figure.sliders.map((slider) => slider.start);

/** Both ends and the start of the first slider, the others where they start. */
const settings = (figure: MovingFigure): number[][] => {
  const [first] = figure.sliders;
  return [first.from, first.start, first.to].map((value) => [value, ...startOf(figure).slice(1)]);
};

describe('every moving drawing', () => {
  it.each(Object.entries(FIGURES))('%s stays finite, in numbers and in words, at both ends of all sliders', (_, figure) => {
    const corners = figure.sliders.reduce<number[][]>((all, slider) => all.flatMap((values) => [slider.from, slider.start, slider.to].map((value) => [...values, value])), [[]]);
    const wrong = corners.flatMap((values) => {
      const picture = figure.at(values);
      const numbers = [picture.mark.x, picture.mark.y, ...picture.lines.flatMap((line) => line.points.flatMap((point) => [point.x, point.y]))];
      const faults = [
        ...(numbers.every(Number.isFinite) ? [] : ['a number that is none']),
        ...(/NaN|Infinity|undefined|e[+-]\d/.test(`${picture.said} ${figure.row(values).join(' ')} ${picture.mark.words}`) ? [picture.said] : []),
        ...(figure.row(values).length === figure.columns.length ? [] : ['a row of another length']),
      ];
      return faults.map((fault) => `${values.join(', ')}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  it.each(Object.entries(FIGURES))('%s shows its picture, its sentence and its table before any script runs', (_, figure) => {
    const html = renderToStaticMarkup(<MovingDrawing figure={figure} />);
    const picture = figure.at(startOf(figure));
    expect(html).toContain(keptTogether(picture.said).slice(0, 20));
    expect(html.match(/<tr>/g)?.length).toBe(figure.tabled.length + 1);
    for (const slider of figure.sliders) expect(html).toContain(`aria-valuetext="${slider.words(slider.start)}"`);
    expect(html).not.toMatch(/ style=/);
  });

  it.each(Object.entries(FIGURES))('%s lets every value of its table and its start be reached by the slider', (_, figure) => {
    const [first] = figure.sliders;
    const steps = (value: number, from: number, step: number): number => (value - from) / step;
    const off = [...figure.tabled.map((value) => [value, first] as const), ...figure.sliders.map((slider) => [slider.start, slider] as const)]
      .filter(([value, slider]) => value < slider.from || value > slider.to || Math.abs(steps(value, slider.from, slider.step) - Math.round(steps(value, slider.from, slider.step))) > 1e-9);
    expect(off.map(([value]) => value)).toEqual([]);
  });
});

describe('the figures of the moving drawings', () => {
  it('are written with the digits that they have', () => {
    expect([0.0608, 2, 163, 0.996, 9.96, 0, -0.25].map((value) => rounded(value))).toEqual(['0.061', '2.0', '160', '1.0', '10', '0.0', '-0.25']);
    expect([78.63, 110.4].map((value) => rounded(value, 3))).toEqual(['78.6', '110']);
  });

  it('fan meets duct: at three widths the fan gives the pressure that the duct asks', () => {
    const fan = curveFromEnds(180, 2.2e-3, 1.5);
    const air = airAt(298.15, 101_325, 0.5);
    const wrong = settings(fanMeetsDuct).flatMap(([width = 0]) => {
      const point = meetsAt(width);
      const motion = (air.density / 2) * (point.flow / 300e-6) ** 2;
      // In total pressure: what the fan makes plus the motion of its air is what the duct takes. Solved to 1e-11, read to 1e-6.
      const asked = pressureAsked(ductWithSlot(width / 1000), air, point.flow);
      const shown = fanMeetsDuct.at([width]).mark;
      return Math.abs(pressureOnCurve(fan, point.flow) + motion - asked) < 1e-6 * asked && shown.x === point.flow * 1000 && shown.y === point.pressure ? [] : [width];
    });
    expect(wrong).toEqual([]);
  });

  it('layer time: 16.4 s at 75 W/(m²·K) is where PLA just holds (forty layers by the stiff solver of fluids-script.py), and longer is cooler', () => {
    const [, [, holds = 0] = []] = library.layer_time_to_60;
    expect(topLayerAt(holds, 75)).toBeCloseTo(60, 0);
    for (const [air = 0, time = 0, there = 0] of library.layer_history_pla) expect(Math.abs(topLayerAt(time, air) - there), `${air}, ${time} s`).toBeLessThan(0.002 * there);
    const temperatures = settings(layerTimeAndCurl).map((values) => layerTimeAndCurl.at(values).mark.y);
    expect(temperatures).toEqual(settings(layerTimeAndCurl).map(([time = 0, air = 0]) => topLayerAt(time, air)));
    expect(temperatures).toEqual([...temperatures].sort((a, b) => b - a));
  });

  it('ripples: 100 mm/s at 50 Hz is 2.0 mm, 1.66 mm of gaining speed and 0.0608 mm high (motion sheet 3)', () => {
    const { spacing, gaining, height } = ripplesAt(100, 50);
    expect([spacing, gaining, height].map((value) => Number(value.toPrecision(3)))).toEqual([2, 1.66, 0.0608]);
    expect(settings(ripplesAlongWall).map(([speed = 0]) => ripplesAt(speed, 50).spacing)).toEqual([0.4, 2, 4]);
    // The marked crest and the next one on the drawn wall stand one spacing apart, in steady travel.
    const { mark, lines } = ripplesAlongWall.at([100, 50]);
    const next = (lines[0]?.points ?? []).filter((point) => Math.abs(point.x - mark.x - 2) < 0.7).reduce((top, point) => (point.y > top.y ? point : top));
    expect(next.x - mark.x).toBeCloseTo(2, 1);
  });

  it('push: from 0.40 to 0.35 mm it grows by 1.71 and 1.40 (motion sheet 4.5), with twice the flow by 2 and √2', () => {
    expect([1, 0.5].map((n) => Number((pushAt(5, 0.35, n) / pushAt(5, 0.4, n)).toPrecision(3)))).toEqual([1.71, 1.4]);
    expect([1, 0.5].map((n) => Number(pushAt(10, 0.4, n).toPrecision(6)))).toEqual([2, 1.41421]);
    expect(settings(pushAndFlow).map((values) => pushAndFlow.at(values).mark.y)).toEqual(settings(pushAndFlow).map(([flow = 0, bore = 0]) => pushAt(flow, bore, 0.5)));
  });

  it('motor: 63 N at rest, 15.8 N for a strike at 100 mm/s (motion sheet 1.5), and less pull at speed', () => {
    expect(pullAt(0.01)).toBeCloseTo(62.8, 1);
    expect(strikeForce(0.1)).toBeCloseTo(15.8, 1);
    // 0.5 kg × 3 m/s² + 2 N + rotor 5e-6/(6.366e-3)² kg × 3 m/s², by hand.
    expect(speedingUpForce(3)).toBeCloseTo(3.5 + 0.1234 * 3, 3);
    expect(settings(motorAndSpeed).map((values) => motorAndSpeed.at(values).mark.y)).toEqual(settings(motorAndSpeed).map(([speed = 0]) => pullAt(speed / 1000)));
    // At 600 mm/s: 750 Hz × 2π × 4 mH × 1.5 A asks for 28.3 V of the 12 V.
    expect(pullAt(0.6) / pullAt(0.01)).toBeCloseTo(12 / 28.274, 4);
  });

  it('drying: half of the water after 0.0631, 90 % after 0.3344 R²/D (motion sheet 4.8)', () => {
    const hours = (fourier: number): number => (fourier * 0.875e-3 ** 2) / 1e-11 / 3600;
    expect(driedAfter(hours(0.0631), 10)).toBeCloseTo(0.5, 3);
    expect(driedAfter(hours(0.3344), 10)).toBeCloseTo(0.9, 3);
    expect(settings(dryingHours).map((values) => dryingHours.at(values).mark.y)).toEqual(settings(dryingHours).map(([time = 0, diffusion = 0]) => 100 * driedAfter(time, diffusion)));
  });

  it('readings: Student factors of the table (12.7062 for one degree, 4.30265 for two) over the root of n', () => {
    expect(doubtOfMean(2, 1)).toBeCloseTo(12.7062 / Math.SQRT2, 4);
    expect(doubtOfMean(3, 0.4)).toBeCloseTo((4.302_65 * 0.4) / Math.sqrt(3), 5);
    expect(doubtOfMean(15, 1)).toBeCloseTo(2.144_79 / Math.sqrt(15), 5);
    expect(settings(readingsAndDoubt).map((values) => readingsAndDoubt.at(values).mark.y)).toEqual(settings(readingsAndDoubt).map(([count = 0, scatter = 0]) => doubtOfMean(count, scatter)));
  });
});
