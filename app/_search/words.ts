/** One word of what somebody typed: as typed, where it stands, and the stem it is looked up by. */
export interface Word {
  readonly typed: string;
  readonly start: number;
  readonly stem: string;
}

/** Words that say nothing about a fault. */
const EMPTY = new Set(
  ('a an and are as at be been being but by can could did do does doing for from get gets got had has have he her his i if in into is it its just like me my of on or our ' +
    'she so some than that the their them then there these they this to too very was we were what when which while who why will with would you your im ive dont doesnt didnt isnt cant wont ' +
    'about after again all also always am any because before both each even ever every few here how more most much only other over same since still such up down out off really quite please help thing things ' +
    'um uhm uh er ok okay well basically actually anyway maybe perhaps really kind sort guess think thought know seem seems seemed notice noticed say says said been yesterday today lately already yet ' +
    'print prints printed printing printer machine part parts').split(' '),
);

/** Words that are empty beside others but mean a fault when little else is said. */
const WEAK = new Set(['up', 'down', 'over', 'off', 'out', 'part', 'print', 'all', 'after', 'only', 'same']);

/**
 * Splits what somebody typed into words worth looking up. When nothing else is left, the weak words count too.
 * `wordsOf('the corners are lifting')` has the stems `corner`, `lift`.
 */
export function wordsOf(text: string): Word[] {
  const all = [...text.matchAll(/[\p{L}\p{N}]+(?:['’][\p{L}]+)?/gu)].map((match): Word => {
    const typed = match[0];
    return { typed, start: match.index, stem: stemOf(typed.toLowerCase().replace(/['’]/g, '')) };
  });
  const telling = all.filter((word) => !EMPTY.has(word.typed.toLowerCase().replace(/['’]/g, '')) && word.stem.length > 1);
  return telling.length > 0 ? telling : all.filter((word) => WEAK.has(word.typed.toLowerCase()));
}

/** Words of different countries, trades and spellings that mean the same here; the second is the stem looked up. */
const SAME: Readonly<Record<string, string>> = {
  colour: 'color', grey: 'gray', fibre: 'fiber', centre: 'center', calliper: 'caliper', nossle: 'nozzle', nozle: 'nozzle', tip: 'tip',
  hotend: 'hot-end', extrud: 'extrud', warp: 'warp', buildplate: 'plate', buildplat: 'plate', bed: 'bed', platform: 'plate', gcode: 'file',
  stringi: 'string', hair: 'string', hairi: 'string', cobweb: 'string', web: 'string', whisker: 'string', spiderweb: 'string', thread: 'string', ooz: 'ooz',
  curl: 'curl', curli: 'curl', bend: 'bend', bent: 'bend', lift: 'lift', rais: 'lift', peel: 'lift', stuck: 'stick', stick: 'stick', adher: 'stick', adhes: 'stick', glu: 'glu',
  shift: 'shift', shifti: 'shift', move: 'shift', mov: 'shift', offset: 'shift', displac: 'shift', slip: 'slip', skip: 'skip',
  clog: 'block', clogg: 'block', jam: 'block', jamm: 'block', plug: 'block', blockag: 'block', block: 'block',
  holes: 'hole', gap: 'gap', void: 'gap', miss: 'miss', underextrud: 'starv', underextrus: 'starv', starv: 'starv', thin: 'thin',
  saggi: 'sag', sag: 'sag', droop: 'sag', droopi: 'sag', click: 'click', clunk: 'knock', knock: 'knock', thud: 'knock', bang: 'knock', bump: 'bump',
  wobbl: 'wobbl', wobbli: 'wobbl', wavi: 'wave', wave: 'wave', rippl: 'rippl', ghost: 'rippl', ring: 'rippl', echo: 'rippl', blower: 'fan', ventil: 'fan', fan: 'fan',
  overheat: 'hot', hot: 'hot', heat: 'heat', temp: 'temperatur', temps: 'temperatur', blob: 'blob', zit: 'blob', pimpl: 'blob', bubbl: 'bubbl', steam: 'steam', hiss: 'hiss', crackl: 'pop', pop: 'pop',
  spaghetti: 'spaghetti', bird: 'spaghetti', overhang: 'overhang', bridg: 'bridg', brok: 'break', broke: 'break', broken: 'break', snap: 'snap', snapp: 'snap', crack: 'crack', split: 'split', delamin: 'split',
  chew: 'grind', ground: 'grind', grind: 'grind', stripp: 'grind', belt: 'belt', elephant: 'foot', squish: 'squash', squash: 'squash', smush: 'squash', flatten: 'squash', wet: 'damp', moist: 'damp', humid: 'damp', damp: 'damp', moistur: 'damp',
};

/** A light English stem: endings off, doubled letters undone, trade synonyms joined. `stemOf('lifting')` is `lift`. */
export function stemOf(word: string): string {
  let stem = word;
  if (stem.length > 4 && stem.endsWith('ies')) stem = `${stem.slice(0, -3)}i`;
  else if (stem.length > 4 && /(ss|sh|ch|x|z)es$/.test(stem)) stem = stem.slice(0, -2);
  else if (stem.length > 3 && stem.endsWith('s') && !stem.endsWith('ss') && !stem.endsWith('us')) stem = stem.slice(0, -1);
  for (const ending of ['ingly', 'edly', 'ing', 'ed', 'ly', 'ment', 'ness', 'er', 'or', 'ion', 'ive', 'y', 'e']) {
    if (stem.length - ending.length >= 3 && stem.endsWith(ending)) {
      stem = stem.slice(0, -ending.length);
      break;
    }
  }
  const undoubled = /([bdfgklmnprt])\1$/.test(stem) && stem.length > 3 ? stem.slice(0, -1) : stem;
  return SAME[stem] ?? SAME[word] ?? SAME[undoubled] ?? undoubled;
}
