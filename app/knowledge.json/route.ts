import { readContent } from '@/content/read-content';
import { usable } from '@/lib/knowledge';
import { problemAsText } from '@/lib/problems';
import { travelling } from './travelling';

export const dynamic = 'force-static';

/** The checked knowledge base as one file, written out at build time. A faulty page stops the build and says where. */
export function GET(): Response {
  const reading = readContent();
  if (!reading.value || !usable(reading)) throw new Error(`The knowledge base has problems:\n${reading.problems.map(problemAsText).join('\n')}`);
  return Response.json(travelling(reading.value.knowledge));
}
