import type { Knowledge, WholeKnowledge } from '@/lib/knowledge';
import type { PackedFirst, PackedMore } from '../knowledge.json/packed';
import { unpackFirst, unpackWhole } from '../knowledge.json/unpack';

/** Something that is fetched once, when first asked for; a failed fetch is tried again at the next call. */
export class Source<K> {
  arrived: K | undefined;
  #fetched: Promise<K> | undefined;

  constructor(private readonly fetchIt: () => Promise<K>) {}

  arrives(): Promise<K> {
    this.#fetched ??= this.fetchIt().then((knowledge) => (this.arrived = knowledge));
    this.#fetched.catch(() => { this.#fetched = undefined; });
    return this.#fetched;
  }
}

/** The file of the first part as it came: cheaper to hand to a worker than what is made of it. */
export const packedFirst = new Source<string>(() => textAt('/knowledge.json'));
/** The knowledge that rankings and first screens read. */
export const first = new Source<Knowledge>(async () => unpackFirst(JSON.parse(await packedFirst.arrives()) as PackedFirst));
/** With steps, and with what every figure rests on. */
export const whole = new Source<WholeKnowledge>(async () => {
  const [known, more] = await Promise.all([first.arrives(), textAt('/knowledge-more.json')]);
  return unpackWhole(known, JSON.parse(more) as PackedMore);
});

async function textAt(path: string): Promise<string> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: got status ${response.status}, expected 200`);
  return response.text();
}
