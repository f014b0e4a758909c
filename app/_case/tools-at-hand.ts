import type { CaseFile } from '@/lib/cases';

/** The case of somebody who lacks this tool: checks that need it stand behind the others. */
export function withoutTool(file: CaseFile, tool: string): CaseFile {
  return { ...file, lacksTools: [...new Set([...(file.lacksTools ?? []), tool])] };
}

/** The case of somebody who has this tool after all. */
export function withTool({ lacksTools = [], ...file }: CaseFile, tool: string): CaseFile {
  const left = lacksTools.filter((each) => each !== tool);
  return left.length === 0 ? file : { ...file, lacksTools: left };
}
