import { electricalFit, runningCurrentOf, type AirPath, type FanResult, type SideEffect } from '@/lib/airflow';
import { polymerNamed } from '@/lib/cooling';
import type { AirChange } from './air-options';
import type { SampledOption } from './air-samples';
import { bandOf } from './air-bands';

/** Area of a bare heater block of 20 × 16 × 12 mm without its top, m², and the share of the jets that strays onto it. Estimates. */
const BLOCK_AREA = 1.2e-3;
const STRAY_SHARE = 0.3;
/** Power that a small heater has to spare while printing, W. Estimate: 40 W heater, a quarter in use for the block itself. */
const HEATER_RESERVE = 8;

/** What a change brings besides the air, in sentences for the table. */
export function sideEffectsOf(change: AirChange, option: SampledOption, path: AirPath, chanceOfTooMuch: number, fans: readonly FanResult[]): SideEffect[] {
  return [
    ...electrical(change, path),
    ...atOdds(change, fans),
    ...mechanical(change),
    ...fromTooMuch(change, option, path, chanceOfTooMuch),
    ...fromPrint(change),
    ...unevenness(option),
  ];
}

function electrical(change: AirChange, path: AirPath): SideEffect[] {
  if (change.variant.fanSlot === 0) return [];
  const { fan } = change.variant;
  const effects: SideEffect[] = [];
  // The same points as in the fitting list; a limit that is only assumed is told there.
  const points = new Map(electricalFit(fan, { ...path.output, voltage: path.output.voltage ?? path.fan.voltage }).map((point) => [point.id, point]));
  const [running, start, voltage] = [points.get('running-current'), points.get('start-current'), points.get('voltage')];
  if (runningCurrentOf(fan) === undefined) effects.push({ kind: 'output-current', sentence: 'Its current is not known: read the label before you connect it.' });
  else if (path.output.currentLimit !== undefined && running?.state === 'stop') effects.push({ kind: 'output-current', sentence: `${running.sentence} Do not connect it there.` });
  else if (path.output.currentLimit !== undefined && start?.state === 'look') effects.push({ kind: 'output-current', sentence: start.sentence });
  const bothKnown = fan.voltage !== undefined && (path.output.voltage ?? path.fan.voltage) !== undefined;
  if (bothKnown && voltage !== undefined && voltage.state !== 'fits') effects.push({ kind: 'voltage', sentence: voltage.state === 'stop' ? `${voltage.sentence} Do not connect it.` : voltage.sentence });
  if (fan.expectedFlow !== undefined && fan.isClaimRefused) effects.push({ kind: 'claim-not-believed', sentence: 'Its claim is not believed: its band counts.' });
  const faster = fan.freeFlow.value > 1.3 * path.fan.freeFlow.value;
  if (faster) effects.push({ kind: 'noise', sentence: 'It will be louder.' });
  return effects;
}

/** From this chance on it is told that one of two fans works against the other. */
const OFTEN_AT_ODDS = 0.1;

function atOdds(change: AirChange, fans: readonly FanResult[]): SideEffect[] {
  // What the fans of today do to one another is told once, at leaving it.
  if (change.kind !== 'leave' && change.variant.fanSlot === 0) return [];
  const { arrangement } = change.variant.fan;
  return fans.filter((fan) => fan.overpowered >= OFTEN_AT_ODDS).map((fan) => ({
    kind: 'fans-at-odds',
    sentence: `${arrangement === 'parallel' ? `Air may be pushed back through ${fan.name}` : `${fan.name} may be driven by the other fan and hold it back`} (chance ${Math.round(100 * fan.overpowered)} %).`,
  }));
}

function mechanical(change: AirChange): SideEffect[] {
  if (change.variant.ductSlot > 0) return [{ kind: 'clearance', sentence: 'Check that the new duct clears the nozzle, the bed clips and the part.' }];
  if (change.kind === 'open-outlets') return [{ kind: 'clearance', sentence: 'A cut duct cannot be closed again.' }];
  return [];
}

function fromTooMuch(change: AirChange, option: SampledOption, path: AirPath, chanceOfTooMuch: number): SideEffect[] {
  const effects: SideEffect[] = [];
  const weak = polymerNamed(path.print.polymer).fanShare[1] < 0.3;
  if (chanceOfTooMuch > 0.2 || (weak && change.kind.startsWith('new'))) effects.push({ kind: 'weak-layers', sentence: 'Layers may bond less: print a test piece and try to break it.' });
  const speed = bandOf(option.cooling.speedAtNozzle).value;
  // A plate of 20 mm in the stream: 0.664·Re^0.5·Pr^(1/3) with air at about 60 °C.
  const power = 0.664 * Math.sqrt((speed * 0.02) / 1.9e-5) * 0.89 * (0.0288 / 0.02) * BLOCK_AREA * STRAY_SHARE * (change.task.nozzleTemperature - change.task.chamberTemperature);
  if (power > HEATER_RESERVE) effects.push({ kind: 'heater-block-cooled', sentence: 'Stray air takes much heat from the heater block: cover it with its sock and watch the temperature.' });
  return effects;
}

function fromPrint(change: AirChange): SideEffect[] {
  if (change.kind === 'slower-layers') return [{ kind: 'longer-print', sentence: 'Every print takes longer.' }];
  if (change.kind === 'cooler-melt') return [{ kind: 'feeding-harder', sentence: 'Layers bond less and the feeder works harder.' }];
  return [];
}

function unevenness(option: SampledOption): SideEffect[] {
  const flows = option.path.outlets.map((outlet) => bandOf(outlet.flow).value);
  const total = flows.reduce((a, b) => a + b, 0);
  const least = Math.min(...flows);
  if (flows.length < 2 || least > (0.8 * total) / flows.length) return [];
  return [{ kind: 'uneven', sentence: `One side still gets only ${Math.round((100 * least) / total)} % of the air.` }];
}
