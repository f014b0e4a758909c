import { angleTo, ArrowHead } from './arrows';
import { Dimension } from './dimension';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Labels, labelRoom } from './labels';
import { Stroke } from './lines';
import { wordWidth } from './word-width';

/** Where the solid filament ends while it prints, mm below the top of the cut, and where the nozzle ends. */
const end = 13;
const tip = 31;
const pulled = 'pulled back';

/**
 * A retraction, in mm: the melt path from heat break to nozzle tip, the filament's end before and after. The melt runs
 * back from the tip, or goes on oozing where the pull is too short.
 */
export function RetractionDrawing({ drawnBack, oozes, plate }: { readonly drawnBack: number; readonly oozes: boolean; readonly plate: Plate }) {
  const names = ['filament', pulled, 'melt', frontWords(oozes)];
  const words = `${drawnBack} mm`;
  const dimensioned = plate.size !== 'row';
  const room = plate.size === 'figure' ? { left: wordWidth(words) + 26, right: labelRoom(names) + 14, top: 6, bottom: 6 } : { left: dimensioned ? wordWidth(words) + 22 : 4, right: 4, top: 4, bottom: 4 };
  const on = fit(plate, { w: 20, h: oozes ? tip + 6 : tip + 1 }, room);
  const now = end - drawnBack;
  return (
    <>
      <Hatches id={plate.id} kinds={['cut']} />
      <Walls on={on} />
      <Melt on={on} top={now} oozes={oozes} />
      <Stroke on={on} d={`M9.1 0H10.9V${now - 0.6}Q10 ${now + 0.8} 9.1 ${now - 0.6}Z`} line="thin" fill="mid" />
      {drawnBack > 0 && <Stroke on={on} d={`M9.1 ${end - 0.6}Q10 ${end + 0.8} 10.9 ${end - 0.6}`} line="hidden" />}
      {drawnBack > 0 && <Pull on={on} />}
      {dimensioned && drawnBack > 0 && <Dimension upright from={atY(on, now)} to={atY(on, end)} at={atX(on, 0) - 6} edges={[atX(on, 8.4), atX(on, 8.4)]} words={words} />}
      {plate.size === 'figure' && (
        <Labels
          plate={on}
          labels={[
            { x: atX(on, 10), y: atY(on, 3), words: 'filament', note: drawnBack > 0 ? pulled : undefined },
            { x: atX(on, 10), y: atY(on, 20), words: 'melt' },
            { x: atX(on, 10), y: atY(on, oozes ? tip + 2.4 : tip - 1.4), words: frontWords(oozes), accent: true },
          ]}
        />
      )}
    </>
  );
}

/** What the metal is cut to: lower end of the heat sink, heat break, heater block, nozzle. */
function Walls({ on }: { readonly on: Frame }) {
  const both = (half: (x: (from: number) => number) => string): string => half((from) => 10 - from) + half((from) => 10 + from);
  const sink = both((x) => `M${x(1)} 4H${x(6)}V7H${x(1)}Z`);
  const neck = both((x) => `M${x(1)} 7H${x(2)}V12H${x(1)}Z`);
  const block = both((x) => `M${x(1)} 12H${x(9)}V23H${x(1)}Z`);
  const nozzle = both((x) => `M${x(1)} 23H${x(4)}V26L${x(0.9)} ${tip}H${x(0.3)}V29.6L${x(1)} 28Z`);
  return (
    <g>
      <Stroke on={on} d={sink} line="edge" fill="wash" />
      <Stroke on={on} d={neck + block} line="edge" fill="paper" />
      <Hatched on={on} d={neck + block} kind="cut" />
      <Stroke on={on} d={nozzle} line="edge" fill="wash" />
    </g>
  );
}

function Melt({ on, top, oozes }: { readonly on: Frame; readonly top: number; readonly oozes: boolean }) {
  const front = tip - 2.2;
  const low = oozes ? `L9.7 29.6V${tip}C8.6 ${tip + 1.4} 8.6 ${tip + 4.4} 10 ${tip + 4.8}C11.4 ${tip + 4.4} 11.4 ${tip + 1.4} 10.3 ${tip}V29.6L11 28` : `L9.5 ${front}Q10 ${front - 0.9} 10.5 ${front}L11 28`;
  return <Stroke on={on} d={`M9 ${Math.max(top, 0)}V28${low}V${Math.max(top, 0)}Z`} line="accent-thin" fill="accw" />;
}

function Pull({ on }: { readonly on: Frame }) {
  const small = on.size === 'row';
  const tipAt = { x: atX(on, 12.8), y: atY(on, 0) };
  return (
    <g>
      <Stroke on={on} d="M12.8 3.6V1.2" line="accent" />
      <ArrowHead tip={tipAt} angle={angleTo({ x: 0, y: 1 }, { x: 0, y: 0 })} length={small ? 5 : 9} width={small ? 5 : 7} tone="accent" />
    </g>
  );
}

const frontWords = (oozes: boolean): string => (oozes ? 'still oozes' : 'runs back');

export const retractionWords = (drawnBack: number, oozes: boolean): string =>
  `A retraction in the cut hot end: ${drawnBack === 0 ? 'the filament is not pulled back' : `the filament is pulled back by ${drawnBack} mm`}, ${oozes ? 'and the melt still oozes from the nozzle' : 'and the melt runs back from the nozzle tip'}.`;
