'use client';
import Link from 'next/link';

/** Something of ours broke: say so, and that nothing is lost; never a dead end. */
export default function Fault({ error, reset }: { readonly error: Error; readonly reset: () => void }) {
  return (
    <div className="no-case">
      <h1 className="question">This page broke</h1>
      <p className="lead">The fault is ours. Your cases are kept on this device.</p>
      <p className="quiet">{error.message}</p>
      <p><button type="button" className="button button-next" onClick={reset}>Try again</button> <Link className="button" href="/case/log">Open the log and export the case</Link> <Link className="link" href="/handbook">Handbook</Link></p>
    </div>
  );
}
