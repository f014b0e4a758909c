'use client';
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useEffect, useState } from 'react';
import { Mark } from '../_drawings/mark';
import { choosePaper, chooseUnits, usePreferences } from '../_browser/preferences';
import { startOfflineCopy } from '../_browser/offline-copy';
import { OfflineNote, OfflineSign } from './offline-note';

const PLACES = [
  { href: '/', name: 'Case', under: ['/', '/case'] },
  { href: '/air', name: 'Air path', under: ['/air'] },
  { href: '/bench', name: 'Bench', under: ['/bench'] },
  { href: '/handbook', name: 'Handbook', under: ['/handbook'] },
  { href: '/casebook', name: 'Casebook', under: ['/casebook'] },
] as const;

/** The header of every page: the five places a person can be, the paper, the units. */
export function Header() {
  const path = usePathname().replace(/\/$/, '') || '/';
  const [open, setOpen] = useState(false);
  const preferences = usePreferences();
  useEffect(startOfflineCopy, []);
  return (
    <header className={open ? 'top menu-open' : 'top'}>
      <div className="top-row">
        <Link className="top-name" href="/"><Mark />Leeward</Link>
        <OfflineSign />
        <button type="button" className="link menu-button" aria-expanded={open} aria-controls="places" onClick={() => setOpen(!open)}>Menu</button>
        <nav id="places" className="top-places" aria-label="Places">
          {PLACES.map((place) => {
            const here = place.under.some((start) => path === start || (start !== '/' && path.startsWith(`${start}/`)));
            return <Link key={place.href} href={place.href} onClick={() => setOpen(false)} {...(here ? { 'aria-current': 'page' as const } : {})}>{place.name}</Link>;
          })}
        </nav>
        <div className="top-side">
          <OfflineNote />
          <button type="button" className="link" onClick={() => choosePaper(preferences.paper === 'blueprint' ? 'paper' : 'blueprint')}>{preferences.paper === 'blueprint' ? 'Paper' : 'Blueprint'}</button>
          <button type="button" className="link" aria-label={`Units: ${preferences.units === 'metric' ? 'mm, L/s' : 'in, CFM'}. Change`} onClick={() => chooseUnits(preferences.units === 'metric' ? 'imperial' : 'metric')}>{preferences.units === 'metric' ? 'mm, L/s' : 'in, CFM'}</button>
        </div>
      </div>
    </header>
  );
}
