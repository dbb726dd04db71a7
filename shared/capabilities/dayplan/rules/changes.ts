/**
 * What changed between two boards of one ward: the one known at the last huddle, and the one of now.
 * Pure. Bed by bed, whoever something happened to first; each change with its reasons.
 */
import type { EventId, StayId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Because } from '../../board/because.ts';
import type { BedView, BoardView, StayView } from '../../board/view.ts';
import { orderChanged } from '../../orders/events.ts';
import { changeKind, type ChangeKind } from '../values.ts';
import { helpChanges } from './help-changes.ts';

export interface Change {
  readonly kind: ChangeKind;
  /** The bed the person is in, or was in where they have left. */
  readonly bed: string;
  readonly label: string;
  readonly stay: StayId;
  readonly words: string;
  readonly because: Because[];
}
/** A fall and the like, recorded since: it may be answered by now and stand on no row any more. */
export interface Happened {
  readonly stay: StayId;
  readonly event: EventId;
  readonly at: EpochMs;
  readonly words: string;
}

interface Placed {
  readonly bed: BedView;
  readonly stay: StayView;
}
type Said = Omit<Change, 'bed' | 'label' | 'stay'>;

const ORDER = changeKind.options;
const plain = (code: string): string => code.replaceAll('-', ' ');
const NO_NAMES = { bed: String, staff: String, text: () => '', time: String };

