import { readContent } from '@/content/read-content';
import { usable, type WholeKnowledge } from '@/lib/knowledge';
import { problemAsText } from '@/lib/problems';

/** The knowledge base of this build. A faulty page stops the build and says where. */
export function checkedKnowledge(): WholeKnowledge {
  const reading = readContent();
  if (!reading.value || !usable(reading)) throw new Error(`The knowledge base has problems:\n${reading.problems.map(problemAsText).join('\n')}`);
  return reading.value.knowledge;
}
