import type { Metadata, Viewport } from 'next';
import localFont from 'next/font/local';
import type { ReactNode } from 'react';
import './globals.css';
import { Foot } from './_parts/foot';
import { Header } from './_parts/header';

const text = localFont({
  src: [
    { path: '../node_modules/@fontsource-variable/sofia-sans/files/sofia-sans-latin-wght-normal.woff2', weight: '1 1000', style: 'normal' },
    { path: '../node_modules/@fontsource-variable/sofia-sans/files/sofia-sans-latin-wght-italic.woff2', weight: '1 1000', style: 'italic' },
  ],
  variable: '--font-text', display: 'swap', preload: false,
});
const drawing = localFont({
  src: '../node_modules/@fontsource-variable/sofia-sans-semi-condensed/files/sofia-sans-semi-condensed-latin-wght-normal.woff2',
  weight: '1 1000', variable: '--font-drawing', display: 'swap', preload: false,
});

export const metadata: Metadata = {
  title: { default: 'Leeward: why did this print fail?', template: '%s · Leeward' },
  description: 'Say what went wrong with a filament print. Leeward reasons to the cause, names the cheapest measurement, and helps you choose and prove the cure. Works offline; nothing leaves the device.',
  manifest: '/manifest.webmanifest',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1, viewportFit: 'cover', themeColor: [{ media: '(prefers-color-scheme: light)', color: '#FBFCFC' }, { media: '(prefers-color-scheme: dark)', color: '#0B2744' }] };

/**
 * Before the first paint: the chosen paper, and whether a case is on the table, so that pages keep its room free. The
 * finished export allows exactly this text by its hash.
 */
const BEFORE_PAINT = "try{var d=document.documentElement,t=localStorage.getItem('leeward.paper');if(t)d.dataset.theme=t;if(localStorage.getItem('leeward.case'))d.dataset.case=''}catch(e){}";

export default function RootLayout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en" className={`${text.variable} ${drawing.variable}`} suppressHydrationWarning>
      <head>
        <script dangerouslySetInnerHTML={{ __html: BEFORE_PAINT }} />
      </head>
      <body>
        <a className="skip" href="#content">Go to the content</a>
        <Header />
        <main id="content">{children}</main>
        <Foot />
      </body>
    </html>
  );
}
