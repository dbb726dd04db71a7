/**
 * Streams of any events that the schemas admit, drawn from the schemas themselves: every type a stay's
 * stream may hold, every field, every value within its bounds. What an event says of another (a
 * target, the entry a check answers) is drawn from the ids of the same stream, now and then a stranger's.
 */
import * as fc from 'fast-check';
import type { z } from 'zod';
import { role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { EVENT_TYPES } from '../../registry.ts';
import { begun, hours, unconfirmed, type Told } from './history.testkit.ts';
import { OWN_PROTOCOL } from './random-ward.testkit.ts';

const HASH = 'a0'.repeat(32);

/** Types of a stay's stream, by name. */
export const STAY_EVENTS = [...EVENT_TYPES.values()].filter((t) => t.stream === 'stay');

const LONGEST = 30;
/** Quarters of an hour over three days and more, so that instants often coincide. */
const when = fc.integer({ min: 0, max: 4 * 80 }).map((q) => q / 4);
const instant = fc.integer({ min: -8, max: 4 * 90 }).map((q) => toIso(hours(q / 4)));
const eventIds = fc.integer({ min: 0, max: LONGEST }).map((n) => (n === LONGEST ? 'stranger' : idOf(n)));
const idOf = (n: number): string => `e${String(n).padStart(5, '0')}`;

const parts = DEFAULT_PROTOCOL.stages.flatMap((s) => s.parts.map((p) => p.id));
const protocol = fc.constantFrom(
  ...[DEFAULT_PROTOCOL, DEFAULT_PROTOCOL, OWN_PROTOCOL].map(({ id, version }) => ({ id, version })),
  { id: 'nobodys', version: 3 },
);

/** Fields whose schema says only "a text": what they may hold is said elsewhere. */
const BY_NAME: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  protocol,
  stage: fc.constantFrom(...DEFAULT_PROTOCOL.stages.map((s) => s.id), 'no-such-stage'),
  part: fc.constantFrom(...parts, 'no-such-part'),
  target: eventIds,
  placedBy: eventIds,
  assessment: eventIds,
  example: fc.constantFrom('pain', 'order', 'test', 'meal', 'called-away', 'lift', 'gown', 'comfort'),
  occurred: instant,
};

interface Def {
  readonly type: string;
  readonly shape?: Record<string, z.ZodType>;
  readonly entries?: Record<string, string>;
  readonly values?: readonly unknown[];
  readonly options?: readonly z.ZodType[];
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly checks?: readonly unknown[];
}
interface Check {
  readonly check: string;
  readonly value?: number;
  readonly minimum?: number;
  readonly maximum?: number;
}
const defOf = (schema: z.ZodType): Def => (schema as unknown as { def: Def }).def;
// The library names what it lets others look into with an underscore.
/* oxlint-disable no-underscore-dangle */
const checksOf = (schema: z.ZodType): readonly Check[] =>
  (defOf(schema).checks ?? []).map((c) => (c as { _zod: { def: Check } })._zod.def);
/* oxlint-enable no-underscore-dangle */
/** The bounds that a schema's checks set, for numbers or for lengths. */
function boundsOf(schema: z.ZodType, min: number, max: number): { min: number; max: number } {
  const all = checksOf(schema);
  const bound = (check: string) => all.find((c) => c.check === check);
  return {
    min: bound('greater_than')?.value ?? bound('min_length')?.minimum ?? min,
    max: bound('less_than')?.value ?? bound('max_length')?.maximum ?? max,
  };
}

/** Values that a schema admits. A refinement that spans fields is met by drawing again. */
export function valuesOf(schema: z.ZodType, name = ''): fc.Arbitrary<unknown> {
  const named = BY_NAME[name];
  if (named) return defOf(schema).type === 'optional' ? fc.option(named, { nil: undefined }) : named;
  const values = plainly(schema, name);
  return checksOf(schema).some((c) => c.check === 'custom')
    ? values.filter((value) => schema.safeParse(value).success)
    : values;
}

function plainly(schema: z.ZodType, name: string): fc.Arbitrary<unknown> {
  const def = defOf(schema);
  switch (def.type) {
    case 'object':
      return fc
        .record(Object.fromEntries(Object.entries(def.shape!).map(([k, s]) => [k, valuesOf(s, k)])))
        .map(said);
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries!));
    case 'literal':
      return fc.constantFrom(...def.values!);
    case 'boolean':
      return fc.boolean();
    case 'union':
      return fc.oneof(...def.options!.map((one) => valuesOf(one, '')));
    case 'optional':
    case 'default':
      return fc.option(valuesOf(def.innerType!, name), { nil: undefined });
    case 'nullable':
      return fc.option(valuesOf(def.innerType!, name), { nil: null });
    case 'array': {
      const { min, max } = boundsOf(schema, 0, 6);
      const one = name === 'answers' || name === 'accepts' ? eventIds : valuesOf(def.element!, '');
      return fc.array(one, { minLength: min, maxLength: Math.min(max, 6) });
    }
    case 'number':
      return numbers(schema);
    case 'string':
      return texts(schema, name);
    default:
      throw new Error(`no values are drawn for a schema of type ${def.type} (${name})`);
  }
}

/** Whole numbers and the bounds themselves often: that is where a limit is met or missed. */
function numbers(schema: z.ZodType): fc.Arbitrary<number> {
  const { min, max } = boundsOf(schema, 0, 1_000);
  const whole = fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
  if (checksOf(schema).some((c) => c.check === 'number_format')) return whole;
  return fc.oneof(
    { weight: 4, arbitrary: whole },
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );
}

