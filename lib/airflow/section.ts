/** The inside of a duct or an outlet, cut across: lengths in m, inner dimensions. */
export type Section =
  | { readonly shape: 'rectangle'; readonly width: number; readonly height: number }
  | { readonly shape: 'circle'; readonly diameter: number };

/** Area, m². Worked: 15 × 20 mm gives 300e-6. */
export function areaOf(section: Section): number {
  return section.shape === 'circle' ? (Math.PI / 4) * section.diameter ** 2 : section.width * section.height;
}

/** Hydraulic diameter 4A/P, m. It is a length for friction, never a diameter for the area. Worked: 15 × 20 mm gives 17.143e-3. */
export function hydraulicDiameterOf(section: Section): number {
  return section.shape === 'circle' ? section.diameter : (2 * section.width * section.height) / (section.width + section.height);
}

/** Short side over long side, 0 to 1; 1 for a square. A circle has none, and gets 1. */
export function aspectOf(section: Section): number {
  if (section.shape === 'circle') return 1;
  return Math.min(section.width, section.height) / Math.max(section.width, section.height);
}

/** The same shape with another area, m²: every length grows with the square root. */
export function withArea(section: Section, area: number): Section {
  const factor = Math.sqrt(area / areaOf(section));
  return section.shape === 'circle'
    ? { shape: 'circle', diameter: section.diameter * factor }
    : { shape: 'rectangle', width: section.width * factor, height: section.height * factor };
}
