/**
 * Forces and torques of a belt-driven axis, SI. Two-phase stepper motors without feedback. Source: motion sheet 1.5.
 */

/** Force on the belt, N: mass (kg) × acceleration (m/s²) + friction (N). 0.5 kg at 3 m/s² is 1.5 N. */
export function beltForce(mass: number, acceleration: number, friction = 0): number {
  return mass * acceleration + friction;
}

/** Motor torque, N·m, for a belt force on a pulley of pitch radius `radius` (m); the rotor (kg·m²) is accelerated too. */
export function motorTorque(force: number, radius: number, rotorInertia: number, acceleration: number): number {
  return force * radius + (rotorInertia * acceleration) / radius;
}

/** Mass, kg, that the rotor adds to the belt: J/r². 2.2e-6 kg·m² on 6.366 mm is 0.054 kg. */
export function rotorAsMass(rotorInertia: number, radius: number): number {
  return rotorInertia / radius ** 2;
}

/** Largest belt force at standstill, N. `share` is the current over the rated one; one energised winding gives 1/√2. */
export function holdingForce(holdingTorque: number, radius: number, share = 1, windings: 'both' | 'one' = 'both'): number {
  return (holdingTorque * share * (windings === 'one' ? Math.SQRT1_2 : 1)) / radius;
}

/**
 * Lag of the rotor, in full steps, under a load that is `share` of the holding torque (−1 to 1): asin(share)/(π/2). A quarter of
 * the torque is 0.161 steps. Beyond 1 the rotor slips to the next stable place, four full steps on: undefined.
 */
export function lagUnderLoad(share: number): number | undefined {
  return Math.abs(share) > 1 ? undefined : Math.asin(share) / (Math.PI / 2);
}

/** Electrical frequency, Hz, at speed v (m/s) for a cycle length e (m). 0.2 m/s and 0.8 mm is 250 Hz. */
export function electricalFrequency(speed: number, cycle: number): number {
  return speed / cycle;
}

/** Voltage, V, that a winding of inductance L (H) needs for current I (A) at frequency f (Hz): 2πfLI, back-EMF not counted. */
export function windingVoltage(current: number, frequency: number, inductance: number): number {
  return current * 2 * Math.PI * frequency * inductance;
}

/**
 * Peak force, N, when a carriage of mass m (kg) at v (m/s) strikes an edge through the stiffness k (N/m) of belt and motor:
 * v·√(k·m). 0.1 m/s, 50 kN/m, 0.5 kg is 15.8 N.
 */
export function collisionForce(speed: number, stiffness: number, mass: number): number {
  return speed * Math.sqrt(stiffness * mass);
}

/** Stiffness, N/m, of the motor's own field on a pulley: p·T/r², p = full steps per turn / 4. 0.4 N·m, 200 steps, 6.366 mm: 493 kN/m. */
export function fieldStiffness(holdingTorque: number, fullStepsPerTurn: number, radius: number): number {
  return ((fullStepsPerTurn / 4) * holdingTorque) / radius ** 2;
}
