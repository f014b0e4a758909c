'use client';
import { useId, useState, useSyncExternalStore } from 'react';
import { LineChart } from '../../_charts';
import { FitWidth } from '../../_parts/fit-width';
import { keptTogether } from '../../_parts/kept-together';
import type { MovingFigure, Slider } from './moving-figure';

/** A figure with its sliders, the same in words, and a table that says it without a slider or on paper. */
export function MovingDrawing({ figure }: { readonly figure: MovingFigure }) {
  const [values, setValues] = useState(() => figure.sliders.map((slider) => slider.start));
  const awake = useSyncExternalStore(never, () => true, () => false);
  const id = useId();
  const picture = figure.at(values);
  const [first] = figure.sliders;
  return (
    <figure className="moving" aria-labelledby={`${id}-title`}>
      <p className="moving-title" id={`${id}-title`}>{figure.title}</p>
      <div className="moving-sliders">
        {figure.sliders.map((slider, place) => (
          <OneSlider key={slider.label} slider={slider} value={values[place] ?? slider.start} awake={awake} onChange={(value) => setValues(values.map((each, other) => (other === place ? value : each)))} />
        ))}
      </div>
      <div className={picture.beside === undefined ? 'moving-plate' : 'moving-plate moving-plate-two'}>
        <FitWidth usual={picture.beside === undefined ? 620 : 400}>
          {(width) => <LineChart x={picture.x} y={picture.y} lines={picture.lines} stretch={picture.stretch} mark={picture.mark} width={width} height={width < 480 ? 300 : 340} />}
        </FitWidth>
        {picture.beside}
      </div>
      <p className="moving-said" aria-live="polite">{keptTogether(picture.said)}</p>
      <table>
        <thead><tr><th scope="col">{first.label}</th>{figure.columns.map((column) => <th key={column} scope="col">{column}</th>)}</tr></thead>
        <tbody>{figure.tabled.map((value) => <tr key={value}><th scope="row" className="nowrap">{first.words(value)}</th>{figure.row([value, ...values.slice(1)]).map((words, column) => <td key={figure.columns[column]}>{keptTogether(words)}</td>)}</tr>)}</tbody>
      </table>
      <figcaption className="label">{keptTogether(figure.holds)}</figcaption>
    </figure>
  );
}

/** Until its script is awake a slider could not move anything: its place is kept, its value is read. */
function OneSlider({ slider, value, awake, onChange }: { readonly slider: Slider; readonly value: number; readonly awake: boolean; readonly onChange: (value: number) => void }) {
  const id = useId();
  return (
    <div className="moving-slider">
      <label htmlFor={id}>{slider.label}</label>
      <b className="nowrap">{slider.words(value)}</b>
      <input id={id} className={awake ? '' : 'moving-asleep'} type="range" min={slider.from} max={slider.to} step={slider.step} value={value} aria-valuetext={slider.words(value)} onChange={(event) => onChange(Number(event.target.value))} />
    </div>
  );
}

const never = () => () => { /* nothing to unsubscribe from */ };