/** An instant where the schema takes one, else one of few ids: a hold is ended, an attachment removed again. */
function texts(schema: z.ZodType, name: string): fc.Arbitrary<string> {
  const takes = (text: string): boolean => schema.safeParse(text).success;
  if (takes(toIso(hours(0))) && !takes('one')) return instant;
  // A hash: which one says nothing to the rules.
  if (!takes('one') && takes(HASH)) return fc.constant(HASH);
  if (!takes('one')) throw new Error(`no text is known that ${name} takes`);
  return fc.constantFrom('one', 'two', ...(name === 'hold' || name === 'attachment' ? [] : ['three']));
}

const said = (value: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined));

const payloads = new Map(
  STAY_EVENTS.filter((t) => t.name !== 'correction-made').map((t) => [t.name, valuesOf(t.schema)]),
);
/** A payload as the log holds it: read by its schema, so that what has a default is there. */
const asStored = (type: string, payload: unknown): unknown => EVENT_TYPES.get(type)!.schema.parse(payload);

const CHANGED_OFTEN = ['assessment-recorded', 'session-recorded', 'hold-placed', 'order-changed'];
const OFTEN = new Set([...CHANGED_OFTEN, 'entry-confirmed']);
const correction = fc
  .tuple(
    fc.constantFrom(...payloads.keys(), ...CHANGED_OFTEN, ...CHANGED_OFTEN, ...CHANGED_OFTEN),
    eventIds,
    fc.option(instant, { nil: undefined }),
    fc.constantFrom('wrong-person', 'wrong-value', 'wrong-time'),
  )
  .chain(([type, target, occurred, reason]) =>
    fc
      .oneof(
        { weight: 5, arbitrary: payloads.get(type)!.map((p) => asStored(type, p)) },
        { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 1 }) },
      )
      .map((replacement) => said({ target, type, schemaVersion: 1, replacement, occurred, reason })),
  );

/** One event of a stay's stream, by anyone. Checks and corrections more often: they do the most. */
export const anyEvent: fc.Arbitrary<Told> = fc
  .tuple(
    fc.oneof(
      ...[...payloads].map(([type, payload]) => ({
        weight: type === 'assessment-recorded' ? 8 : OFTEN.has(type) ? 4 : 2,
        arbitrary: payload.map((p) => ({ type, payload: asStored(type, p) })),
      })),
      { weight: 12, arbitrary: correction.map((payload) => ({ type: 'correction-made', payload })) },
    ),
    when,
    fc.constantFrom(...role.options, 'nurse', 'nurse', 'therapist'),
    fc.constantFrom('person', 'device', 'import', 'paper', 'demo'),
    // A name nobody had checked: as the server records it, and as only a forged log would have it.
    fc.constantFrom('checked', 'checked', 'checked', 'claimed', 'forged', 'agency', 'student'),
  )
  .map(([event, at, who, kind, mark]): Told => {
    const source = { kind } as NonNullable<Told['source']>;
    const one: Told = { ...event, at, role: who as Told['role'] & string, source };
    if (mark === 'claimed') return unconfirmed(one);
    if (mark === 'forged') return { ...one, source: { ...source, unconfirmed: true } };
    return mark === 'checked' ? one : { ...one, source: { ...source, cosign: mark as 'agency' | 'student' } };
  });

/** What an event speaks of, by type: most of them speak of one that is there. */
const SPEAKS_OF: Readonly<Record<string, { field: string; type: (payload: { type?: string }) => string }>> = {
  'correction-made': { field: 'target', type: (p) => p.type! },
  'hold-ended': { field: 'placedBy', type: () => 'hold-placed' },
  'plan-confirmed': { field: 'assessment', type: () => 'assessment-recorded' },
};

/** The same event, speaking of one of the stream where there is one of the type it speaks of. */
function linked(one: Told, n: number, all: readonly Told[]): Told {
  if (one.type === 'entry-confirmed') return standsBy(one, n, all);
  const speaks = SPEAKS_OF[one.type];
  if (!speaks || n % 8 === 0) return one;
  const payload = one.payload as Record<string, unknown>;
  const there = all.filter((x) => x.type === speaks.type(payload));
  if (there.length === 0) return one;
  return { ...one, payload: { ...payload, [speaks.field]: there[n % there.length]!.id } };
}

/** A confirmation of an entry that waits for one, by the person it names; now and then of anything, by anyone. */
function standsBy(one: Told, n: number, all: readonly Told[]): Told {
  const waiting = all.filter((x) => x.source?.unconfirmed);
  const target = waiting[n % Math.max(1, waiting.length)];
  if (!target || n % 4 === 0) return one;
  return {
    ...one,
    payload: { target: target.id! },
    staff: target.staff ?? `staff-${target.role}`,
    source: { kind: 'person' },
  };
}

/** Any stream that the schemas admit, most often begun by an arrival. */
export const anyHistory: fc.Arbitrary<readonly Told[]> = fc
  .tuple(
    fc.boolean(),
    fc.boolean(),
    fc.array(anyEvent, { minLength: 1, maxLength: LONGEST - 1, size: 'max' }),
  )
  .map(([arrived, again, events]) =>
    (arrived || again ? [begun(), ...events] : events)
      .map((e, n): Told => ({ ...e, id: idOf(n) }))
      .map(linked),
  );
