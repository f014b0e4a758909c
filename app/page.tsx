import type { Metadata } from 'next';
import { StartScreen } from './_start/start-screen';

export const metadata: Metadata = { title: { absolute: 'Leeward: why did this print fail?' } };

export default function StartPage() {
  return <StartScreen />;
}
