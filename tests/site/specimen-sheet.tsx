/**
 * Renders every drawing and chart into one page, on paper and as blueprint, and photographs it, for looking at.
 * Run: npx tsx tests/site/specimen-sheet.tsx [folder]. Needs a browser (CHROMIUM_PATH or /usr/bin/chromium).
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { ReactNode } from 'react';
import { chromium } from '@playwright/test';
import { renderToStaticMarkup } from 'react-dom/server';
import { specimens } from './specimens';

const folder = process.argv[2] ?? '/tmp/specimens';
const only = process.argv[3];
/** Height of one photograph, px: small enough to be looked at without being shrunk. */
const slice = 1300;
const root = `${import.meta.dirname}/../..`;
const face = (name: string): string => readFileSync(`${root}/node_modules/@fontsource-variable/${name}/files/${name}-latin-wght-normal.woff2`).toString('base64');

const papers = {
  paper: '--paper:#FBFCFC;--wash:#EDF2F4;--hair:#C5D0D7;--mid:#71828F;--ink2:#43545F;--ink:#11202B;--accent:#BE3014;--accw:#FBE8E2',
  blueprint: '--paper:#0B2744;--wash:#123557;--hair:#335A82;--mid:#7C9DBD;--ink2:#B9CCDE;--ink:#EEF5FB;--accent:#FF9E7D;--accw:#3B3347',
};

function page(body: ReactNode, paper: keyof typeof papers): string {
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Specimens</title><style>
@font-face{font-family:Drawing;src:url(data:font/woff2;base64,${face('sofia-sans-semi-condensed')}) format('woff2');font-weight:1 1000}
:root{${papers[paper]};--font-drawing:Drawing}
body{margin:24px;background:var(--paper);color:var(--ink);font:14px Drawing;width:1376px}
section{margin:0 0 28px;border-top:1px solid var(--ink);padding-top:6px}h2{font-size:16px;margin:0 0 8px}
.lay{display:flex;flex-wrap:wrap;gap:18px 22px;align-items:flex-end}.one{max-width:100%}.one p{margin:3px 0 0;color:var(--ink2);max-width:340px}.one svg{outline:1px dotted var(--hair)}
${readFileSync(`${root}/app/_drawings/drawings.css`, 'utf8')}</style><body>${renderToStaticMarkup(body)}</body></html>`;
}

async function photograph(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic'] });
  const tab = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  for (const paper of ['paper', 'blueprint'] as const) {
    for (const group of specimens.filter((g) => only === undefined || g.name === only)) {
      const file = `${folder}/${group.name}-${paper}.html`;
      writeFileSync(file, page(<section><h2>{group.name}</h2><div className="lay">{group.items.map((item) => <div className="one" key={item.name}>{item.show}<p>{item.name}</p></div>)}</div></section>, paper));
      await tab.goto(`file://${file}`);
      await tab.evaluate(() => document.fonts.ready);
      const height = await tab.evaluate(() => document.documentElement.scrollHeight);
      for (let top = 0, sheet = 1; top < height; top += slice, sheet += 1) {
        await tab.screenshot({ path: `${folder}/${group.name}-${paper}-${sheet}.png`, fullPage: true, clip: { x: 0, y: top, width: 1440, height: Math.min(slice, height - top) } });
      }
    }
  }
  await browser.close();
}

await photograph();
