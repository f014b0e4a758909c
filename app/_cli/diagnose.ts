import { readContent } from '@/content/read-content';
import { readCase } from '@/lib/cases';
import { knowledgeOfCase } from '@/lib/decision';
import { CONFLICTING, HARDLY_TOGETHER, diagnose, lookAgain, nextChecks, rankRemedies, weightsOfEvidence, whatWasTold, type Weight } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { triedChanges } from '../_case/tried-changes';
import { problemAsText } from '@/lib/problems';
import { endWith, textOfFile, wordsOfCommand } from './words-of-command';

const USAGE = 'npm run -s diagnose -- FILE [--json]';
const { words, json } = wordsOfCommand({ usage: USAGE, gives: 'Ranks the causes of a case file, and says which checks and changes come next.', options: ['--json'], most: 1 });
const { path, text } = textOfFile(words, USAGE);
const reading = readCase(text, path);
if (!reading.value) endWith(reading.problems);
const knowledge = knowledgeOfCase(knowledgeBase(), reading.value);
const result = diagnose(reading.value, knowledge);
if (result.kind === 'too-much') {
  endWith([{ code: 'too-much-at-once', level: 'stop', where: path, what: 'So many findings are open at once that an exact answer would take too long.', next: `Confirm or withdraw first: ${result.confirmFirst.slice(0, 3).map((id) => titleOf(knowledge, id)).join('; ')}.` }]);
}
for (const problem of result.problems) console.error(problemAsText(problem));
const weights = weightsOfEvidence(result);
const next = nextChecks(result, knowledge, { lacksTools: reading.value.lacksTools ?? [] });
const told = whatWasTold(reading.value, result.items);
const { conflict } = result;
const again = conflict > CONFLICTING ? lookAgain(result, reading.value, knowledge) : undefined;
const output = {
  causes: result.causes.map((cause) => ({
    id: cause.id, title: cause.title, probability: cause.probability, low: cause.low, high: cause.high,
    for: reasons(weights.get(cause.id) ?? [], 1), against: reasons(weights.get(cause.id) ?? [], -1),
  })),
  unexplained: result.unexplained.share,
  next: next.map(({ check, method, minutes, gain }) => ({ check, method, minutes, gain })),
  remedies: rankRemedies(result, knowledge, triedChanges(reading.value)).map(({ id, chance, minutes }) => ({ id, chance, minutes })),
};
console.log(json ? JSON.stringify(output, null, 2) : asText());

function knowledgeBase(): Knowledge {
  const content = readContent();
  return content.value?.knowledge ?? endWith(content.problems);
}

function reasons(list: readonly Weight[], sign: 1 | -1): { about: string; decibans: number }[] {
  return list
    .filter((weight) => weight.averaged * sign > 0.05)
    .sort((a, b) => (b.averaged - a.averaged) * sign)
    .map((weight) => ({ about: weight.about, decibans: Number(weight.averaged.toFixed(2)) }));
}

function asText(): string {
  const percent = (share: number): string => `${Math.round(share * 100)} %`.padStart(5);
  return [
    ...(told === 'something' ? [] : ['Nothing was told as seen: these are the chances that any failed print has.']),
    ...(conflict > CONFLICTING ? [`What was told ${conflict >= HARDLY_TOGETHER ? 'can hardly be true together' : 'does not go together well'} (${conflict.toFixed(1)})${again === undefined ? '' : `; look again at: ${titleOf(knowledge, again.about)}`}.`] : []),
    'What could cause it (several can be at work)',
    ...output.causes.slice(0, 12).map((cause) => `  ${percent(cause.probability)}  ${cause.title}  (${Math.round(cause.low * 100)}–${Math.round(cause.high * 100)})`),
    `  ${percent(output.unexplained)}  of what was seen is explained by nothing listed here`,
    'Do this next',
    ...next.slice(0, 5).map((row) => `  ${String(row.minutes).padStart(3)} min  ${titleOf(knowledge, row.method)}  (settles ${row.gain.toFixed(2)} bit${row.own < row.minutes ? `; counts ${Math.round(row.own)} min, as it waits` : ''})`),
    'Changes, in the order to try them',
    ...output.remedies.slice(0, 5).map((remedy) => `  ${percent(remedy.chance)}  ${titleOf(knowledge, remedy.id)}  (${remedy.minutes} min with proof)`),
  ].join('\n');
}
