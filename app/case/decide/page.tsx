import type { Metadata } from 'next';
import { DecideScreen } from './decide-screen';

export const metadata: Metadata = { title: 'Choose a change' };

export default function DecidePage() {
  return <DecideScreen />;
}
