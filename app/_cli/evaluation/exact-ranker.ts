import { diagnose } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import type { Ranker } from './ranker';

/** The reasoning that is shipped: exact, several causes at once. A case that is too dense to answer ranks nothing. */
export function exactRanker(knowledge: Knowledge, name = 'Leeward: exact, several causes'): Ranker {
  return {
    name,
    rank: (file) => {
      // No copies: the bands are not scored here.
      const result = diagnose(file, knowledge, { copies: 0 });
      if (result.kind === 'too-much') return { ranking: [], chances: new Map() };
      return { ranking: result.causes.map((cause) => cause.id), chances: new Map(result.causes.map((cause) => [cause.id, cause.probability])), diagnosis: result };
    },
  };
}
