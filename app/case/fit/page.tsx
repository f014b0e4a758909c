import type { Metadata } from 'next';
import { FitScreen } from './fit-screen';

export const metadata: Metadata = { title: 'Fit' };

export default function FitPage() {
  return <FitScreen />;
}
