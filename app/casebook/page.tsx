import type { Metadata } from 'next';
import { CasebookScreen } from './casebook-screen';

export const metadata: Metadata = { title: 'Casebook' };

export default function CasebookPage() {
  return <CasebookScreen />;
}
