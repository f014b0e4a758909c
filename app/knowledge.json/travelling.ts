import type { Basis, Knowledge, Link } from '@/lib/knowledge';

/**
 * The knowledge base as it travels to the browser: without the worked examples (tests run them), the steps of methods and the long
 * reasons behind single figures (the handbook pages show them). `basis` keeps its kind, so a figure can still say
 * whether it rests on a source or an estimate.
 */
export function travelling(knowledge: Knowledge): Knowledge {
  return {
    ...knowledge,
    symptoms: mapped(knowledge.symptoms, (page) => ({ ...page, links: links(page.links), followsFrom: links(page.followsFrom) })),
    causes: mapped(knowledge.causes, (page) => ({
      ...page, examples: [], shows: {}, yes: {}, reads: {}, curedBy: links(page.curedBy),
      ...(page.context ? { context: page.context.map((row) => ({ ...row, basis: short(row.basis) })) } : {}),
    })),
    checks: mapped(knowledge.checks, (page) => ({ ...page, examples: [], yes: links(page.yes), reads: mapped(page.reads, (read) => ({ ...read, basis: short(read.basis), statedIn: '' })) })),
    // The bench page of a method carries its own steps and readings.
    methods: mapped(knowledge.methods, (page) => ({ ...page, examples: [], steps: [], readings: [] })),
    remedies: mapped(knowledge.remedies, (page) => ({ ...page, examples: [], cures: links(page.cures) })),
    sources: {},
  };
}

function links(stated: Readonly<Record<string, Link>>): Record<string, Link> {
  return mapped(stated, (link) => ({ ...link, basis: short(link.basis), statedIn: '' }));
}

function short(basis: Basis): Basis {
  return 'source' in basis ? { source: basis.source } : 'estimate' in basis ? { estimate: '–' } : { practice: '–' };
}

function mapped<T, R>(shelf: Readonly<Record<string, T>>, change: (page: T) => R): Record<string, R> {
  return Object.fromEntries(Object.entries(shelf).map(([id, page]) => [id, change(page)]));
}
