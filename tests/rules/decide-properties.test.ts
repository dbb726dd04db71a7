/**
 * What no sequence of commands may bring about, whoever enters them, in whatever order and however
 * late: two people in one bed, a person in a bed that is not on the board, an aide who makes it freer.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Role } from '@footboard/shared/kernel/author';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import { patience, runs } from '@footboard/shared/kernel/runs.testkit';
import { MINUTE, toIso } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import type { StageRecord } from '@footboard/shared/capabilities/assessments/values';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { policyRow } from '@footboard/shared/capabilities/people/policy/document';
import { aidCovers, atLeast } from '@footboard/shared/capabilities/handling/rules/help';
import { holdScope, recordedTriggerKind } from '@footboard/shared/capabilities/orders/values';
import { standingOf } from '@footboard/server/capabilities/stays/standing';
import {
  arrived,
  check,
  claimedBy,
  LARCH,
  ROWAN,
  STAFF,
  T0,
  worldWith,
} from '@footboard/server/capabilities/given.testkit';
import type { Entering, World } from '@footboard/server/capabilities/world.testkit';

const command = (name: string): CommandType => COMMAND_TYPES.get(name)!;
const other = (ward: WardId): WardId => (ward === LARCH ? ROWAN : LARCH);

describe('people and beds', { timeout: patience }, () => {
  const STAYS = ['s1', 's2', 's3', 's4', 's5', 's6'];
  const BEDS = ['b1', 'b2', 'b3', 'b4'];
  const act = fc.record({
    does: fc.constantFrom(
      'begin',
      'begin',
      'begin',
      'move',
      'move',
      'swap',
      'swap',
      'transfer',
      'end',
      'close',
    ),
    ward: fc.constantFrom(LARCH, LARCH, LARCH, ROWAN),
    stay: fc.constantFrom(...STAYS),
    second: fc.constantFrom(...STAYS),
    bed: fc.constantFrom(...BEDS),
    from: fc.constantFrom(...BEDS),
    /** Whether the entry says where the people really are. */
    informed: fc.boolean(),
    late: fc.constantFrom(0, 0, 0, 10, 90),
  });
  type Act = typeof act extends fc.Arbitrary<infer A> ? A : never;

  const bedOf = (world: World, { ward, informed, from }: Act, stay: string): string =>
    informed ? (standing(world, ward, stay)?.bed ?? from) : from;
  const standing = (world: World, ward: WardId, id: string) => {
    const events = world.events(ward, streamKey('stay', id));
    return standingOf({ stay: id as StayId, version: events.length, events });
  };

  function entryOf(world: World, a: Act): [CommandType, object] {
    const from = bedOf(world, a, a.stay);
    switch (a.does) {
      case 'begin':
        return [command('begin-stay'), { stay: a.stay, person: `p-${a.stay}`, bed: a.bed, from: 'home' }];
      case 'move':
        return [command('move-stay'), { stay: a.stay, from, to: a.bed }];
      case 'swap':
        return [
          command('swap-stays'),
          { first: { stay: a.stay, bed: from }, second: { stay: a.second, bed: bedOf(world, a, a.second) } },
        ];
      case 'transfer':
        return [
          command('transfer-stay'),
          { stay: a.stay, bed: from, to: { ward: other(a.ward), bed: a.bed, stay: a.second } },
        ];
      case 'end':
        return [command('end-stay'), { stay: a.stay, bed: from, to: 'home' }];
      default:
        return [command('close-bed'), { bed: a.bed }];
    }
  }

  function faults(world: World): string[] {
    const found: string[] = [];
    for (const ward of [LARCH, ROWAN]) {
      const occupied = new Map<string, string>();
      for (const bed of BEDS) {
        let inIt: string | null = null;
        let last = -Infinity;
        for (const event of world.events(ward, streamKey('bed', bed))) {
          const who = (event.payload as { stay?: string }).stay ?? null;
          if (event.occurred < last) found.push(`${bed}: ${event.type} before what came before it`);
          last = event.occurred;
          if (event.type === 'bed-taken' && inIt !== null) found.push(`${bed}: ${who} put on ${inIt}`);
          if (event.type === 'bed-freed' && inIt !== who)
            found.push(`${bed}: ${who} taken out, ${inIt} was in it`);
          if (event.type === 'bed-withdrawn' && inIt !== null) found.push(`${bed}: closed under ${inIt}`);
          inIt = event.type === 'bed-taken' ? who : null;
        }
        if (inIt === null) continue;
        if (occupied.has(inIt)) found.push(`${inIt} lies in ${occupied.get(inIt)} and in ${bed}`);
        occupied.set(inIt, bed);
        if (!world.ward(ward).state!.beds.some((b) => b.bed === bed))
          found.push(`${inIt} is in a bed off the board`);
      }
      for (const id of STAYS) {
        const s = standing(world, ward, id);
        const lies = occupied.get(id) ?? null;
        const should = s && s.ended === null ? s.bed : null;
        if (lies !== should) found.push(`${id}: the stay says ${should}, the bed's guard ${lies}`);
      }
    }
    return found;
  }

  it('no two people in one bed, no person in two, nobody in a closed one, though two entries race', () => {
    const seen = { accepted: 0, raced: 0 };
    fc.assert(
      fc.property(fc.array(fc.tuple(act, act), { minLength: 5, maxLength: 25, size: 'max' }), (pairs) => {
        const world = worldWith();
        let now = T0;
        for (const pair of pairs) {
          now += 30 * MINUTE;
          const decided = pair.map((a) => {
            const entering: Entering = {
              ward: a.ward,
              by: STAFF['charge-nurse'],
              occurred: now - a.late * MINUTE,
              now,
            };
            const [type, data] = entryOf(world, a);
            return { entering, type, data, decision: world.decide(type, data, entering) };
          });
          const written = new Set<string>();
          for (const { entering, type, data, decision } of decided) {
            if (!('accept' in decision)) continue;
            const streams = decision.accept.map((e) => `${e.ward ?? entering.ward} ${e.stream}`);
            // The log's key on (ward, stream, version): the later of two writers to one stream decides again.
            if (streams.some((s) => written.has(s))) {
              seen.raced += 1;
              world.enter(type, data, entering);
            } else {
              seen.accepted += 1;
              world.append(decision.accept, entering);
            }
            for (const s of streams) written.add(s);
          }
          expect(faults(world)).toEqual([]);
        }
      }),
      runs(150, 'cases'),
    );
    // The histories are worth something only if much of them was accepted, and some of it raced.
    expect(seen.accepted).toBeGreaterThan(200);
    expect(seen.raced).toBeGreaterThan(5);
  });
});

