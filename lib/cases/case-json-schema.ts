import { z } from 'zod';
import { caseSchema } from './case-schema';

/** The case file's schema as JSON Schema (draft 2020-12), as a writer of case files needs it: defaults may be left out. */
export function caseJsonSchema(): Record<string, unknown> {
  return { $id: 'leeward-case-1', title: 'Leeward case, version 1', ...z.toJSONSchema(caseSchema, { io: 'input', unrepresentable: 'any' }) };
}
