import type { Round } from '@/lib/cases';
import { rankRemedies, remediesOfRound, type Diagnosis } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { formatMinutes, formatRange, preferredUnit } from '@/lib/units';
import { advisedOption, chartOf, intervalOf, lettered, planOf } from '../../air/air-views';
import { CurveChart, IntervalAxis, IntervalBar, shownShare } from '../../_charts';
import { AirPathPlan } from '../../_drawings/air-path-plan';
import type { CaseAir } from '../prove/case-air';

/** Widths on the printed sheet, px; each fits a phone as well. */
const PLAN = 236;
const CHART = 340;
const BAR = 160;
/** Rows of the table of changes, besides leaving it as it is and what was chosen. */
const MOST_OPTIONS = 4;

export interface AirReportProps {
  readonly air: CaseAir;
  /** What was chosen, by its title. */
  readonly chosen: string | undefined;
  readonly units: 'metric' | 'imperial';
}

/** The air path as it was found: from above, its curves, and the speed at each outlet. */
export function AirAsFound({ air: { path, result: air }, chosen, units }: AirReportProps) {
  const letters = lettered(air);
  const unit = preferredUnit('speed', units);
  const option = letters.find((row) => row.option.title === chosen)?.option.id ?? advisedOption(air) ?? 'leave';
  return (
    <div className="log-air">
      <figure><AirPathPlan {...planOf(path, air, unit)} width={PLAN} /></figure>
      <figure>
        <CurveChart {...chartOf(air, letters, option, units)} width={CHART} height={230} />
        <p className="label log-air-words">{air.outlets.map((outlet) => `${outlet.name} outlet ${formatRange(outlet.speed.low, outlet.speed.high, unit)}, ${formatRange(outlet.share.low, outlet.share.high, '%')} of the air`).join('; ')}. {formatRange(air.today.shareOfFreeFlow.low, air.today.shareOfFreeFlow.high, '%')} of the fan’s free flow gets through.</p>
      </figure>
    </div>
  );
}

/** The changes of the air path, with the air speed that each would reach at the weaker outlet. */
export function AirOptions({ air: { result: air }, chosen, units }: AirReportProps) {
  const letters = lettered(air);
  const unit = preferredUnit('speed', units);
  const taken = letters.find((row) => row.option.title === chosen)?.option.id ?? air.best;
  const best = [...letters].sort((a, b) => b.option.chance - a.option.chance).slice(0, MOST_OPTIONS).map((row) => row.option.id);
  const shown = letters.filter(({ option }) => option.kind === 'leave' || option.id === taken || best.includes(option.id));
  const { from, to, need, needWords, rows } = intervalOf(shown, taken, unit);
  return (
    <table className="plain log-options">
      <thead><tr><th scope="col">Change</th><th scope="col" className="log-drawn"><IntervalAxis from={from} to={to} unit={unit} need={need} needWords={needWords} width={BAR} /></th><th scope="col" className="number">reaches it</th><th scope="col" className="number">costs</th></tr></thead>
      <tbody>
        {shown.map(({ letter, option }, index) => {
          const row = rows[index];
          const cost = [...(option.price > 0 ? [`${option.price} ${air.currency}`] : []), ...(option.handsTime > 0 ? [formatMinutes(option.handsTime / 60)] : []), ...(option.timePerPrint > 1 ? [`${formatMinutes(option.timePerPrint / 60)} more a print`] : [])];
          return (
            <tr key={option.id} className={option.id === taken ? 'log-taken' : ''}>
              <th scope="row">{letter} {option.title}{option.id === taken && chosen === option.title && <span className="for-readers-only"> (chosen)</span>}</th>
              <td className="log-drawn">{row && <IntervalBar row={row} from={from} to={to} need={need} unit={unit} width={BAR} height={28} />}</td>
              <td className="number"><b>{shownShare(option.chance)}</b></td>
              <td className="number">{cost.length === 0 ? 'nothing' : cost.join(', ')}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const MOST_REMEDIES = 5;

/** The changes that the ranking of that moment offered, likeliest cure first among the cheap ones. */
export function Remedies({ checked, rounds, knowledge }: { readonly checked: Diagnosis; readonly rounds: readonly Round[]; readonly knowledge: Knowledge }) {
  const taken = new Set(rounds.flatMap(remediesOfRound));
  const ranked = rankRemedies(checked, knowledge);
  const shown = ranked.filter((remedy, index) => index < MOST_REMEDIES || taken.has(remedy.id));
  return (
    <table className="plain log-options">
      <thead><tr><th scope="col">Change</th><th scope="col" className="number">cures a cause</th><th scope="col" className="number">hands and print</th><th scope="col" className="number">costs</th></tr></thead>
      <tbody>
        {shown.map((remedy) => (
          <tr key={remedy.id} className={taken.has(remedy.id) ? 'log-taken' : ''}>
            <th scope="row">{remedy.does}{taken.has(remedy.id) && <span className="quiet"> (tried)</span>}</th>
            <td className="number"><b>{shownShare(remedy.chance)}</b></td><td className="number">{formatMinutes(remedy.minutes)}</td>
            <td className="number">{remedy.price.to === 0 ? 'nothing' : `${remedy.price.from} to ${remedy.price.to} €`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
