'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { caseLink } from '../../_browser/case-link';
import { saveFile } from '../../_browser/save-file';
import { changeCase, newCase, openCase } from '../../_case/current-case';
import { TextField } from '../../_parts/text-field';

/** Ways to keep a case and send it: print, file, link; and the next case on the same machine. */
export function CaseDeeds({ file }: { readonly file: CaseFile }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const copy = async (): Promise<void> => {
    const link = await caseLink(file);
    await navigator.clipboard.writeText(link).then(() => setSaid(`The link holds the whole case (${link.length} letters). It is copied.`), () => setSaid('The browser does not allow copying here. Export the case instead.'));
  };
  const again = async (): Promise<void> => {
    await openCase({ ...newCase(), machine: file.machine, print: { ...(file.print.material === undefined ? {} : { material: file.print.material }) } });
    router.push('/?new');
  };
  return (
    <div className="deeds">
      <TextField label="Name of this case" value={file.title} placeholder="left side curls, then the layers shift" onChange={(title) => void changeCase((each) => ({ ...each, title }))} />
      <div className="deeds-row">
        <button type="button" className="button" onClick={() => print()}>Print the report</button>
        <button type="button" className="button" onClick={() => saveFile(`leeward-${file.id}.json`, `${JSON.stringify(file, null, 2)}\n`, 'application/json')}>Export as a file</button>
        <button type="button" className="button" onClick={() => void copy()}>Copy a link that holds it</button>
        <button type="button" className="button" onClick={() => void again()}>New case on this machine</button>
        <Link className="link" href="/case">Back to the case</Link>
        <Link className="link" href="/casebook">Casebook</Link>
      </div>
      <p aria-live="polite" className="label">{said}</p>
    </div>
  );
}
