/** Published ratings of small fans: what data sheets say, without their makers' names. */

/** Radial or axial, by the trade's words. */
export type FanKind = 'blower' | 'axial';

/** One published rating, in SI. */
export interface FanRating {
  readonly id: string;
  /** Frame in the trade's way: two digits of side, two of depth, in mm; `5015` is 50 × 50 × 15. */
  readonly frame: string;
  readonly kind: FanKind;
  /** V, A, 1/s, m³/s, Pa. */
  readonly voltage: number;
  readonly current: number;
  readonly speed: number;
  readonly freeFlow: number;
  readonly maxPressure: number;
  /** Sound pressure in dB(A) as printed, or undefined. */
  readonly noise: number | undefined;
  /** True when the sheet prints the largest current instead of the typical one. */
  readonly currentIsLargest: boolean;
  /** Id of the sheet, resolved in tests/independent/airflow/README.md. */
  readonly source: string;
}

/** 1 ft³/min in m³/s, exact: 0.3048³/60. */
export const CUBIC_FOOT_PER_MINUTE = 0.3048 ** 3 / 60;

type Row = readonly [
  id: string, frame: string, kind: FanKind, volt: number, ampere: number, turnsPerMinute: number, cubicFeetPerMinute: number,
  pascal: number, decibel: number | null, largest: boolean, source: string,
];

