import type { Metadata } from 'next';

export const metadata: Metadata = { title: 'Air path' };

export default function AirPage() {
  return <h1>Air path</h1>;
}
