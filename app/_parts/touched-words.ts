import type { Touched } from '@/lib/knowledge';

/** What may have been changed shortly before a failure, as a list reads. */
export const TOUCHED_WORDS: Readonly<Record<Touched, string>> = {
  fan: 'a fan', duct: 'a duct', 'hot-end': 'the hot end', nozzle: 'the nozzle', feeder: 'the feeder', filament: 'the filament', belts: 'belts or pulleys', board: 'the board', wiring: 'wiring', firmware: 'firmware', settings: 'settings', bed: 'the bed', moved: 'it was moved', nothing: 'nothing',
};