/** id, frame, kind, V, A, rpm, CFM, Pa, dB(A), current is the largest, sheet. */
const ROWS: readonly Row[] = [
  ['B01', '5015', 'blower', 5, 0.240, 4500, 4.10, 89.2, 38, false, 'S1'],
  ['B02', '4007', 'blower', 5, 0.040, 3500, 0.99, 44.8, 21.8, false, 'S3'],
  ['B03', '4007', 'blower', 5, 0.090, 5000, 1.42, 89.7, 23.8, false, 'S3'],
  ['B04', '4007', 'blower', 5, 0.140, 6500, 1.85, 176.9, 29.5, false, 'S3'],
  ['B05', '4007', 'blower', 12, 0.040, 3500, 0.99, 44.8, 21.8, false, 'S3'],
  ['B06', '4007', 'blower', 12, 0.060, 5000, 1.42, 89.7, 23.8, false, 'S3'],
  ['B07', '4007', 'blower', 12, 0.090, 6500, 1.85, 176.9, 29.5, false, 'S3'],
  ['B08', '4010', 'blower', 12, 0.050, 4000, 1.17, 17.4, 17.8, false, 'S3'],
  ['B09', '4010', 'blower', 12, 0.060, 5000, 1.46, 27.4, 22.7, false, 'S3'],
  ['B10', '4020', 'blower', 12, 0.020, 3000, 1.33, 12.5, 21.6, false, 'S3'],
  ['B11', '4020', 'blower', 12, 0.040, 4500, 1.99, 27.4, 30.5, false, 'S3'],
  ['B12', '4020', 'blower', 12, 0.080, 6000, 2.66, 47.3, 36.7, false, 'S3'],
  ['B13', '7530', 'blower', 24, 0.210, 4000, 16.30, 274.0, 43, false, 'S18'],
  ['A01', '4010', 'axial', 5, 0.110, 8000, 9.25, 60.4, 35.5, false, 'S2'],
  ['A03', '4010', 'axial', 5, 0.050, 5000, 5.67, 26.0, 21.5, false, 'S6'],
  ['A04', '4010', 'axial', 5, 0.050, 4500, 4.83, 17.5, null, false, 'S16'],
  ['A05', '4010', 'axial', 5, 0.100, 3500, 2.46, 6.1, 22.31, false, 'S17'],
  ['A06', '4010', 'axial', 5, 0.109, 5800, 7.00, 29.9, 20.6, true, 'S9'],
  ['A07', '4010', 'axial', 5, 0.157, 7000, 8.00, 47.3, 27.3, true, 'S9'],
  ['A08', '4010', 'axial', 12, 0.038, 5000, 5.40, 22.4, 15.7, true, 'S9'],
  ['A09', '4010', 'axial', 12, 0.048, 5800, 7.00, 29.9, 20.6, true, 'S9'],
  ['A10', '4010', 'axial', 12, 0.059, 7000, 8.00, 47.3, 27.3, true, 'S9'],
  ['A11', '4010', 'axial', 12, 0.101, 8500, 9.90, 62.3, 31.4, true, 'S9'],
  ['A12', '4010', 'axial', 5, 0.210, 7500, 6.00, 46.0, 29, true, 'S12'],
  ['A13', '4010', 'axial', 5, 0.160, 6500, 5.30, 34.0, 25, true, 'S12'],
  ['A14', '4010', 'axial', 5, 0.100, 5500, 4.24, 24.0, 22, true, 'S12'],
  ['A15', '3010', 'axial', 5, 0.240, 10500, 3.88, 54.0, 27, true, 'S12'],
  ['A16', '3010', 'axial', 5, 0.200, 9000, 3.21, 37.0, 23, true, 'S12'],
  ['A17', '3010', 'axial', 5, 0.130, 7500, 2.75, 29.0, 21, true, 'S12'],
  ['A18', '4015', 'axial', 12, 0.170, 13100, 12.70, 192.0, 42, false, 'S13'],
  ['A19', '4020', 'axial', 5, 0.460, 9800, 9.90, 98.5, 39, false, 'S4'],
  ['A20', '4020', 'axial', 5, 0.320, 8000, 8.00, 65.7, 33, false, 'S4'],
  ['A21', '4020', 'axial', 5, 0.250, 6500, 6.50, 45.1, 28, false, 'S4'],
  ['A22', '4020', 'axial', 5, 0.120, 5000, 4.80, 26.5, 24, false, 'S4'],
  ['A23', '4020', 'axial', 12, 0.280, 12500, 12.40, 153.8, 44, false, 'S4'],
  ['A24', '4020', 'axial', 12, 0.180, 11000, 10.90, 124.0, 42, false, 'S4'],
  ['A25', '4020', 'axial', 12, 0.130, 9200, 9.20, 87.3, 37, false, 'S4'],
  ['A26', '4020', 'axial', 12, 0.110, 8000, 8.00, 65.7, 33, false, 'S4'],
  ['A27', '4020', 'axial', 12, 0.090, 6500, 6.50, 45.1, 28, false, 'S4'],
  ['A28', '4020', 'axial', 12, 0.060, 5000, 4.80, 26.5, 24, false, 'S4'],
  ['A29', '4020', 'axial', 24, 0.150, 12500, 12.40, 153.8, 44, false, 'S4'],
  ['A30', '4020', 'axial', 24, 0.130, 11000, 10.90, 124.0, 42, false, 'S4'],
  ['A31', '4020', 'axial', 24, 0.070, 8300, 8.20, 69.6, 35, false, 'S4'],
  ['A32', '4020', 'axial', 24, 0.060, 6500, 6.50, 45.1, 28, false, 'S4'],
  ['A33', '4020', 'axial', 24, 0.060, 5200, 4.90, 28.3, 25, false, 'S4'],
  ['A34', '4020', 'axial', 12, 0.086, 7800, 8.80, 69.7, 36, false, 'S8'],
  ['A35', '4020', 'axial', 5, 0.087, 5000, 6.30, 27.4, 16.5, true, 'S9'],
  ['A36', '4020', 'axial', 5, 0.124, 6000, 7.70, 42.3, 21.0, true, 'S9'],
  ['A37', '4020', 'axial', 5, 0.173, 7000, 8.90, 54.8, 25.5, true, 'S9'],
  ['A38', '4020', 'axial', 12, 0.038, 4500, 5.50, 24.9, 12.3, true, 'S9'],
  ['A39', '4020', 'axial', 12, 0.046, 5000, 6.30, 27.4, 16.5, true, 'S9'],
  ['A40', '4020', 'axial', 12, 0.054, 6000, 7.70, 42.3, 21.0, true, 'S9'],
  ['A41', '4020', 'axial', 12, 0.067, 7000, 8.90, 54.8, 25.5, true, 'S9'],
  ['A42', '4020', 'axial', 12, 0.092, 8000, 10.80, 72.2, 27.5, true, 'S9'],
  ['A43', '4020', 'axial', 24, 0.030, 6000, 7.70, 42.3, 21.0, true, 'S9'],
  ['A44', '4020', 'axial', 24, 0.039, 7000, 8.90, 54.8, 25.5, true, 'S9'],
  ['A45', '4020', 'axial', 24, 0.045, 8000, 10.80, 72.2, 27.5, true, 'S9'],
  ['A47', '4028', 'axial', 12, 1.300, 25000, 31.80, 1000.0, 64, false, 'S14'],
  ['A48', '4028', 'axial', 12, 0.920, 22000, 28.60, 800.0, 61, false, 'S14'],
  ['A49', '4028', 'axial', 12, 0.400, 13000, 20.50, 214.2, 44.5, false, 'S15'],
];

/** All published ratings. Worked: B01 is a 5015 blower with 4.10 CFM and 89.2 Pa at 4500 rpm. */
export const FAN_RATINGS: readonly FanRating[] = ROWS.map((row) => ({
  id: row[0],
  frame: row[1],
  kind: row[2],
  voltage: row[3],
  current: row[4],
  speed: row[5] / 60,
  freeFlow: row[6] * CUBIC_FOOT_PER_MINUTE,
  maxPressure: row[7],
  noise: row[8] ?? undefined,
  currentIsLargest: row[9],
  source: row[10],
}));
