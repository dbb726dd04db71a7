/** Invented answers for the parts of the round, of who was got up and of a check that is not sent yet. */
import type { z } from 'zod';
import type { EventId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { itemDescription } from '@footboard/shared/capabilities/aids/values';
import type { VisitView } from '@footboard/shared/capabilities/board/activity-view';
import type { FairnessLine } from '@footboard/shared/wire/fairness';
import { itemLine, type ItemLine } from '@footboard/shared/wire/items';
import type { PlanPreview } from '@footboard/shared/wire/preview';
import type { Kit } from '../../capabilities/round/use-kit.ts';
import { NOW, plan, stay, tierAt, why } from './rows.ts';

const MINUTE = 60_000;
type Side = PlanPreview['now'];
const side = (over: Partial<Side>): Side => {
  const { tier, trust, plan: now, checkBeforeMoving, cautions, walkingSupport, scope, due } = stay();
  return { tier, trust, plan: now, checkBeforeMoving, cautions, walkingSupport, scope, due, ...over };
};
const caution = (words: string) => ({ words, because: why(words) });

/** A stage more, and with it less help for the chair; the toilet at night stays as it is. */
export const PREVIEW: PlanPreview = {
  ward: 'invented' as WardId,
  stay: 's1' as StayId,
  version: 4,
  at: NOW,
  now: side({
    cautions: [caution('Chair behind, shoes on, bed low, brakes on')],
    plan: plan({ people: 'two' }),
  }),
  would: side({ tier: tierAt(0.8, 'Turn'), cautions: [caution('Weight unknown: weigh or estimate')] }),
  moves: [
    { task: 'bed-chair', by: 'day', change: 'less-help' },
    { task: 'toilet', by: 'day', change: 'less-help' },
    { task: 'bed-chair', by: 'night', change: 'less-help' },
    { task: 'toilet', by: 'night', change: 'same' },
  ],
  unconfirmed: false,
};

const visit = (over: Partial<VisitView>): VisitView => ({
  visit: 'v1',
  by: 'a1' as StaffId,
  second: null,
  from: NOW,
  until: NOW + 30 * MINUTE,
  event: 'e1' as EventId,
  ...over,
});
/** What one tap does about a visit, by the key of its caption. */
export const ACTS = [
  ['visit-free', null, false],
  ['visit-yours', visit({}), true],
  ['visit-theirs', visit({ by: 'a2' as StaffId }), false],
] as const;

const piece = (label: string, kind: 'floor-lift' | 'sling', usable: ItemLine['usable']): ItemLine =>
  itemLine.parse({
    item: label.toLowerCase().replace(' ', '-'),
    is: itemDescription.parse({ label, kind, model: 'A', home: 'store', attachment: 'loops' }),
    place: { at: NOW - 20 * MINUTE, by: 'a1', words: 'Bay A' },
    missing: null,
    inUse: null,
    clean: null,
    battery: null,
    outOfService: null,
    keptFor: null,
    borrowed: null,
    examination: { due: null, everyMonths: null },
    usable,
  } satisfies z.input<typeof itemLine>);
const now: ItemLine['usable'] = { word: 'usable', against: [] };
const not: ItemLine['usable'] = { word: 'not-usable', against: ['battery flat'] };
/** What goes along, by the key of its caption. */
export const KITS: readonly (readonly ['kit-fits' | 'kit-none' | 'kit-old', Kit])[] = [
  [
    'kit-fits',
    {
      is: 'set',
      main: { line: piece('Lift 1', 'floor-lift', not), usableNow: false },
      sling: { line: piece('Sling 4', 'sling', now), usableNow: true },
      warnings: ['Weight estimated: counted as 84 kg'],
    },
  ],
  [
    'kit-none',
    { is: 'none-fits', warnings: ['Weight not known: weigh or estimate before a lift is chosen'] },
  ],
  ['kit-old', { is: 'not-read' }],
];

const line = (key: string, visited: number, notDone: number, notRecorded: number): FairnessLine => {
  const days = visited + notDone + notRecorded;
  return {
    key,
    days,
    visited,
    notDone,
    notRecorded,
    visits: visited * 2,
    share: days < 7 ? null : visited / days,
  };
};
export const FAIR: readonly FairnessLine[] = [line('A', 21, 5, 2), line('B', 12, 6, 10), line('C', 2, 1, 0)];