describe('an aide', { timeout: patience }, () => {
  const STAGES = DEFAULT_PROTOCOL.stages.map((s) => s.id);
  const act = fc.record({
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
    by: fc.constantFrom<Role>(
      'aide',
      'aide',
      'aide',
      'nurse',
      'nurse',
      'therapist',
      'charge-nurse',
      'records',
    ),
    minutes: fc.integer({ min: 0, max: 400 }),
    late: fc.constantFrom(0, 0, 0, 20, 300),
    n: fc.nat({ max: 40 }),
    m: fc.nat({ max: 40 }),
    yes: fc.boolean(),
    /** Whether anybody checked who it is: a name only claimed is an aide's, as far as it is taken at all. */
    signedIn: fc.constantFrom(true, true, false),
  });
  type Act = typeof act extends fc.Arbitrary<infer A> ? A : never;
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
  function standingBy(world: World, a: Act): Act {
    if (a.does !== 'stand-by' || a.by === 'aide') return a;
    const named = world
      .events(LARCH, streamKey('stay', 'anna'))
      .filter((e) => e.source.unconfirmed && e.author.staff !== 'aide')
      .map((e) => e.author.staff as string as Role);
    return named.length === 0 ? a : { ...a, by: pick(named, a.n), signedIn: true };
  }

  function entryOf(world: World, a: Act, at: EpochMs, id: number): [CommandType, object] {
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
        return [
          command('set-on-own'),
          { stay, where: [pick(['room', 'toilet', 'ward'], a.n)], when: ['day'] },
        ];
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

  const TRUST = ['current', 're-check', 'not-known'];

  /** In what the view after asks for less help, or stops less, than the view before. */
  function freer(before: StayView, after: StayView, weighed = false): string[] {
    const found: string[] = [];
    const plans = (v: StayView): (TaskPlan & { when: string })[] =>
      (['day', 'night'] as const).flatMap((when) => (v.plan?.[when] ?? []).map((p) => ({ ...p, when })));
    const now = new Map(plans(after).map((p) => [`${p.when} ${p.task}`, p]));
    // The clinician's plan forbids what the staged check allows: nothing is freer under it.
    for (const was of after.scope.kind === 'clinicians-plan' ? [] : plans(before)) {
      const is = now.get(`${was.when} ${was.task}`);
      const less =
        !is ||
        (was.hold && !is.hold) ||
        !atLeast(is.people, was.people) ||
        // Under HOLD the aid shown is one of several that cannot be combined. A weight may lead to another
        // table with an aid of another kind (VA bariatric tables, rev. 2007): then it must not be a lesser one.
        (!is.hold &&
          !aidCovers(was.task, was.aid, is.aid) &&
          (!weighed || is.aid === 'none' || aidCovers(was.task, is.aid, was.aid)));
      if (less) found.push(`${was.when} ${was.task}: ${said(was)} became ${is ? said(is) : 'nothing'}`);
    }
    for (const hold of before.holds) {
      const still = after.holds.find((h) => h.hold === hold.hold);
      if (!still || holdScope.options.indexOf(still.scope) < holdScope.options.indexOf(hold.scope)) {
        found.push(`the hold ${hold.hold} went or narrowed`);
      }
    }
    for (const open of before.trust.openTriggers) {
      if (!after.trust.openTriggers.some((o) => o.event === open.event))
        found.push(`${open.kind} was closed`);
    }
    if (TRUST.indexOf(after.trust.state) < TRUST.indexOf(before.trust.state)) {
      found.push(`trust went from ${before.trust.state} to ${after.trust.state}`);
    }
    const wider = (key: 'where' | 'when') => after.onOwn?.[key].some((x) => !before.onOwn?.[key].includes(x));
    if (wider('where') || wider('when')) found.push('"on own" widened');
    if ((after.tier.notch ?? -1) > (before.tier.notch ?? -1)) found.push(`tier rose to ${after.tier.word}`);
    if (before.checkBeforeMoving && !after.checkBeforeMoving) found.push('CHECK BEFORE MOVING went');
    if (before.firstTimeUpPending && !after.firstTimeUpPending) found.push('first time up went');
    if (before.attachments.some((x) => !after.attachments.some((y) => y.attachment === x.attachment))) {
      found.push('an attachment went');
    }
    return found;
  }
  const said = (p: TaskPlan) => `${p.hold ? 'HOLD ' : ''}${p.people} ${p.aid}`;

  it('makes nothing freer, whatever came before, by any entry that is accepted', () => {
    const seen = { byAide: 0, claimed: 0, corrections: 0, stoodBy: 0, freedByOthers: 0 };
    fc.assert(
      fc.property(fc.array(act, { minLength: 12, maxLength: 40, size: 'max' }), (acts) => {
        const world = worldWith(arrived('anna', 'b1'));
        let now = T0;
        acts.forEach((drawn, i) => {
          const a = standingBy(world, drawn);
          now += a.minutes * MINUTE;
          const when = { ward: LARCH, occurred: now - a.late * MINUTE, now };
          const [type, data] = entryOf(world, a, when.occurred, i);
          const claimed = !a.signedIn && policyRow(type.name)!.unconfirmed === 'recorded';
          const entering: Entering = claimed
            ? { ...when, ...claimedBy(STAFF[a.by]), entitled: a.by }
            : { ...when, by: STAFF[a.by] };
          const compared = a.by === 'aide' || claimed || i % 4 === 0;
          const before = compared ? viewOf(world, now) : null;
          const decision = world.enter(type, data, entering);
          if (before === null || !('accept' in decision)) return;
          const less = freer(before, viewOf(world, now), type.name === 'record-weight');
          const byAide = a.by === 'aide' || claimed;
          if (byAide) seen.byAide += 1;
          if (claimed && a.by !== 'aide') seen.claimed += 1;
          if (type.name === 'confirm-entry' && a.by !== 'aide') seen.stoodBy += 1;
          if (byAide && type.name.startsWith('make-')) seen.corrections += 1;
          if (!byAide && less.length > 0) seen.freedByOthers += 1;
          expect(byAide ? less : [], `${type.name} ${JSON.stringify(data)}`).toEqual([]);
        });
      }),
      runs(80),
    );
    // The comparison sees freeing where it happens, and aides were heard.
    expect(seen.byAide).toBeGreaterThan(100);
    expect(seen.corrections).toBeGreaterThan(5);
    expect(seen.claimed).toBeGreaterThan(50);
    expect(seen.stoodBy).toBeGreaterThan(1);
    expect(seen.freedByOthers).toBeGreaterThan(5);
  });

  function viewOf(world: World, t: EpochMs): StayView {
    const events = world.events(LARCH, streamKey('stay', 'anna'));
    const { state, calendar } = world.ward(LARCH);
    return evaluateStay({ stay: 'anna' as StayId, version: events.length, events }, state!, calendar!, t)
      .view;
  }
});
