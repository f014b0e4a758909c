import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readContent } from '@/content/read-content';
import { MeasureScreen } from '../../_measure/measure-screen';
import { NeededFlow } from '../needed-flow';

export const dynamicParams = false;

export function generateStaticParams(): { method: string }[] {
  return Object.keys(readContent().value?.knowledge.methods ?? {}).map((method) => ({ method }));
}

export async function generateMetadata({ params }: PageProps<'/bench/[method]'>): Promise<Metadata> {
  const { method } = await params;
  return { title: readContent().value?.knowledge.methods[method]?.short ?? 'Bench' };
}

/** One way of measuring, step by step. */
export default async function MethodPage({ params }: PageProps<'/bench/[method]'>) {
  const { method: id } = await params;
  const knowledge = readContent().value?.knowledge;
  const method = knowledge?.methods[id];
  const check = knowledge?.checks[method?.takes ?? ''];
  if (!knowledge || !method || !check) notFound();
  return (
    <>
      <MeasureScreen
        method={method}
        check={{ id: check.id, asks: check.asks, answer: check.answer, drawing: check.drawing }}
        needs={method.needs.map((tool) => knowledge.tools[tool]?.title ?? tool)}
        hazards={method.hazards.map((hazard) => knowledge.hazards[hazard]?.title ?? hazard)}
        others={check.methods.flatMap((other) => knowledge.methods[other] ?? []).filter((other) => other.id !== id).map(({ id: other, title, minutes, waitMinutes }) => ({ id: other, title, minutes, waitMinutes }))}
      />
      <NeededFlow answer={check.answer} />
    </>
  );
}
