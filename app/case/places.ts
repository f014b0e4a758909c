/** Where a proof is read. Directions are those of the machine seen from above, the back at the top. */
export const PLACES = {
  none: [],
  one: ['the place'],
  four: ['back', 'right', 'front', 'left'],
  eight: ['back', 'back-right', 'right', 'front-right', 'front', 'front-left', 'left', 'back-left'],
} as const;

export type PlaceCount = 'one' | 'four' | 'eight';
