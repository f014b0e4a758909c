/** A toothed belt on a motor pulley. Lengths in m. */
export interface BeltDrive {
  readonly kind: 'belt';
  /** 200 for a motor of 1.8° steps, 400 for 0.9°. */
  readonly fullStepsPerTurn: number;
  readonly beltPitch: number;
  readonly teeth: number;
  /** Motor turns per pulley turn; 1 without a gear. */
  readonly ratio?: number;
}

/** A screw on a motor. */
export interface ScrewDrive {
  readonly kind: 'screw';
  readonly fullStepsPerTurn: number;
  /** Travel per screw turn: thread pitch × starts, m. */
  readonly lead: number;
  readonly ratio?: number;
}

export type Drive = BeltDrive | ScrewDrive;

/** Lengths that a drive can jump by or leave marks with, m. */
export interface DriveLengths {
  readonly travelPerTurn: number;
  readonly fullStep: number;
  /** Four full steps: the rotor can settle only where the field repeats. Microsteps do not enter. */
  readonly electricalCycle: number;
  /** One belt tooth; undefined for a screw. */
  readonly tooth: number | undefined;
  /** Pitch radius of the pulley; undefined for a screw. */
  readonly pulleyRadius: number | undefined;
  /** First length that is both whole cycles and whole teeth: from there on the two cannot be told apart by size. */
  readonly coincidence: number | undefined;
}

/**
 * Lengths of a drive. Steps per turn 20 to 2000, all lengths above 0; throws otherwise. Source: motion sheet 1.1.
 * 20 teeth of 2 mm at 200 steps: 40, 0.20, 0.80 mm per turn, step, cycle; cycles and teeth meet at 4.0 mm.
 */
export function driveLengths(drive: Drive): DriveLengths {
  const ratio = drive.ratio ?? 1;
  const around = drive.kind === 'belt' ? drive.beltPitch * drive.teeth : drive.lead;
  if (!(around > 0) || !(ratio > 0) || !(drive.fullStepsPerTurn >= 20 && drive.fullStepsPerTurn <= 2000)) {
    throw new Error(`driveLengths: got ${around} m per turn, ratio ${ratio}, ${drive.fullStepsPerTurn} steps, expected positive lengths and 20 to 2000 steps`);
  }
  const travelPerTurn = around / ratio;
  const fullStep = travelPerTurn / drive.fullStepsPerTurn;
  const electricalCycle = 4 * fullStep;
  const tooth = drive.kind === 'belt' ? drive.beltPitch : undefined;
  return {
    travelPerTurn,
    fullStep,
    electricalCycle,
    tooth,
    pulleyRadius: drive.kind === 'belt' ? around / (2 * Math.PI) : undefined,
    coincidence: tooth === undefined ? undefined : firstCoincidence(tooth, electricalCycle),
  };
}

/** Smallest whole number of teeth that is a whole number of cycles, within a millionth of a cycle. */
function firstCoincidence(tooth: number, cycle: number): number | undefined {
  for (let teeth = 1; teeth <= 1000; teeth += 1) {
    const cycles = (teeth * tooth) / cycle;
    if (Math.abs(cycles - Math.round(cycles)) < 1e-6 && Math.round(cycles) > 0) return teeth * tooth;
  }
  return undefined;
}
