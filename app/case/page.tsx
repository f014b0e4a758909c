import type { Metadata } from 'next';
import { CaseScreen } from './case-screen';

export const metadata: Metadata = { title: 'Case' };

export default function CasePage() {
  return <CaseScreen />;
}
