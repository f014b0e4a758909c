/** What became of a list of weak pages once the reasons that pages give were held against it. */
export interface KeptPages {
  readonly explained: readonly { readonly id: string; readonly because: string }[];
  readonly unexplained: readonly string[];
  /** Pages that give a reason although nothing speaks against them any more. */
  readonly needless: readonly string[];
}

/** The form of a page that this needs: its id, and why it stays in spite of what the review finds. */
export interface PageWithReason {
  readonly id: string;
  readonly front: { readonly keptBecause?: string | undefined };
}

/**
 * Sorts the ids that a review lists by whether their pages say why they stay, and names the pages whose reason has become
 * idle. A list without reasons comes back whole as unexplained.
 */
export function keptPages(listed: readonly string[], pages: readonly PageWithReason[]): KeptPages {
  const reasons = new Map(pages.flatMap(({ id, front }) => (front.keptBecause === undefined ? [] : [[id, front.keptBecause] as const])));
  return {
    explained: listed.flatMap((id) => { const because = reasons.get(id); return because === undefined ? [] : [{ id, because }]; }),
    unexplained: listed.filter((id) => !reasons.has(id)),
    needless: [...reasons.keys()].filter((id) => !listed.includes(id)),
  };
}
