import Link from 'next/link';

export default function NotFound() {
  return (
    <>
      <h1 className="question">This page is not here</h1>
      <p className="lead">The address may be old or mistyped. Nothing of your cases is lost.</p>
      <p><Link className="link" href="/">Say what went wrong</Link> · <Link className="link" href="/handbook">Search the handbook</Link></p>
    </>
  );
}
