import { EXIT_LOSS, airAt, areaOf, curveFromEnds, curvePoints, ductCurvePoints, mitreBendLoss, operatingPoint, type CurvePoint, type DuctNetwork, type OperatingPoint } from '@/lib/airflow';
import type { Point } from '../../_drawings/arrows';
import { rounded, settingOf, type MovingFigure } from './moving-figure';

/** An invented small radial fan: neither figure belongs to a product. */
const FAN = curveFromEnds(180, 2.2e-3, 1.5);
const AIR = airAt(298.15, 101_325, 0.5);

/** An invented duct: 60 mm of channel, one sharp bend, one slot 20 mm long. */
const CHANNEL = { shape: 'rectangle', width: 20e-3, height: 15e-3 } as const;
const SLOT = 20e-3;

/** The duct with a slot of this width, m. */
export function ductWithSlot(width: number): DuctNetwork {
  const area = areaOf(CHANNEL);
  return {
    mode: 'total', fanOutletArea: area, trunkArea: area, leaks: [],
    trunk: [
      { kind: 'straight', label: 'channel', section: CHANNEL, length: 60e-3, roughness: 0.05e-3 },
      { kind: 'fitting', label: 'bend', group: 'bend', coefficient: mitreBendLoss(Math.PI / 2), area },
    ],
    outlets: [{ name: 'slot', ending: 'land', area: width * SLOT, branchArea: area, dischargeCoefficient: EXIT_LOSS, elements: [] }],
  };
}

/** Where the fan works on the duct with a slot of this width, mm. */
export function meetsAt(millimetres: number): OperatingPoint {
  return operatingPoint(FAN, ductWithSlot(millimetres / 1000), AIR);
}

const shown = ({ flow, pressure }: CurvePoint): Point => ({ x: flow * 1000, y: pressure });
const duct = (millimetres: number): Point[] => ductCurvePoints(ductWithSlot(millimetres / 1000), AIR, FAN.freeFlow, 40).map(shown);
const fan = curvePoints(FAN, 40).map(shown);
const compared = [3, 12].map((width) => ({ name: `slot ${width} mm`, as: 'ghost' as const, points: duct(width), width }));

export const fanMeetsDuct: MovingFigure = {
  title: 'A narrower outlet moves the meeting point',
  sliders: [{ label: 'Width of the outlet slot', from: 2, to: 15, step: 0.5, start: 5, words: (value) => `${value} mm` }],
  at: (values) => {
    const width = settingOf(values, 0);
    const point = meetsAt(width);
    const flow = point.flow * 1000;
    return {
      x: { words: 'flow, L/s', from: 0, to: 2.4 },
      y: { words: 'pressure, Pa', from: 0, to: 200 },
      lines: [
        { name: 'fan', as: 'strong', points: fan },
        { name: `slot ${width} mm`, as: 'plain', points: duct(width) },
        ...compared.filter((line) => line.width !== width),
      ],
      mark: { x: flow, y: point.pressure, words: `${rounded(flow)} L/s` },
      said: `A slot of ${width} × 20 mm lets ${rounded(flow)} L/s through at ${rounded(point.pressure, 3)} Pa: ${rounded(100 * point.shareOfFreeFlow)} % of what this fan moves with nothing attached. The air leaves at ${rounded(speedOf(point))} m/s.`,
    };
  },
  columns: ['flow', 'pressure', 'share of the free flow', 'speed at the slot'],
  row: (values) => {
    const point = meetsAt(settingOf(values, 0));
    return [`${rounded(point.flow * 1000)} L/s`, `${rounded(point.pressure, 3)} Pa`, `${rounded(100 * point.shareOfFreeFlow)} %`, `${rounded(speedOf(point))} m/s`];
  },
  tabled: [2, 3, 5, 8, 12, 15],
  holds: 'An invented radial fan of 180 Pa and 2.2 L/s on a duct of 15 × 20 mm with one sharp bend, at 25 °C, no leak.',
};

function speedOf(point: OperatingPoint): number {
  const [slot] = point.outlets;
  if (!slot) throw new Error('fan meets duct: got no outlet, expected one');
  return slot.meanSpeed;
}
