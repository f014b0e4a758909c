/* Words that several kinds of page share. They stand apart from the schemas so that the browser gets them without zod. */

/** Places on the touchable part of the start page, and the machine itself. */
export const ZONES = ['bottom-edge', 'wall', 'corner', 'steep-underside', 'span', 'thin-tip', 'hole', 'top-face', 'seam', 'inside', 'whole-part', 'machine'] as const;

/** Parts of the machine: the branches of the tree of causes. */
export const BRANCHES = ['part-cooling', 'hot-end', 'feeding', 'filament', 'motion', 'height-drive', 'bed', 'electrics', 'settings', 'model', 'surroundings'] as const;

/** Plastics that causes may depend on. */
export const MATERIALS = ['PLA', 'PETG', 'ABS', 'ASA', 'PA', 'PC', 'TPU', 'PP', 'filled'] as const;

/** What may have been changed shortly before the trouble began. */
export const TOUCHED = ['fan', 'duct', 'hot-end', 'nozzle', 'feeder', 'filament', 'belts', 'board', 'wiring', 'firmware', 'settings', 'bed', 'moved', 'nothing'] as const;

/** How bad a symptom is, mildest first. */
export const GRADES = ['slight', 'clear', 'severe'] as const;

export type Grade = (typeof GRADES)[number];
export type Zone = (typeof ZONES)[number];
export type BranchId = (typeof BRANCHES)[number];
export type Material = (typeof MATERIALS)[number];
export type Touched = (typeof TOUCHED)[number];

/** What a person reads for a branch. */
export const BRANCH_TITLES: Readonly<Record<BranchId, string>> = {
  'part-cooling': 'Part-cooling air', 'hot-end': 'Heat at the nozzle', feeding: 'Feeding the plastic', filament: 'The filament', motion: 'Motion of head and bed',
  'height-drive': 'Height drive', bed: 'Bed and first layer', electrics: 'Electrics and control', settings: 'Settings and print file', model: 'The model', surroundings: 'Surroundings',
};

/** What a person reads for a zone. */
export const ZONE_TITLES: Readonly<Record<Zone, string>> = {
  'bottom-edge': 'bottom edge', wall: 'wall', corner: 'corner', 'steep-underside': 'steep underside', span: 'span across a gap', 'thin-tip': 'thin tip', hole: 'hole',
  'top-face': 'top face', seam: 'seam', inside: 'inside', 'whole-part': 'whole part', machine: 'the machine',
};
