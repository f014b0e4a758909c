import { expect, test } from 'vitest';
import { noteWords } from '../../../app/_parts/offline-note';

test('promises that it works offline only when the copy is whole', () => {
  expect((['none', 'coming', 'kept', 'newer'] as const).map((copy) => noteWords({ copy, isOnline: true }).startsWith('Works offline'))).toEqual([false, false, true, true]);
});

test('says that everything works without a network only when the copy is whole', () => {
  expect((['none', 'coming', 'kept', 'newer'] as const).map((copy) => noteWords({ copy, isOnline: false }).endsWith('Everything works.'))).toEqual([false, false, true, true]);
});
