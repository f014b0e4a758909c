/** Heat transfer under a jet that strikes a surface, and its fallback along a plate. */

/** Properties of the air at film temperature: kinematic viscosity m²/s, conductivity W/(m·K), Prandtl number. */
export interface FilmAir {
  readonly kinematicViscosity: number;
  readonly conductivity: number;
  readonly prandtl: number;
}

/** A heat-transfer coefficient with the numbers behind it. */
export interface Convection {
  /** W/(m²·K), mean over the area. */
  readonly coefficient: number;
  readonly reynolds: number;
  readonly nusselt: number;
  /** What left the range of the correlation; empty inside it. The value is then an extrapolation. */
  readonly outsideRange: readonly string[];
}

/**
 * Mean coefficient under a single round jet, out to a radius.
 * `diameter` of the nozzle, `distance` nozzle to surface, `radius` of the area: m, above 0. `speed` at the nozzle, m/s.
 * Range 2000 ≤ Re ≤ 400,000, 2 ≤ H/D ≤ 12, 2.5 ≤ r/D ≤ 7.5; outside it the value is flagged.
 * Source: "Heat and Mass Transfer between Impinging Gas Jets and Solid Surfaces", Advances in Heat Transfer 13 (1977) 1-60.
 * Worked: 8 mm, 8 m/s, 24 mm, 30 mm, nu 1.6e-5, k 0.0263, Pr 0.71 gives 89.70.
 */
export function roundJetConvection(diameter: number, speed: number, distance: number, radius: number, air: FilmAir): Convection {
  const reynolds = (speed * diameter) / air.kinematicViscosity;
  const over = diameter / radius;
  const shape = (over * (1 - 1.1 * over)) / (1 + 0.1 * (distance / diameter - 6) * over);
  const nusselt = air.prandtl ** 0.42 * shape * 2 * Math.sqrt(reynolds) * Math.sqrt(1 + 0.005 * reynolds ** 0.55);
  const outsideRange = [
    ...outside('Re', reynolds, 2000, 400_000),
    ...outside('H/D', distance / diameter, 2, 12),
    ...outside('r/D', radius / diameter, 2.5, 7.5),
  ];
  return { coefficient: (nusselt * air.conductivity) / diameter, reynolds, nusselt, outsideRange };
}

/**
 * Mean coefficient under a single slot jet, over a half-length to each side.
 * `width` is the short side of the slot; `halfLength` the half-extent of the area across the slot; both and `distance` in m.
 * The Reynolds number is on twice the width. Range 3000 ≤ Re ≤ 90,000, 2 ≤ H/W ≤ 10, 4 ≤ x/W ≤ 20 (ranges from memory).
 * Source as for the round jet. Worked: 6 mm, 6 m/s, 15 mm, 30 mm, nu 1.6e-5, k 0.0263, Pr 0.71 gives 57.81.
 */
export function slotJetConvection(width: number, speed: number, distance: number, halfLength: number, air: FilmAir): Convection {
  const reynolds = (speed * 2 * width) / air.kinematicViscosity;
  const along = halfLength / width;
  const away = distance / width;
  const exponent = 0.695 - 1 / (halfLength / (2 * width) + (distance / (2 * width)) ** 1.33 + 3.06);
  const nusselt = (air.prandtl ** 0.42 * 3.06 * reynolds ** exponent) / (along + away + 2.78);
  const outsideRange = [
    ...outside('Re', reynolds, 3000, 90_000),
    ...outside('H/W', away, 2, 10),
    ...outside('x/W', along, 4, 20),
  ];
  return { coefficient: (nusselt * air.conductivity) / (2 * width), reynolds, nusselt, outsideRange };
}

/**
 * Mean coefficient along a flat plate, laminar from the edge; mixed above Re 5e5. `length` m, `speed` m/s.
 * Source: any heat transfer text. Worked: 4 m/s, 0.25 m, nu 1.798e-5, k 0.02735, Pr 0.7228 gives 15.37.
 */
export function plateConvection(length: number, speed: number, air: FilmAir): Convection {
  const reynolds = (speed * length) / air.kinematicViscosity;
  const cubeRoot = Math.cbrt(air.prandtl);
  const nusselt = reynolds < 5e5 ? 0.664 * Math.sqrt(reynolds) * cubeRoot : (0.037 * reynolds ** 0.8 - 871) * cubeRoot;
  return { coefficient: (nusselt * air.conductivity) / length, reynolds, nusselt, outsideRange: outside('Pr', air.prandtl, 0.6, 60) };
}

function outside(name: string, value: number, low: number, high: number): string[] {
  if (value >= low && value <= high) return [];
  return [`${name} ${value.toPrecision(3)} is outside ${low} to ${high}`];
}
