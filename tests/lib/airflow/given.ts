import { appendFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { Air, DuctNetwork, OutletEnding } from '@/lib/airflow';
import { CUBIC_FOOT_PER_MINUTE, DISCHARGE_COEFFICIENT } from '@/lib/airflow';

/** Air and fan of the handbook sheet's worked example. */
export const SHEET_AIR: Air = { density: 1.2, viscosity: 1.2 * 1.508e-5 };
export const FOUR_CFM = 4 * CUBIC_FOOT_PER_MINUTE;
export const MM = 1e-3;

/** The sheet's duct: 15 × 20 mm, 30 mm long, one mitre of 1.2, then two equal mouths; sizes in mm. */
export function sheetDuct(slot: number, long: number, more: { mode?: DuctNetwork['mode']; ending?: OutletEnding; leak?: number; frictionless?: boolean } = {}): DuctNetwork {
  const section = { shape: 'rectangle' as const, width: 15 * MM, height: 20 * MM };
  const area = slot * long * MM * MM;
  return {
    mode: more.mode ?? 'static',
    fanOutletArea: 300e-6,
    trunkArea: 300e-6,
    trunk: [
      ...(more.frictionless === true ? [] : [{ kind: 'straight' as const, label: 'wall', section, length: 30 * MM, roughness: 0 }]),
      { kind: 'fitting', label: 'mitre', group: 'bend', coefficient: 1.2, area: 300e-6 },
    ],
    outlets: ['left', 'right'].map((name) => ({ name, ending: more.ending ?? 'land', area, branchArea: 150e-6, dischargeCoefficient: DISCHARGE_COEFFICIENT, elements: [] })),
    leaks: more.leak === undefined ? [] : [{ at: 'fan', area: more.leak, dischargeCoefficient: DISCHARGE_COEFFICIENT }],
  };
}

/** Relative difference, for tables of findings. */
export function off(ours: number, theirs: number): number {
  return Math.abs(ours - theirs) / Math.abs(theirs);
}

/** One finding per row that is further off than allowed. With CHECK_VALUE_TABLE set, every row goes into that file besides. */
export function findings(rows: readonly { what: string; ours: number; theirs: number; within: number }[]): string[] {
  if (rows.length === 0) throw new Error('findings: got no rows, so nothing would be checked');
  const table = process.env.CHECK_VALUE_TABLE;
  if (table !== undefined) {
    const test = expect.getState().currentTestName ?? '';
    appendFileSync(table, rows.map((row) => `${JSON.stringify({ test, ...row })}\n`).join(''));
  }
  return rows.filter((row) => !(off(row.ours, row.theirs) <= row.within)).map((row) => `${row.what}: ours ${row.ours}, theirs ${row.theirs}`);
}
