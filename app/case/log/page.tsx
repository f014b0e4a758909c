import type { Metadata } from 'next';
import { LogScreen } from './log-screen';

export const metadata: Metadata = { title: 'Log' };

export default function LogPage() {
  return <LogScreen />;
}
