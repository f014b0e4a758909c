'use client';
import { useRouter } from 'next/navigation';
import { useId, useState } from 'react';
import type { Problem } from '@/lib/problems';
import { openCase } from '../_case/current-case';
import { ProblemList } from '../_parts/problem-list';

/** Larger files are not even read: a case is a few kilobytes. */
const LARGEST_BYTES = 20_000_000;

/** Opens a case that was exported as a file. A file that is none gets its reason; the case on the table stays. */
export function OpenSavedCase() {
  const id = useId();
  const router = useRouter();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > LARGEST_BYTES) {
      setProblems([{ code: 'too-large', level: 'stop', where: file.name, what: `The file has ${Math.round(file.size / 1e6)} MB; a case has a few kilobytes.`, allowed: `up to ${LARGEST_BYTES / 1e6} MB`, next: 'Choose the file that was exported as a case.' }]);
      return;
    }
    const { readCase } = await import('@/lib/cases');
    const reading = readCase(await file.text(), file.name);
    setProblems(reading.problems);
    if (!reading.value) return;
    await openCase(reading.value);
    router.push('/case');
  };
  return (
    <div className="open-saved">
      <label className="link" htmlFor={id}>Open a saved case</label>
      <input id={id} className="for-readers-only" type="file" accept=".json,application/json" onChange={(event) => { void open(event.target.files?.[0]); event.target.value = ''; }} />
      <ProblemList problems={problems} title="This file was not opened. Nothing was changed." />
    </div>
  );
}
