import Link from 'next/link';

/** The foot of every page: what the tool is not, and where its reckoning is explained. */
export function Foot() {
  return (
    <footer className="foot">
      <div className="foot-row">
        <span>Leeward gives likelihoods, not certainties. Leave mains voltage and fixed wiring to a licensed person under your local rules.</span>
        <Link href="/handbook">How it reckons</Link>
      </div>
    </footer>
  );
}
