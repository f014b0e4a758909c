import { describe, expect, it } from 'vitest';
import { airOfPath, readAirPath, variantOfToday, type AirOption, type AirPath } from '@/lib/airflow';
import { airChanges, compareAirOptions } from '@/lib/decision';

function pathWith(facts: object): AirPath {
  const { value } = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, ...facts }));
  if (value === undefined) throw new Error('the path should read');
  return value;
}

describe('an outlet that is added', () => {
  it('stands across the nozzle from the one there is, wherever that stands', () => {
    const misplaced = [0, 90, 180, 250].flatMap((degrees) => {
      const path = pathWith({ outlets: [{ name: 'only', direction: `${degrees}°`, width: '14 mm', height: '3 mm' }] });
      const today = variantOfToday(path);
      // Opposite directions cancel: two unit vectors that sum to nothing. The even fork that stands in for a new duct has such a pair as well.
      return airChanges(path, today, airOfPath(path)).changes.filter(({ kind }) => kind === 'second-outlet' || kind === 'new-duct').flatMap(({ id, variant: { outlets } }) => {
        const [along, across] = [Math.cos, Math.sin].map((part) => outlets.reduce((sum, { direction }) => sum + part(direction.value), 0));
        return outlets.length === 2 && Math.hypot(along ?? 1, across ?? 1) < 1e-12 ? [] : [`${id} at ${degrees}°: ${outlets.map(({ direction }) => direction.value).join(' and ')} rad`];
      });
    });
    expect(misplaced).toEqual([]);
    const only = pathWith({ outlets: [{ name: 'only', direction: '0°', width: '14 mm', height: '3 mm' }] });
    expect(airChanges(only, variantOfToday(only), airOfPath(only)).changes.map(({ kind }) => kind)).toContain('second-outlet');
  });
});

describe('what a new fan brings besides the air', () => {
  const today = { kind: 'blower', frame: '40 x 10', claim: 'measured', voltage: '24 V', current: '0.06 A', freeFlow: '0.7 L/s', maxPressure: '118 Pa' };
  const offered = (freeFlow: string, print: object = {}): AirOption => {
    const path = pathWith({ fan: today, print, candidates: [{ name: 'other', fan: { ...today, freeFlow } }] });
    const found = compareAirOptions(path, [], { samples: 200 }).options.find(({ kind }) => kind === 'new-fan');
    if (found === undefined) throw new Error('no new fan among the options');
    return found;
  };
  const tells = (option: AirOption, kind: string): boolean => option.sideEffects.some((effect) => effect.kind === kind);

  it('is noise, when it blows clearly more than the one of today', () => {
    expect(['0.7 L/s', '0.85 L/s', '1 L/s', '2 L/s'].map((flow) => tells(offered(flow), 'noise'))).toEqual([false, false, true, true]);
  });

  it('is weaker layers with a plastic whose profiles keep the fan below 30 %, even where too much air is unlikely', () => {
    // Fan shares of public profiles (sheet, section 10): ABS 15, ASA 20 %; PLA 100, PETG 50 %. A weak fan and short layers, so that little air is no excess.
    const rows = ['ABS', 'ASA', 'PLA', 'PETG'].map((polymer) => offered('0.1 L/s', { polymer, layerTime: '5 s' }));
    expect(rows.filter(({ chanceOfTooMuch }) => chanceOfTooMuch > 0.1)).toEqual([]);
    expect(rows.map((option) => tells(option, 'weak-layers'))).toEqual([true, true, false, false]);
  });

  it('is weaker layers with any plastic, once there is likely too much air', () => {
    const rows = [['0.1 L/s', '5 s'], ['3 L/s', '60 s']].map(([flow = '', layerTime]) => offered(flow, { polymer: 'PETG', layerTime }));
    expect(rows.map(({ chanceOfTooMuch }) => chanceOfTooMuch > 0.5)).toEqual([false, true]);
    expect(rows.map((option) => tells(option, 'weak-layers'))).toEqual([false, true]);
  });

  it('is a cooled heater block, once stray air takes more than a small heater has to spare', () => {
    // A plate of 20 mm in air at 60 °C: h = 0.664·Re^½·Pr^⅓·k/L; 1.2e-3 m², three tenths of the jet, 8 W to spare at 274 K above the air.
    const taken = (speed: number): number => ((0.664 * Math.sqrt((speed * 0.02) / 1.9e-5) * Math.cbrt(0.71) * 0.0288) / 0.02) * 1.2e-3 * 0.3 * 274;
    expect([taken(6) < 8, taken(12) > 8]).toEqual([true, true]);
    const hot = { polymer: 'PC', nozzleTemperature: '300 °C', chamberTemperature: '26 °C' };
    const blowing = (maxPressure: string): AirOption => {
      const path = pathWith({ fan: today, outlets: [{ name: 'a', width: '14 mm', height: '5 mm', distance: '8 mm' }], print: hot, candidates: [{ name: 'other', fan: { ...today, freeFlow: '4 L/s', maxPressure } }] });
      return compareAirOptions(path, [], { samples: 200 }).options.find(({ kind }) => kind === 'new-fan') ?? offered('0.1 L/s');
    };
    expect(['30 Pa', '1200 Pa'].map((pressure) => tells(blowing(pressure), 'heater-block-cooled'))).toEqual([false, true]);
  });
});
