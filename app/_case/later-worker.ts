import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import type { PackedFirst } from '../knowledge.json/packed';
import { unpackFirst } from '../knowledge.json/unpack';
import { laterOf, type LaterPart, type Wanted } from './later';

/** First the knowledge, once; then cases, each under a number by which it can be called off. */
export type LaterQuestion =
  | { readonly kind: 'knowledge'; readonly packed: string }
  | { readonly kind: 'case'; readonly id: number; readonly file: CaseFile; readonly wanted: readonly Wanted[] }
  | { readonly kind: 'off'; readonly id: number };

export type LaterAnswer = { readonly id: number; readonly kind: 'part'; readonly part: LaterPart } | { readonly id: number; readonly kind: 'failed' };

let knowledge: Knowledge | undefined;
const open = new Set<number>();

addEventListener('message', ({ data }: MessageEvent<LaterQuestion>) => {
  if (data.kind === 'knowledge') knowledge = unpackFirst(JSON.parse(data.packed) as PackedFirst);
  else if (data.kind === 'off') open.delete(data.id);
  else void reckon(data);
});

async function reckon({ id, file, wanted }: Extract<LaterQuestion, { kind: 'case' }>): Promise<void> {
  open.add(id);
  try {
    if (knowledge === undefined) throw new Error('later-worker: got a case, expected the knowledge first');
    await turn();
    if (!open.has(id)) return;
    for (const part of laterOf(file, await tailored(knowledge, file), wanted)) {
      if (part !== undefined) postMessage({ id, kind: 'part', part } satisfies LaterAnswer);
      // What has come in meanwhile is heard before the next part is begun.
      await turn();
      if (!open.has(id)) return;
    }
  } catch {
    postMessage({ id, kind: 'failed' } satisfies LaterAnswer);
  }
}

/** The rooms that reckon with air are fetched only for a case that describes its air path. */
async function tailored(pages: Knowledge, file: CaseFile): Promise<Knowledge> {
  if (file.airPath === undefined) return pages;
  const { knowledgeOfCase } = await import('@/lib/decision');
  return knowledgeOfCase(pages, file);
}

const turn = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });
