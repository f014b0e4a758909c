import Link from 'next/link';

/** Nothing is on the table: say so, and where to go. */
export function NoCase({ waiting = false }: { readonly waiting?: boolean }) {
  if (waiting) return <p className="quiet" role="status">Fetching your case from this device.</p>;
  return (
    <div className="no-case">
      <h1 className="question">No case is on the table</h1>
      <p className="lead">Say what went wrong, or take a case out of the casebook.</p>
      <p><Link className="button button-next" href="/">Say what went wrong</Link> <Link className="button" href="/casebook">Open the casebook</Link></p>
    </div>
  );
}
