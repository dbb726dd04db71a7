/**
 * The museum: one realistic sample of every released version of every event type, read through the
 * real upcasts into today's schema. A sample, once released, never changes; `checksums.json` says so.
 * A new version of a type: add its sample and its line (SHA-256 of the file), leave the old ones.
 */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { EVENT_TYPES, eventTypeNamed } from '@footboard/shared/capabilities/registry';
import { upcast } from '@footboard/shared/kernel/event-type';

const MUSEUM = join(import.meta.dirname, '../museum');
const CHECKSUMS = 'checksums.json';
const samples = readdirSync(MUSEUM)
  .filter((file) => file !== CHECKSUMS)
  .toSorted();
const read = (file: string): string => readFileSync(join(MUSEUM, file), 'utf8');

const named = (file: string) => {
  const [, type, version] = /^([a-z-]+)\.v(\d+)\.json$/.exec(file) ?? [];
  return { type: type ?? `(${file})`, version: Number(version) };
};

describe('the museum of events', () => {
  it('EVENT-1 holds a sample of every version of every event type, and nothing else', () => {
    const released = [...EVENT_TYPES.values()].flatMap((type) =>
      Array.from({ length: type.version }, (_, n) => `${type.name}.v${n + 1}.json`),
    );
    expect(samples).toEqual(released.toSorted());
  });

  for (const file of samples) {
    it(`EVENT-2 ${file} reads as an event of today and says itself in words`, () => {
      const { type: name, version } = named(file);
      const type = eventTypeNamed(name);
      const payload = upcast(type, version, JSON.parse(read(file)));
      // Payloads are stored as their schema gave them, defaults filled in: parsing adds nothing.
      expect(type.schema.parse(payload)).toEqual(payload);
      const words = type.words(payload, {
        bed: (id) => `[${id}]`,
        staff: (id) => `[${id}]`,
        text: () => '[text]',
        time: (at) => `[${at}]`,
      });
      expect(words).toMatch(/^[A-Z[]/);
      expect(words).not.toMatch(/undefined|null|NaN|\[object/);
    });
  }

  it('EVENT-3 a released sample has not changed', () => {
    const found = Object.fromEntries(
      samples.map((file) => [file, createHash('sha256').update(read(file)).digest('hex')]),
    );
    expect(found).toEqual(JSON.parse(read(CHECKSUMS)));
  });
});
