import type { Metadata } from 'next';
import { ProveScreen } from './prove-screen';

export const metadata: Metadata = { title: 'Prove' };

export default function ProvePage() {
  return <ProveScreen />;
}
