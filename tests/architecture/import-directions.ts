/**
 * Who may import whom, as data. A room of lib is a folder; other rooms and the app reach it through its index only.
 * `types` rooms may be imported for their types only.
 */
export interface Room {
  readonly folder: string;
  readonly may: readonly string[];
  readonly types?: readonly string[];
  /** Packages from outside that it may use. */
  readonly packages?: readonly string[];
}

export const ROOMS: readonly Room[] = [
  { folder: 'lib/problems', may: [] },
  { folder: 'lib/units', may: ['lib/problems'] },
  { folder: 'lib/elementary', may: [] },
  { folder: 'lib/airflow', may: ['lib/elementary', 'lib/units', 'lib/problems'] },
  { folder: 'lib/cooling', may: ['lib/elementary', 'lib/airflow', 'lib/units', 'lib/problems'] },
  { folder: 'lib/motion', may: ['lib/units', 'lib/problems'] },
  { folder: 'lib/extrusion', may: ['lib/units', 'lib/problems'] },
  { folder: 'lib/measuring', may: ['lib/units', 'lib/problems'] },
  { folder: 'lib/inference', may: ['lib/elementary'] },
  { folder: 'lib/knowledge', may: ['lib/units', 'lib/problems'], packages: ['zod', 'yaml'] },
  // The diagnosis reads a case; a second shape of the same facts would only be a copy, so it may see the case's types.
  { folder: 'lib/diagnosis', may: ['lib/knowledge', 'lib/inference', 'lib/elementary', 'lib/motion', 'lib/units', 'lib/problems'], types: ['lib/cases', 'lib/airflow', 'lib/cooling', 'lib/measuring'] },
  { folder: 'lib/decision', may: ['lib/diagnosis', 'lib/knowledge', 'lib/elementary', 'lib/airflow', 'lib/cooling', 'lib/units', 'lib/problems'] },
  { folder: 'lib/review', may: ['lib/diagnosis', 'lib/knowledge', 'lib/problems'] },
  { folder: 'lib/cases', may: ['lib/knowledge', 'lib/units', 'lib/problems'], packages: ['zod'] },
  { folder: 'content', may: ['lib/knowledge', 'lib/problems'], packages: ['node:fs', 'node:path'] },
];

/** What nothing in lib may touch: the page, the clock, chance, files. */
export const IMPURE: readonly { readonly pattern: RegExp; readonly why: string }[] = [
  { pattern: /\bMath\.random\(/, why: 'chance comes in as a seed' },
  { pattern: /\bDate\.now\(|\bnew Date\(\)/, why: 'the time comes in as an argument' },
  { pattern: /\bdocument\.(?:get|query|create|body|cookie)|\bwindow\.(?:location|document|add|set)|\blocalStorage\b/, why: 'lib knows no page' },
  { pattern: /from 'node:|from 'react'|from 'next/, why: 'lib knows neither files nor pages' },
];
