/** Sentences that the rules and the events make, met by running them over random histories of a fixed seed. */
import * as fc from 'fast-check';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { valuesOf } from '@footboard/shared/capabilities/board/rules/any-history.testkit';
import { anyHistory } from '@footboard/shared/capabilities/board/rules/any-history.testkit';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import { hours, recordOf } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { asRecorded, histories } from '@footboard/shared/capabilities/board/rules/random-history.testkit';
import { anyWard } from '@footboard/shared/capabilities/board/rules/random-ward.testkit';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import { huddleOf } from '@footboard/shared/capabilities/dayplan/rules/huddle';
import { EVENT_TYPES, eventTypeNamed } from '@footboard/shared/capabilities/registry';
import { upcast } from '@footboard/shared/kernel/event-type';

/** What a view says in sentences, by the name of the field. */
const SENTENCES = new Set(['words', 'clears', 'cautions', 'with', 'notTaken', 'says', 'warnings']);

export function sentencesIn(value: unknown, field = '', found = new Set<string>()): Set<string> {
  if (typeof value === 'string') {
    if (SENTENCES.has(field) && value !== '') found.add(value);
  } else if (Array.isArray(value)) for (const one of value) sentencesIn(one, field, found);
  else if (value && typeof value === 'object')
    for (const [name, one] of Object.entries(value)) sentencesIn(one, name, found);
  return found;
}

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const told = fc.oneof(histories, histories.map(asRecorded), anyHistory);

const bedOf = (stay: StayView): BedView => ({
  bed: 'bed-1' as BedView['bed'],
  label: 'A1',
  bay: 'Bay 1',
  ceilingTrack: true,
  state: stay.away ? 'away' : 'occupied',
  carers: null,
  stay,
});

/** From the views of stays and from the huddle. */
export function fromHistories(howMany: number, seed: number): Set<string> {
  const found = new Set<string>();
  for (const [all, t, { ward, calendar }] of fc.sample(fc.tuple(told, at, anyWard), {
    numRuns: howMany,
    seed,
  })) {
    const { view } = evaluateStay(recordOf(all), ward, calendar, t);
    sentencesIn(view, '', found);
    const board = { beds: [bedOf(view)] } as unknown as Parameters<typeof huddleOf>[0];
    sentencesIn(huddleOf(board, t, calendar), '', found);
  }
  return found;
}

const NAMES = {
  bed: () => 'A1',
  staff: () => 'Ada Testperson',
  text: () => '(as written)',
  time: () => '24 Oct 18:00',
};

/** From every kind of event: random payloads of its schema, and the released samples. */
export function fromEvents(howMany: number, seed: number): Set<string> {
  const found = new Set<string>();
  for (const type of EVENT_TYPES.values()) {
    if (type.stream !== 'stay' || type.name === 'correction-made') continue;
    for (const payload of fc.sample(valuesOf(type.schema), { numRuns: howMany, seed }))
      found.add(type.words(type.schema.parse(payload), NAMES));
  }
  const museum = join(import.meta.dirname, '../../museum');
  for (const file of readdirSync(museum)) {
    const [, name, version] = /^([a-z-]+)\.v(\d+)\.json$/.exec(file) ?? [];
    if (!name) continue;
    const type = eventTypeNamed(name);
    found.add(
      type.words(upcast(type, Number(version), JSON.parse(readFileSync(join(museum, file), 'utf8'))), NAMES),
    );
  }
  return found;
}
