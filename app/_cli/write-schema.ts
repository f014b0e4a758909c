import { mkdirSync, writeFileSync } from 'node:fs';
import { caseJsonSchema } from '@/lib/cases';

/** Writes the JSON Schema of the case file to public/schema/, so that other programs can read and write cases. */
mkdirSync('public/schema', { recursive: true });
writeFileSync('public/schema/case-1.json', `${JSON.stringify(caseJsonSchema(), null, 2)}\n`);
