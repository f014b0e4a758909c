import { readContent } from '@/content/read-content';
import { possibilitiesOf } from '@/lib/diagnosis';
import { quantile } from './evaluation/bootstrap';
import { meanOf } from './evaluation/probability-scores';
import { drawSession } from './simulation/draw-session';
import { playSession, type Played } from './simulation/play-session';
import { policies } from './simulation/policies';
import { wordsOfSimulate } from './simulation/words-of-simulate';
import { tableOfText } from './table-of-text';
import { endWith } from './words-of-command';

/** npm run simulate -- [--sessions N] [--seed S] [--giving-up M] [--draws D] [--json]: sessions drawn from the knowledge base, policies side by side. */
const options = wordsOfSimulate(process.argv.slice(2));
const content = readContent();
const knowledge = content.value?.knowledge ?? endWith(content.problems);
const possible = possibilitiesOf(knowledge);
const all = policies(knowledge);
const begun = performance.now();
const played: Played[][] = all.map(() => []);
for (let number = 0; number < options.sessions; number += 1) {
  const session = drawSession(knowledge, options.seed, number);
  all.forEach((policy, index) => played[index]?.push(playSession(session, policy, knowledge, { ...options, possible })));
  if (!options.json && (number + 1) % 25 === 0) console.error(`${number + 1} of ${options.sessions} sessions, ${Math.round((performance.now() - begun) / 1000)} s`);
}
const rows = all.map((policy, index) => figuresOf(policy.name, played[index] ?? [], played[0] ?? []));
console.log(options.json ? JSON.stringify({ ...options, policies: rows }, null, 2) : asText());

interface Figures {
  readonly name: string;
  readonly cost: Mean;
  readonly overShipped: Mean;
  readonly minutes: Mean;
  readonly median: number;
  readonly worst: number;
  readonly cured: number;
  readonly minutesIfCured: number;
  readonly checks: number;
  readonly changes: number;
}

interface Mean {
  readonly mean: number;
  readonly error: number;
}

function figuresOf(name: string, own: readonly Played[], shipped: readonly Played[]): Figures {
  const sorted = own.map(({ minutes }) => minutes).sort((a, b) => a - b);
  const cured = own.filter(({ isCured }) => isCured);
  return {
    name, cost: meanWithError(own.map(({ cost }) => cost)), overShipped: meanWithError(own.map(({ cost }, index) => cost - (shipped[index]?.cost ?? cost))),
    minutes: meanWithError(sorted), median: quantile(sorted, 0.5), worst: quantile(sorted, 0.9),
    cured: cured.length / own.length, minutesIfCured: cured.length === 0 ? 0 : meanOf(cured.map(({ minutes }) => minutes)),
    checks: meanOf(own.map(({ checks }) => checks)), changes: meanOf(own.map(({ changes }) => changes)),
  };
}

/** Mean with its standard error. */
function meanWithError(values: readonly number[]): Mean {
  const mean = meanOf(values);
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, values.length - 1);
  return { mean, error: Math.sqrt(variance / values.length) };
}

function asText(): string {
  const shown = ({ mean, error }: Mean): string => `${mean.toFixed(0)} ± ${error.toFixed(0)}`;
  return [
    `${options.sessions} sessions, seed ${options.seed}, ${options.draws} draws a step, giving up counts ${options.givingUp} min. After ±: standard error.`,
    'cost: own minutes, money at 3 min a unit, and giving up. minutes: own minutes until cured or given up. Sessions, causes and answers are drawn from the knowledge base itself, so every policy here knows the truth of its figures.',
    tableOfText([
      ['policy', 'cost', 'over the first', 'minutes', 'median', '9 in 10 within', 'cured', 'minutes if cured', 'checks', 'changes'],
      ...rows.map((row) => [row.name, shown(row.cost), shown(row.overShipped), shown(row.minutes), row.median.toFixed(0), row.worst.toFixed(0), `${(100 * row.cured).toFixed(1)} %`, row.minutesIfCured.toFixed(0), row.checks.toFixed(1), row.changes.toFixed(1)]),
    ]),
    `${Math.round((performance.now() - begun) / 1000)} s`,
  ].join('\n\n');
}