export function changesBetween(
  before: BoardView,
  now: BoardView,
  happened: readonly Happened[],
  say: (at: EpochMs) => string,
): Change[] {
  const [was, is] = [placedOf(before), placedOf(now)];
  const stays = [...is.values(), ...[...was.values()].filter(({ stay }) => !is.has(stay.stay))];
  const byStay = stays.flatMap(({ bed, stay }) => {
    const old = was.get(stay.stay);
    const changes = [
      ...happened.filter((one) => one.stay === stay.stay).map((one) => happening(one, say)),
      ...(!old
        ? [arrival(stay, say)]
        : !is.has(stay.stay)
          ? [leaving()]
          : bothKnown(old, { bed, stay }, say)),
    ];
    if (changes.length === 0) return [];
    const ordered = changes.toSorted((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
    return [ordered.map((one): Change => ({ ...one, bed: bed.bed, label: bed.label, stay: stay.stay }))];
  });
  return byStay.toSorted((a, b) => ORDER.indexOf(a[0]!.kind) - ORDER.indexOf(b[0]!.kind)).flat();
}

const placedOf = (board: BoardView): Map<StayId, Placed> =>
  new Map(board.beds.flatMap((bed) => (bed.stay ? [[bed.stay.stay, { bed, stay: bed.stay }]] : [])));

const because = (kind: ChangeKind, facts: readonly EventId[], words: string): Because => ({
  rule: `changes/${kind}`,
  facts: [...facts],
  words,
});

function happening({ event, at, words }: Happened, say: (at: EpochMs) => string): Said {
  const said = `${words}, ${say(at)}`;
  return { kind: 'happened', words: said, because: [because('happened', [event], said)] };
}

function arrival({ began, trust, scope }: StayView, say: (at: EpochMs) => string): Said {
  const state =
    scope.kind === 'comfort'
      ? 'comfort plan'
      : scope.kind === 'clinicians-plan'
        ? "clinician's plan only"
        : trust.state === 'not-known'
          ? 'not checked here yet'
          : 'checked here';
  return { kind: 'arrived', words: `Arrived ${say(began)}: ${state}`, because: trust.because };
}

const leaving = (): Said => ({
  kind: 'left',
  words: 'Left the ward',
  because: [because('left', [], 'Was in a bed at the last huddle and is in none now')],
});

function bothKnown(was: Placed, is: Placed, say: (at: EpochMs) => string): Said[] {
  const moved: Said[] =
    was.bed.bed === is.bed.bed
      ? []
      : [
          {
            kind: 'moved',
            words: `Moved from ${was.bed.label}`,
            because: [because('moved', [], `Was in ${was.bed.label}, is in ${is.bed.label}`)],
          },
        ];
  return [
    ...moved,
    ...helpChanges(was.stay, is.stay),
    ...trustLost(was.stay, is.stay),
    ...holdChanges(was.stay, is.stay, say),
    ...orderChanges(was.stay, is.stay, say),
    ...tierChange(was.stay, is.stay),
  ];
}

const TRUST = ['current', 're-check', 'not-known'] as const;
function trustLost({ trust: was }: StayView, { trust: is }: StayView): Said[] {
  if (TRUST.indexOf(is.state) <= TRUST.indexOf(was.state)) return [];
  const why = is.because[0]?.words;
  const state = is.state === 're-check' ? 'Check again' : 'Not known any more';
  return [{ kind: 'trust-lost', words: why ? `${state}: ${why}` : state, because: is.because }];
}

type Hold = StayView['holds'][number];
type InForce = StayView['orders'][number];
const holdId = ({ hold }: Hold): string => hold;
/** Placed again or corrected to stop something else, it is the same hold and said anew. */
const holdSays = ({ hold, scope }: Hold): string => `${hold} ${scope}`;
const orderWords = ({ order }: InForce): string => orderChanged.words({ order }, NO_NAMES);
/** A correction keeps the entry and changes what is ordered. */
const orderSays = (one: InForce): string => `${one.event} ${orderWords(one)}`;
const onlyIn = <T>(all: readonly T[], others: readonly T[], id: (one: T) => string): T[] =>
  all.filter((one) => !others.some((other) => id(other) === id(one)));

function holdChanges(was: StayView, is: StayView, say: (at: EpochMs) => string): Said[] {
  return [
    ...onlyIn(is.holds, was.holds, holdSays).map(({ scope, reason, reviewAt, placedAt, event }): Said => ({
      kind: 'hold-placed',
      words: `Hold placed on ${plain(scope)} (${plain(reason)}), review ${say(reviewAt)}`,
      because: [because('hold-placed', [event], `Placed ${say(placedAt)}`)],
    })),
    ...onlyIn(was.holds, is.holds, holdId).map(({ scope, reason, placedAt, event }): Said => ({
      kind: 'hold-ended',
      words: `Hold ended on ${plain(scope)} (${plain(reason)})`,
      because: [because('hold-ended', [event], `Placed ${say(placedAt)}, in force no more`)],
    })),
  ];
}

function orderChanges(was: StayView, is: StayView, say: (at: EpochMs) => string): Said[] {
  const inForce = onlyIn(is.orders, was.orders, orderSays);
  return [
    ...inForce.map((one): Said => ({
      kind: 'order-changed',
      words: orderWords(one),
      because: [because('order-changed', [one.event], `In force since ${say(one.at)}`)],
    })),
    // What a newer order replaced is said by the newer one.
    ...onlyIn(was.orders, is.orders, orderSays)
      .filter(({ order }) => !inForce.some((one) => sameQuestion(one.order, order)))
      .map((one): Said => ({
        kind: 'order-changed',
        words: `In force no more: ${orderWords(one)}`,
        because: [because('order-changed', [one.event], 'Taken back, corrected or ended by a newer order')],
      })),
  ];
}
type Order = InForce['order'];
const sameQuestion = (a: Order, b: Order): boolean =>
  a.about === b.about &&
  !('limb' in a && 'limb' in b && a.limb !== b.limb) &&
  !('precaution' in a && 'precaution' in b && a.precaution !== b.precaution);

function tierChange({ tier: was }: StayView, { tier: is }: StayView): Said[] {
  if (is.notch === null || is.word === null) return [];
  // Under another protocol the notches cannot be compared.
  const sameProtocol = was.protocol?.id === is.protocol?.id && was.protocol?.version === is.protocol?.version;
  if (sameProtocol && is.notch === was.notch) return [];
  if (was.notch === null || !sameProtocol)
    return [{ kind: 'checked', words: `Checked: ${is.word}`, because: is.because }];
  const kind = is.notch > was.notch ? 'tier-up' : 'tier-down';
  const words = `${is.word} ${kind === 'tier-up' ? 'now cleared' : 'now'}, was ${was.word}`;
  return [{ kind, words, because: is.because }];
}
