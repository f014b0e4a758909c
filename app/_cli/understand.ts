import { understander } from '../_search/understand';
import { readContent } from '@/content/read-content';
import { endWith, wordsOfCommand } from './words-of-command';

const USAGE = 'npm run -s understand -- "edges lift up" [--json]';
const { words, json } = wordsOfCommand({ usage: USAGE, gives: 'Lists the symptoms that somebody’s words may mean, best first.', options: ['--json'] });
const text = words.join(' ').trim();
if (text === '') endWith([{ code: 'no-words', level: 'stop', where: 'command line', what: 'No words were given.', allowed: USAGE, next: 'Say what is seen on the part or heard from the machine.' }]);
const content = readContent();
const knowledge = content.value?.knowledge ?? endWith(content.problems);
const found = understander(knowledge)(text).slice(0, 20).map(({ id, score }) => ({ id, title: knowledge.symptoms[id]?.title ?? id, score: Number(score.toFixed(4)) }));
console.log(json ? JSON.stringify(found, null, 2) : found.map((row) => `${row.score.toFixed(2)}  ${row.title}  (${row.id})`).join('\n') || 'Nothing fits these words. Say what is seen on the part or heard from the machine.');
