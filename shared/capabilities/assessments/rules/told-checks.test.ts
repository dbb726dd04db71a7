/** What one check says, told whole; under the default and a ward’s own protocol, and under other plans. */
import type { Role } from '../../../kernel/author.ts';
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { hours as later } from '../../board/rules/history.testkit.ts';
import type { Fact } from '../../corrections/facts.ts';
import { securedWith } from '../values.ts';
import { allMet, fact, notMet } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import { meaningsMet } from './meanings-met.ts';
import { checkUnder, LONG, SHORT } from './own-protocol.testkit.ts';
import { protocolLookup } from './protocol.ts';
import { seen, asked, STAGES, oneLeg, withPart, secured, fell } from './told-checks.testkit.ts';

/** One check alone. */
const alone = [
  asked('nothing', () => []),
  ...STAGES.flatMap((last) => [
    asked(`up to ${last}`, () => [seen(last, {}, { id: 'one' })]),
    asked(`up to ${last}, by an aide`, () => [seen(last, {}, { id: 'one', role: 'aide' })]),
    asked(`${last} not met`, () => [seen(last, { [last]: notMet() }, { id: 'one' })]),
    asked(`${last} not met, by an aide`, () => [
      seen(last, { [last]: notMet() }, { id: 'one', role: 'aide' }),
    ]),
    asked(`${last} not tested`, () => [
      seen(last, { [last]: { outcome: 'not-tested', reason: 'asleep', findings: [] } }, { id: 'one' }),
    ]),
    asked(`a symptom at ${last}`, () => [seen(last, { [last]: { symptom: true } }, { id: 'one' })]),
    asked(`${last} not met, gone on`, () => [seen('walk', { [last]: notMet() }, { id: 'one' })]),
    ...securedWith.options.map((by) =>
      asked(`${last} held by ${by}`, () => [seen(last, secured(last, by), { id: 'one' })]),
    ),
    ...DEFAULT_PROTOCOL.stages
      .find((s) => s.id === last)!
      .parts.flatMap((part) =>
        (part.sided ? (['left', undefined] as const) : ([undefined] as const)).flatMap((side) =>
          (['not-met', 'not-tested', 'not-applicable'] as const).map((result) =>
            asked(`${last}: ${part.id}${side ? ` ${side}` : ''} ${result}`, () => [
              seen('walk', withPart(last, part.id, result, side), { id: 'one' }),
            ]),
          ),
        ),
      ),
  ]),
  ...(['left', 'right'] as const).flatMap((leg) =>
    (['nurse', 'therapist', 'aide'] as const).flatMap((role) => [
      asked(`on the ${leg} leg, by ${role}`, () => [seen('walk', oneLeg(leg), { id: 'one', role })]),
      asked(`on the ${leg} leg, no arm tested, by ${role}`, () => [
        seen(
          'stand',
          { ...oneLeg(leg), upright: { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') } },
          { id: 'one', role },
        ),
      ]),
      asked(`on the ${leg} leg, an arm does not push, by ${role}`, () => [
        seen(
          'stand',
          { ...oneLeg(leg), ...withPart('upright', 'arm-pushes', 'not-met', 'right') },
          { id: 'one', role },
        ),
      ]),
      asked(`on the ${leg} leg, which may bear nothing, by ${role}`, () => [
        order('none', `${leg}-leg`),
        seen('stand', oneLeg(leg), { id: 'one', role, at: 1 }),
      ]),
      asked(`on the ${leg} leg, an arm may not push, by ${role}`, () => [
        order('limited', 'left-arm'),
        seen('stand', oneLeg(leg), { id: 'one', role, at: 1 }),
      ]),
    ]),
  ),
  asked('no leg to stand on', () => [
    seen('stand', withPart('stand', 'leg-bears', 'not-applicable'), { id: 'one' }),
  ]),
  ...(['walk', 'chair'] as const).flatMap((activity) =>
    (['nurse', 'aide'] as const).flatMap((role) =>
      (['done', 'not-done', 'part'] as const).map((outcome) =>
        asked(`got up to ${activity} (${outcome}) with ${role}, never checked`, () => [
          session(activity, outcome, role),
        ]),
      ),
    ),
  ),
  ...(['met', 'not-met'] as const).flatMap((outcome) => [
    asked(`under a protocol nobody has, ${outcome}`, () => [
      seen('walk', {}, { id: 'one' }),
      seen(
        'clear',
        { clear: { outcome, findings: [] } },
        { id: 'two', at: 2 },
        { protocol: { id: 'gone', version: 2 } },
      ),
    ]),
    asked(`under a protocol nobody has, ${outcome}, and a fall in pressure`, () => [
      seen('walk', {}, { id: 'one' }),
      seen(
        'clear',
        { clear: { outcome, findings: [] } },
        { id: 'two', at: 2 },
        { protocol: { id: 'gone', version: 2 }, ...fell(2) },
      ),
    ]),
  ]),
];
function order(bears: string, limb: string, at = 0, role: Role = 'nurse'): Fact {
  return fact(
    'order-changed',
    { order: { about: 'weight-bearing', limb, bears } },
    { id: `order-${limb}-${at}`, at, role },
  );
}
function session(activity: string, outcome: string, role: Role): Fact {
  return fact(
    'session-recorded',
    {
      session: {
        outcome,
        occasion: 'planned',
        activities: outcome === 'not-done' ? [] : [activity],
        startedAt: toIso(later(0)),
        events: [],
        firstTimeUp: false,
        ...(outcome === 'not-done' ? { notDone: { group: 'said-no' } } : {}),
      },
    },
    { id: 'session', role },
  );
}
const scopes = (['clinicians-plan', 'comfort', 'staged'] as const).flatMap((scope) =>
  (['nurse', 'aide', 'therapist'] as const).flatMap((role) => [
    asked(`${scope} by ${role}`, () => [seen('walk', {}, { id: 'one' }), scopeFact(scope, role, 1)]),
    asked(`clinician’s plan, then ${scope} by ${role}`, () => [
      seen('walk', {}, { id: 'one' }),
      scopeFact('clinicians-plan', 'nurse', 1),
      scopeFact(scope, role, 2),
    ]),
  ]),
);
function scopeFact(scope: string, role: Role, at: number): Fact {
  return fact(
    'scope-set',
    { scope, ...(scope === 'clinicians-plan' ? { fence: 'traction', plan: { ref: 'text-1' } } : {}) },
    { id: `scope-${at}`, role, at },
  );
}
const own = [SHORT, LONG].flatMap((protocol) =>
  protocol.stages.flatMap((stage) => {
    const of = (says: object, at: number, id: string) =>
      fact('assessment-recorded', checkUnder(protocol, stage.id, later(at), { [stage.id]: says }), {
        id,
        at,
      });
    return [
      asked(`${protocol.id}: up to ${stage.id}`, () => [of({}, 0, 'one')], [protocol]),
      asked(
        `${protocol.id}: ${stage.id} not met`,
        () => [of({ outcome: 'not-met', findings: [] }, 0, 'one')],
        [protocol],
      ),
      asked(
        `${protocol.id}: up to ${stage.id} after a walk by the default`,
        () => [seen('walk', {}, { id: 'zero', at: -2 }), of({}, 0, 'one')],
        [protocol],
      ),
      asked(
        `${protocol.id}: ${stage.id} not met after a walk by the default`,
        () => [seen('walk', {}, { id: 'zero', at: -2 }), of({ outcome: 'not-met', findings: [] }, 0, 'one')],
        [protocol],
      ),
      [
        `${protocol.id}: what is met up to ${stage.id}`,
        () => ({
          met: [...meaningsMet(of({}, 0, 'one').data as never, protocolLookup([protocol] as never))].join(
            '; ',
          ),
        }),
      ] as const,
    ];
  }),
);

heldAgainst(new URL('told-checks.txt', import.meta.url), [...alone, ...scopes, ...own]);
