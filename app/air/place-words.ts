/** Places that the reader of an air path names, in the words of the form. */
const WORDS: Readonly<Record<string, string>> = {
  title: 'title', currency: 'currency', schema: 'kind of file', version: 'version of the file', printing: 'printing',
  fan: 'fan', second: 'second fan', kind: 'kind', name: 'name', frame: 'frame size', voltage: 'voltage on its label', current: 'current on its label', currentIsLargest: 'whether the current is the largest', startCurrent: 'current at the start',
  supply: 'voltage it gets', speed: 'speed', duty: 'duty', freeFlow: 'free flow', maxPressure: 'highest pressure', midPoint: 'point in the middle', points: 'points of the curve', stall: 'dip of the curve', count: 'how many',
  arrangement: 'how they stand', claim: 'claim', trusted: 'trusted sheet', reckonWithBand: 'band of the claim check', drive: 'how it is driven', wires: 'wires', wireGauge: 'wire size', wireLength: 'wire length', output: 'output', currentLimit: 'most current',
  duct: 'duct', section: 'section', width: 'width', height: 'height', diameter: 'diameter', length: 'length', bends: 'bends', angle: 'angle', radius: 'radius', changes: 'changes of section', ending: 'ending', roughness: 'roughness',
  leaks: 'gaps', gap: 'gap', area: 'area', at: 'place', open: 'open share', mode: 'mode', miss: 'miss',
  outlet: 'outlet', branch: 'branch', direction: 'direction', tilt: 'tilt', distance: 'distance to the nozzle', aimError: 'how far it aims beside',
  measured: 'reading', what: 'what was read', value: 'value', held: 'how it was held', flow: 'flow', pressure: 'pressure',
  print: 'print', polymer: 'plastic', nozzleTemperature: 'nozzle temperature', chamberTemperature: 'chamber temperature', layerTime: 'layer time', layerHeight: 'layer height', lineWidth: 'line width', layers: 'layers', sides: 'sides', hands: 'minutes of hands',
  air: 'air', temperature: 'temperature', humidity: 'humidity', altitude: 'altitude',
};

/** Lists whose entries are counted from 1. */
const ONE_OF: Readonly<Record<string, string>> = { outlets: 'outlet', candidates: 'offer', measured: 'reading', leaks: 'gap', changes: 'change of section', bends: 'bend', points: 'point', sides: 'side' };

/**
 * A place in an air-path file as the form calls it: `outlets[2].branch.section.width` is "outlet 2, branch, section, width".
 * A row of a pasted table is counted without its first line: `the table[2].flow` is "the table, row 2, flow".
 * What stands before the place ("the ± of") and after it (", line 3") stays as it is; a key that is no place is said as it stands.
 */
export function placeInWords(where: string): string {
  const row = /^the table\[(\d+)\]\.(\w+)$/u.exec(where);
  if (row !== null) return `the table, row ${row[1] ?? ''}, ${row[2] ?? ''}`;
  const [, before = '', place = '', after = ''] = /^(the ± of )?([A-Za-z]+(?:\[\d+\])?(?:\.[A-Za-z]+(?:\[\d+\])?)*)(.*)$/su.exec(where) ?? [];
  if (!/[.[]/u.test(place) && !(place in WORDS)) return where;
  return `${before}${place.split('.').map(stepInWords).join(', ')}${after}`;
}

function stepInWords(step: string): string {
  const [, key = step, number] = /^([A-Za-z]+)\[(\d+)\]$/u.exec(step) ?? [];
  return number === undefined ? (WORDS[key] ?? key) : `${ONE_OF[key] ?? key} ${number}`;
}
