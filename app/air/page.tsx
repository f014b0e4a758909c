import type { Metadata } from 'next';
import { AirScreen } from './air-screen';

export const metadata: Metadata = { title: 'Air path' };

export default function AirPage() {
  return <AirScreen />;
}
