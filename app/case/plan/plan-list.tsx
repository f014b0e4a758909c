import Link from 'next/link';
import type { PlanNode } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { COLUMNS } from './plan-layout';
import { branchWords, stepWords } from './plan-words';

/** The plan as a list in the list: the form for small screens, for paper and for reading aloud. */
export function PlanList({ root, knowledge }: { readonly root: PlanNode; readonly knowledge: Knowledge }) {
  return <div className="plan-list"><ListedStep node={root} knowledge={knowledge} depth={1} /></div>;
}

function ListedStep({ node, knowledge, depth }: { readonly node: PlanNode; readonly knowledge: Knowledge; readonly depth: number }) {
  const words = stepWords(node, knowledge);
  return (
    <>
      <p className="plan-deed">{words.href === undefined ? words.title : <PlanLink href={words.href} title={words.title} />}</p>
      {words.prospect !== undefined && <p className="label">{words.takes !== undefined && <>takes {words.takes}; </>}from here {words.prospect}</p>}
      {'branches' in node && depth < COLUMNS && (
        <ul className="plan-branches">
          {node.branches.map((branch, index) => (
            <li key={index}>
              <p className="plan-if">{branchWords(branch, node, knowledge)}</p>
              <ListedStep node={branch.next} knowledge={knowledge} depth={depth + 1} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function PlanLink({ href, title }: { readonly href: string; readonly title: string }) {
  // The parts of the address are known only at run time; both places exist for every method and every remedy.
  return <Link href={href as '/bench/x'}>{title}</Link>;
}
