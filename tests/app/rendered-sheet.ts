import { renderToStaticMarkup } from 'react-dom/server';
import type { ReactNode } from 'react';
import { wordWidth } from '@/app/_drawings/word-width';

/** What a test can ask of a rendered drawing. */
export interface RenderedSheet {
  readonly markup: string;
  readonly width: number;
  readonly height: number;
  /** Words with their box in px; the width is reckoned from the measured advances of the face. */
  readonly words: readonly { readonly text: string; readonly left: number; readonly right: number; readonly top: number; readonly bottom: number; readonly size: number }[];
}

/** Every svg in a piece of the page. */
export function renderSheets(node: ReactNode): RenderedSheet[] {
  const markup = renderToStaticMarkup(node);
  return [...markup.matchAll(/<svg[\s\S]*?<\/svg>/g)].map(([svg]) => {
    const [, , w = 0, h = 0] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
    return { markup: svg, width: w, height: h, words: [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, attributes = '', text = '']) => boxOf(attributes, plain(text))) };
  });
}

function boxOf(attributes: string, text: string): RenderedSheet['words'][number] {
  const read = (name: string): string => new RegExp(`${name}="([^"]*)"`).exec(attributes)?.[1] ?? '';
  const size = Number(/d-text-(\d+)/.exec(attributes)?.[1] ?? 14);
  const x = Number(read('x'));
  const y = Number(read('y'));
  const width = wordWidth(text, size);
  const left = read('text-anchor') === 'end' ? x - width : read('text-anchor') === 'middle' ? x - width / 2 : x;
  return { text, left, right: left + width, top: y - size * 0.75, bottom: y + size * 0.25, size };
}

const plain = (text: string): string => text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&#x27;', '’').replaceAll('&amp;', '&');

/** Words that stand outside their sheet by more than `slack` px. */
export function outside(sheet: RenderedSheet, slack: number): string[] {
  return sheet.words
    .filter((w) => !Number.isFinite(w.left + w.top) || w.left < -slack || w.right > sheet.width + slack || w.top < -slack || w.bottom > sheet.height + slack)
    .map((w) => `"${w.text}" at ${w.left.toFixed(0)}..${w.right.toFixed(0)} × ${w.top.toFixed(0)}..${w.bottom.toFixed(0)} in ${sheet.width} × ${sheet.height}`);
}

/** Pairs of words that cover each other. */
export function collisions(sheet: RenderedSheet): string[] {
  return sheet.words.flatMap((a, i) => sheet.words.slice(i + 1).filter((b) => a.left < b.right - 2 && b.left < a.right - 2 && a.top < b.bottom - 2 && b.top < a.bottom - 2).map((b) => `"${a.text}" over "${b.text}"`));
}

/** What may never stand in a drawing: numbers that are none, inline styles, colours of its own. */
export function forbidden(markup: string): string[] {
  return ['NaN', 'Infinity', 'undefined', ' style="', '="#', 'rgb('].filter((word) => markup.includes(word));
}
