'use client';
import dynamic from 'next/dynamic';
import type { ComponentType } from 'react';
import type { MovingFigure } from './moving-figure';

/* Each figure is a script of its own, fetched only by the pages that show it; the words and the picture are there before. */
const FIGURES: Readonly<Record<string, ComponentType>> = {
  'fan-meets-duct': dynamic(() => drawn(import('./fan-meets-duct').then((room) => room.fanMeetsDuct))),
  'layer-time-and-curl': dynamic(() => drawn(import('./layer-time-and-curl').then((room) => room.layerTimeAndCurl))),
  'ripple-spacing': dynamic(() => drawn(import('./ripple-spacing').then((room) => room.ripplesAlongWall))),
  'push-and-flow': dynamic(() => drawn(import('./push-and-flow').then((room) => room.pushAndFlow))),
  'motor-and-speed': dynamic(() => drawn(import('./motor-and-speed').then((room) => room.motorAndSpeed))),
  'drying-hours': dynamic(() => drawn(import('./drying-hours').then((room) => room.dryingHours))),
  'readings-and-doubt': dynamic(() => drawn(import('./readings-and-doubt').then((room) => room.readingsAndDoubt))),
};

/** A drawing that moves with its sliders, by name. A name that is not there stops the build. */
export function Moving({ id }: { readonly id: string }) {
  const Figure = FIGURES[id];
  if (!Figure) throw new Error(`Moving id="${id}": got an unknown drawing, expected one of ${Object.keys(FIGURES).join(', ')}`);
  return <Figure />;
}

async function drawn(coming: Promise<MovingFigure>): Promise<ComponentType> {
  const [figure, { MovingDrawing }] = await Promise.all([coming, import('./moving-drawing')]);
  return function Drawn() {
    return <MovingDrawing figure={figure} />;
  };
}
