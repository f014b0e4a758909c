import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { packedFirst } from '../_browser/knowledge-source';
import { startedWorker } from '../_browser/started-worker';
import { inTurns } from './in-turns';
import type { LaterPart, Wanted } from './later';
import type { LaterAnswer, LaterQuestion } from './later-worker';

export interface LaterOfCase {
  readonly file: CaseFile;
  /** As it holds for this case; used only where no worker can be had. */
  readonly knowledge: Knowledge;
  readonly wanted: readonly Wanted[];
}

interface Asked extends LaterOfCase {
  readonly tell: (part: LaterPart) => void;
}

/* One worker for the visit: it keeps the knowledge. */
let worker: Worker | undefined;
let isRefused = false;
let last = 0;
const asked = new Map<number, Asked>();
const onPage = new Map<number, () => void>();

/** Has all that follows the ranking of a case reckoned beside the page, which never waits for it. Gives back what calls it off. */
export function reckonLater(question: LaterOfCase, tell: (part: LaterPart) => void): () => void {
  const id = (last += 1);
  asked.set(id, { ...question, tell });
  // Even the asking waits until the page is drawn.
  const timer = setTimeout(() => void ask(id), 0);
  return () => {
    clearTimeout(timer);
    asked.delete(id);
    onPage.get(id)?.();
    onPage.delete(id);
    worker?.postMessage({ kind: 'off', id } satisfies LaterQuestion);
  };
}

async function ask(id: number): Promise<void> {
  if (worker === undefined && !isRefused) await begin();
  const question = asked.get(id);
  if (question === undefined) return;
  if (worker === undefined) reckonHere(id, question);
  else worker.postMessage({ kind: 'case', id, file: question.file, wanted: question.wanted } satisfies LaterQuestion);
}

let beginning: Promise<void> | undefined;

function begin(): Promise<void> {
  beginning ??= packedFirst.arrives().then(start).catch(refuse);
  return beginning;
}

function start(packed: string): void {
  const started = startedWorker(() => new Worker(new URL('./later-worker.ts', import.meta.url), { type: 'module' }));
  if (started === undefined) { refuse(); return; }
  started.addEventListener('message', ({ data }: MessageEvent<LaterAnswer>) => {
    const question = asked.get(data.id);
    if (question === undefined) return;
    if (data.kind === 'part') question.tell(data.part);
    else reckonHere(data.id, question);
  });
  started.addEventListener('error', refuse);
  started.postMessage({ kind: 'knowledge', packed } satisfies LaterQuestion);
  worker = started;
}

/** Where the browser gives no worker, the page reckons by itself, in short turns. */
function refuse(): void {
  worker = undefined;
  isRefused = true;
  for (const [id, question] of asked) reckonHere(id, question);
}

/** Pause between two parts on the page, ms: whatever was pressed meanwhile comes first. */
const PAUSE = 30;

function reckonHere(id: number, { file, knowledge, wanted, tell }: Asked): void {
  if (onPage.has(id)) return;
  onPage.set(id, () => undefined);
  void import('./later').then(({ laterOf }) => {
    if (!asked.has(id)) return;
    onPage.set(id, inTurns(laterOf(file, knowledge, wanted), ({ value }) => { if (value !== undefined) tell(value); }, PAUSE));
  });
}
