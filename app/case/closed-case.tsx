import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import { CaseTitleBlock } from '../_case/case-title-block';

/** In place of a plan, or of changes to choose from: the case is closed, and what to do when that did not last. */
export function ClosedCase({ file }: { readonly file: CaseFile }) {
  return (
    <>
      <CaseTitleBlock file={file} />
      <div className="no-case">
        <h1>This case is closed</h1>
        <p className="lead">The cure was proven, so there is nothing to plan or to choose. If it came back, the page of the case goes on from there.</p>
        <p><Link className="button button-next" href="/case">Open the case</Link></p>
      </div>
    </>
  );
}
