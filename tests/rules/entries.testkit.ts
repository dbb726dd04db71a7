/** Random entries about one person, by whoever may enter anything at the bedside, signed in or not. */
import * as fc from 'fast-check';
import type { Role } from '@footboard/shared/kernel/author';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import { MINUTE, toIso } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import type { StageRecord } from '@footboard/shared/capabilities/assessments/values';
import { holdScope, recordedTriggerKind } from '@footboard/shared/capabilities/orders/values';
import { check, LARCH } from '@footboard/server/capabilities/given.testkit';
import type { World } from '@footboard/server/capabilities/world.testkit';

export const command = (name: string): CommandType => COMMAND_TYPES.get(name)!;

const STAGES = DEFAULT_PROTOCOL.stages.map((s) => s.id);
/** Anybody's next entry about one person, drawn. */
export const act = fc.record({
  does: fc.constantFrom(
    'check',
    'check',
    'confirm',
    'seen',
    'trigger',
    'order',
    'hold',
    'renew',
    'end-hold',
    'own',
    'own',
    'not-own',
    'session',
    'goal',
    'attach',
    'detach',
    'scope',
    'go',
    'back',
    'retract',
    'correct',
    'amend',
    'usual',
    'weigh',
    'stand-by',
    'stand-by',
    'stand-by',
  ),
  by: fc.constantFrom<Role>('aide', 'aide', 'aide', 'nurse', 'nurse', 'therapist', 'charge-nurse', 'records'),
  minutes: fc.integer({ min: 0, max: 400 }),
  late: fc.constantFrom(0, 0, 0, 20, 300),
  n: fc.nat({ max: 40 }),
  m: fc.nat({ max: 40 }),
  yes: fc.boolean(),
  /** Whether anybody checked who it is: a name only claimed is an aide's, as far as it is taken at all. */
  signedIn: fc.constantFrom(true, true, false),
});
export type Act = typeof act extends fc.Arbitrary<infer A> ? A : never;
/** What the policy lets an aide enter; now and then an aide tries something else. */
const AN_AIDES: readonly Act['does'][] = [
  'weigh',
  'trigger',
  'hold',
  'not-own',
  'session',
  'session',
  'attach',
  'go',
  'back',
  'retract',
  'correct',
  'correct',
  'amend',
  'usual',
];
const pick = <T>(from: readonly T[], n: number): T => from[n % from.length]!;

function stages(a: Act, at: EpochMs): StageRecord[] {
  const whole = check('anna', pick(STAGES, a.n), at).stages as StageRecord[];
  return a.yes
    ? whole
    : whole.map((s, i) =>
        i === whole.length - 1
          ? {
              ...s,
              outcome: 'not-met',
              findings: s.findings.map((f) => ({ ...f, result: 'not-met' as const })),
            }
          : s,
      );
}

/** Whoever stands by an entry is one whom a waiting entry names, and has signed in. */
export function standingBy(world: World, a: Act): Act {
  if (a.does !== 'stand-by' || a.by === 'aide') return a;
  const named = world
    .events(LARCH, streamKey('stay', 'anna'))
    .filter((e) => e.source.unconfirmed && e.author.staff !== 'aide')
    .map((e) => e.author.staff as string as Role);
  return named.length === 0 ? a : { ...a, by: pick(named, a.n), signedIn: true };
}

