/** A correction's replacement: of the same kind, about the same thing, and no wider than a new entry could be. */
import type { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import type {
  assessmentRecorded,
  earlyWarningRecorded,
} from '@footboard/shared/capabilities/assessments/events';
import type { visitTaken } from '@footboard/shared/capabilities/dayplan/events';
import type { Fact } from '@footboard/shared/capabilities/corrections/facts';
import type { OnOwn } from '@footboard/shared/capabilities/handling/values';
import type { orderChanged } from '@footboard/shared/capabilities/orders/events';
import { eventTypeNamed } from '@footboard/shared/capabilities/registry';
import type { goalSet, sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { DataOf, Refusal } from '@footboard/shared/kernel/command-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import { textRef } from '@footboard/shared/kernel/ids';
import { toEpoch } from '@footboard/shared/kernel/times';
import { refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { scoreFaults } from '../assessments/decide-signs.ts';
import { checkFaults } from '../assessments/decide.ts';
import { visitTimes } from '../dayplan/visits.ts';
import { contradicts } from '../orders/decide.ts';
import { goalWithinCleared, sessionTimes } from '../sessions/decide.ts';
import type { Standing } from '../stays/standing.ts';

type Payload = Readonly<Record<string, unknown>>;
export type Json = PayloadOf<
  typeof import('@footboard/shared/capabilities/corrections/events').correctionMade
>['replacement'];

const isPayload = (value: unknown): value is Payload =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isRef = (value: unknown): boolean => textRef.safeParse(value).success;

/** Fields that say what an entry is about. Speaking of something else is another entry, not a correction. */
const IDENTITY = ['hold', 'placedBy', 'attachment', 'assessment', 'visit'] as const;

/**
 * @param now the entry as it counts now
 * @returns the payload to store, in the current version of its type
 */
export function fitReplacement(
  context: DecideContext,
  standing: Standing,
  now: Fact,
  given: unknown,
): { readonly payload: Json } | Refusal {
  const before = now.data as Payload;
  const type = eventTypeNamed(now.type);
  const faulty = (detail: string, path: readonly PropertyKey[] = []): Refusal =>
    refuse(
      'replacement-faulty',
      detail,
      `Give the whole entry as it should read, in the form of a "${now.type.replaceAll('-', ' ')}".`,
      ['/replacement', ...path.map(String)].join('/'),
    );
  if (!isPayload(given)) return faulty('the replacement is not an entry');

  const refs = Object.entries(before).filter(([, value]) => isRef(value));
  for (const [key, value] of Object.entries(given)) {
    if (isRef(value) && !refs.some(([k, v]) => k === key && same(v, value))) {
      return refuse(
        'text-in-replacement',
        `"${key}" points at a text that is not this entry's`,
        'Leave it out: the text stays as it was. Say more in "text", or in an amendment.',
        `/replacement/${key}`,
      );
    }
  }
  // Texts stay with the entry; where its new form has no place for one, the original keeps it readable.
  const withTexts = type.schema.safeParse({ ...given, ...Object.fromEntries(refs) });
  const parsed = withTexts.success ? withTexts : type.schema.safeParse(given);
  if (!parsed.success) {
    const { issues } = refs.length > 0 ? withTexts.error! : parsed.error;
    return faulty(
      issues.map((i) => `${i.path.join('.') || 'entry'}: ${i.message}`).join('; '),
      issues[0]?.path,
    );
  }
  const payload = parsed.data as Payload;
  for (const key of IDENTITY) {
    if (key in before && !same(before[key], payload[key])) {
      return refuse(
        'replacement-names-another',
        `the entry is about another ${key === 'placedBy' ? 'hold' : key}`,
        'Withdraw the entry and enter the right one.',
        `/replacement/${key}`,
      );
    }
  }
  return roomRules(context, standing, now, payload) ?? { payload: payload as Json };
}

/** The rules that a new entry of this kind would meet. */
function roomRules(context: DecideContext, standing: Standing, now: Fact, payload: Payload): Refusal | null {
  switch (now.type) {
    case 'assessment-recorded': {
      const { note: _note, ...check } = payload as PayloadOf<typeof assessmentRecorded>;
      const data = { ...check, stay: standing.record.stay } as DataOf<typeof recordAssessment>;
      return checkFaults(context, standing, data, '/replacement');
    }
    case 'session-recorded':
      return sessionTimes(
        context,
        standing,
        (payload as PayloadOf<typeof sessionRecorded>).session,
        '/replacement/session',
      );
    case 'visit-taken': {
      const { from, until } = payload as PayloadOf<typeof visitTaken>;
      return visitTimes(context, { from: toEpoch(from), until: toEpoch(until) }, '/replacement');
    }
    case 'early-warning-recorded':
      return scoreFaults(payload as PayloadOf<typeof earlyWarningRecorded>, '/replacement');
    case 'goal-set':
      return goalWithinCleared(
        context,
        standing,
        (payload as PayloadOf<typeof goalSet>).goal,
        '/replacement/goal',
      );
    case 'order-changed':
      return contradicts((payload as PayloadOf<typeof orderChanged>).order, '/replacement/order');
    case 'on-own-set': {
      const before = now.data as OnOwn;
      const after = payload as OnOwn;
      const within =
        after.where.every((w) => before.where.includes(w)) &&
        after.when.every((w) => before.when.includes(w));
      return within
        ? null
        : refuse(
            'widening-is-new',
            'the correction lets the person go alone in more places or at more times',
            'Set "on own" again: that asks the questions it needs.',
            '/replacement',
          );
    }
    default:
      return null;
  }
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
