import { checkedKnowledge } from './checked-knowledge';
import { packFirst } from './pack';

export const dynamic = 'force-static';

/** What rankings and first screens read of the knowledge base, as one file, written out at build time. */
export function GET(): Response {
  return Response.json(packFirst(checkedKnowledge()));
}
