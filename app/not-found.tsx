import Link from 'next/link';

export default function NotFound() {
  return (
    <div className="no-case">
      <h1 className="question">This page is not here</h1>
      <p className="lead">The address may be old or mistyped. Nothing of your cases is lost.</p>
      <p><Link className="button button-next" href="/">Say what went wrong</Link><Link className="button" href="/handbook">Search the handbook</Link></p>
    </div>
  );
}
