import { describe, expect, it } from 'vitest';
import { handbookFinder, understander } from '@/app/_search/understand';
import { readContent } from '@/content/read-content';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('no content');
const understand = understander(knowledge);
const look = handbookFinder(knowledge);
const first = (text: string, count = 5): string[] => understand(text).slice(0, count).map((found) => found.id);

describe('understanding what people type', () => {
  it.each([
    ['edges lift up on the left and then everything moved over', ['curled-edges', 'displaced-layers']],
    ['strings between towers', ['strings']],
    ['corners came off the bed', ['lifted-corners']],
    ['uhm so I have been printing for weeks and it was fine but since yesterday the corners kind of lift of the plate while the rest is ok', ['lifted-corners']],
    ['stringg everywere', ['strings']],
  ])('finds in “%s” what was meant among the first five', (text, meant) => {
    expect(first(text)).toEqual(expect.arrayContaining(meant));
  });

  it('leads from a suspected cause to a symptom that it would show', () => {
    const shown = Object.values(knowledge.symptoms).filter((symptom) => (symptom.links['slack-belt']?.chance ?? 0) > 0).map((symptom) => symptom.id);
    expect(first('is my belt loose?').some((id) => shown.includes(id))).toBe(true);
  });

  // The words of these causes were written with such questions in sight: a tripwire.
  it.each([
    ['do I need to dry my filament', 'damp-filament'],
    ['is my heater dead', 'heater-weak'],
    ['wrong e steps', 'feeder-calibration-wrong'],
    ['bad bearings', 'dry-bearings'],
    ['psu too weak', 'supply-sags'],
    ['thermistor broken?', 'sensor-wire-broken'],
    ['is the probe faulty', 'noise-on-probe'],
    ['draught from the window', 'draught'],
    ['z offset', 'nozzle-starts-high'],
    ['motor driver overheats', 'driver-overheating'],
    ['bad sd card', 'stream-stalls'],
    ['power went out', 'power-cut'],
    ['loose grub screw on the pulley', 'slipping-pulley-screw'],
  ])('leads from the suspicion “%s” to a symptom of %s', (text, cause) => {
    expect(first(text).filter((id) => (knowledge.symptoms[id]?.links[cause]?.chance ?? 0) >= 0.25)).not.toEqual([]);
  });

  it('leads from a detail to what it is a detail of', () => {
    const found = first('it keeps slipping', 8);
    expect(found).toContain('shift-repeats');
    expect(found).toContain(knowledge.symptoms['shift-repeats']?.detailOf);
  });

  it('finds every symptom by its own title among the first three', () => {
    const lost = Object.values(knowledge.symptoms).filter((symptom) => !first(symptom.title, 3).includes(symptom.id)).map((symptom) => `${symptom.id}: ${symptom.title}`);
    expect(lost).toEqual([]);
  });

  it('gives nothing for nothing, and never throws on odd text', () => {
    expect(understand('')).toEqual([]);
    expect(understand('   ')).toEqual([]);
    for (const text of ['<script>alert(1)</script>', '😀😀', '0'.repeat(5000), '\u0000', '(((((', 'ß'.repeat(300)]) expect(Array.isArray(understand(text))).toBe(true);
  });

  it('says which of the typed words led there', () => {
    const found = understand('the corners lift off the plate').find((row) => row.id === 'lifted-corners');
    expect(found?.youWrote).toEqual(expect.arrayContaining(['corners', 'lift']));
  });

  it('finds a way of measuring first for somebody who asks how to measure', () => {
    const first = (words: string): string => look(words)[0]?.id ?? '';
    for (const words of ['how do I measure air speed', 'test the fan', 'check belt tension']) expect(first(words) in knowledge.checks || first(words) in knowledge.methods, words).toBe(true);
    expect(['speed-at-weakest-outlet', 'outlet-speed-weakest']).toContain(first('how do I measure air speed'));
  });

  it('finds a page of every kind in the handbook by its own title', () => {
    for (const [id, title] of [['slack-belt', knowledge.causes['slack-belt']?.title], ['bag-fill', knowledge.methods['bag-fill']?.title], ['layer-time', knowledge.checks['layer-time']?.asks], ['fan-or-duct', knowledge.topics['fan-or-duct']?.title]] as const) {
      expect(look(title ?? '').slice(0, 3).map((row) => row.id)).toContain(id);
    }
  });
});
