import { checkedKnowledge } from '../knowledge.json/checked-knowledge';
import { packMore } from '../knowledge.json/pack';

export const dynamic = 'force-static';

/** The rest of the knowledge base: reasons behind figures, steps, look-alikes. Fetched when a screen asks for it. */
export function GET(): Response {
  return Response.json(packMore(checkedKnowledge()));
}