/** The command of a drawn entry, fitted to what the ward knows by then. */
export function entryOf(world: World, a: Act, at: EpochMs, id: number): [CommandType, object] {
  const events = world.events(LARCH, streamKey('stay', 'anna'));
  const own = events.filter((e) => e.author.staff === a.by && e.type !== 'stay-begun');
  const target = pick(a.yes && own.length > 0 ? own : events, a.n);
  const stay = 'anna';
  const session = (n: number) => ({
    outcome: pick(['done', 'stopped', 'part'], n),
    occasion: 'planned',
    activities: [pick(['walk', 'stand', 'edge-sit', 'chair'], n)],
    startedAt: toIso(at),
    events: pick([[], [], ['dizzy'], ['near-fall'], ['lowered-to-floor']], n),
    firstTimeUp: n % 2 === 0,
  });
  const replacement = () => {
    const like = events.filter((e) => e.type === target.type);
    if (target.type === 'session-recorded') return { session: session(a.m) };
    if (target.type === 'trigger-recorded') return { kind: pick(recordedTriggerKind.options, a.m) };
    return pick(like, a.m).payload;
  };
  switch (a.by === 'aide' && a.m % 3 > 0 ? pick(AN_AIDES, a.n + a.m) : a.does) {
    case 'check': {
      const waitsForHelp = pick(['yes', 'yes', 'varies', 'no'], a.m);
      const more = { stages: stages(a, at), cooperation: { waitsForHelp, followsInstructions: 'yes' } };
      return [command('record-assessment'), { ...check(stay, 'edge', at), ...more }];
    }
    case 'confirm':
      return [command('confirm-plan'), { stay, task: pick(['in-bed', 'bed-chair', 'walk'], a.n) }];
    case 'seen':
      return [command('record-seen-walking'), { stay, walkingSupport: 'stick' }];
    case 'trigger':
      return [command('record-trigger'), { stay, kind: pick(recordedTriggerKind.options, a.n) }];
    case 'order': {
      const order = a.yes
        ? {
            about: 'activity',
            most: pick(['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'], a.n),
          }
        : {
            about: 'weight-bearing',
            limb: 'left-leg',
            bears: pick(['none', 'limited', 'unrestricted'], a.n),
          };
      return [command('change-order'), { stay, order }];
    }
    case 'hold':
      return [
        command('place-hold'),
        { stay, hold: `h${id}`, scope: pick(holdScope.options, a.n), reason: 'unstable' },
      ];
    case 'renew':
      return [
        command('renew-hold'),
        { stay, hold: `h${a.n}`, reviewAt: toIso(at + (1 + a.m) * 60 * MINUTE) },
      ];
    case 'end-hold': {
      const holds = events
        .filter((e) => e.type === 'hold-placed')
        .map((e) => (e.payload as { hold: string }).hold);
      return [command('end-hold'), { stay, hold: holds.length > 0 ? pick(holds, a.n) : 'h0' }];
    }
    case 'own':
      return [command('set-on-own'), { stay, where: [pick(['room', 'toilet', 'ward'], a.n)], when: ['day'] }];
    case 'not-own':
      return [command('remove-on-own'), { stay }];
    case 'session':
      return [command('record-session'), { stay, session: session(a.n) }];
    case 'goal':
      return [
        command('set-goal'),
        { stay, goal: { activity: pick(['walk', 'stand', 'edge-sit'], a.n), timesUp: 3 } },
      ];
    case 'attach':
      return [
        command('add-attachment'),
        {
          stay,
          attachment: `t${id}`,
          kind: pick(['iv-line', 'chest-drain', 'oxygen-cylinder'], a.n),
          disconnects: 'nurse',
          needsOwnPerson: a.yes,
        },
      ];
    case 'detach': {
      const attached = events
        .filter((e) => e.type === 'attachment-added')
        .map((e) => (e.payload as { attachment: string }).attachment);
      return [
        command('remove-attachment'),
        { stay, attachment: attached.length > 0 ? pick(attached, a.n) : 't0' },
      ];
    }
    case 'weigh':
      return [
        command('record-weight'),
        { stay, weight: { kg: pick([55, 80, 140, 160], a.n), how: a.yes ? 'measured' : 'estimated' } },
      ];
    case 'scope':
      return [
        command('set-scope'),
        a.n % 4 === 0
          ? { stay, scope: 'comfort' }
          : a.n % 4 === 1
            ? { stay, scope: 'clinicians-plan', fence: 'traction', plan: 'as written' }
            : { stay, scope: 'staged' },
      ];
    case 'go':
      return [command('go-off-ward'), { stay, reason: pick(['test', 'theatre', 'dialysis'], a.n) }];
    case 'back':
      return [command('come-back'), { stay }];
    case 'retract':
      return [command('make-retraction'), { stay, target: target.id, reason: 'never-happened' }];
    case 'correct':
      return [
        command('make-correction'),
        {
          stay,
          target: target.id,
          reason: 'wrong-value',
          replacement: replacement(),
          ...(a.m % 3 === 0 ? { occurredAt: toIso(at) } : {}),
        },
      ];
    case 'stand-by': {
      const waiting = events.filter((e) => e.source.unconfirmed && e.author.staff === a.by);
      return [
        command('confirm-entry'),
        { stay, event: (waiting.length > 0 ? pick(waiting, a.n) : target).id },
      ];
    }
    case 'amend':
      return [
        command('make-amendment'),
        { stay, target: target.id, reason: 'unclear', text: 'in other words' },
      ];
    default:
      return [command('record-usual-way'), { stay, usual: { moves: 'walks', transfers: 'alone' } }];
  }
}
