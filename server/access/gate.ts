/**
 * The gate: may this identity do this, on this ward? Every command, query, live message and export
 * asks here; the answer comes from the one policy document through one ability per actor.
 */
import { createMongoAbility } from '@casl/ability';
import type { MongoAbility } from '@casl/ability';
import type { Role } from '@footboard/shared/kernel/author';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import {
  ACTORS,
  POLICY,
  WITHOUT_A_WARD,
  policyRow,
} from '@footboard/shared/capabilities/people/policy/document';
import type {
  Actor,
  ActionWithoutWard,
  BoardLevel,
} from '@footboard/shared/capabilities/people/policy/document';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { Problem } from '@footboard/shared/wire/http';
import { problem } from '../commanding/problems.ts';
import type { Identity } from './identity.ts';
import type { Glass, GlassRecord } from './ports.ts';

/** What an actor is let through with. */
export interface Pass {
  readonly actor: Actor;
  readonly level: BoardLevel;
  /** Set when only a broken glass lets them in: what they look at is recorded under it. */
  readonly glass: GlassRecord | null;
}
export type Passed = { readonly pass: Pass } | { readonly problem: Problem };

/** Subject of every rule: a ward. Rules are by action; the ward is settled before (which actor one is there). */
const SUBJECT = 'Ward';

/** One ability an actor, made once from the policy document. */
const ABILITIES: ReadonlyMap<Actor, MongoAbility> = new Map(
  ACTORS.map((actor) => [
    actor,
    createMongoAbility(
      POLICY.filter((row) => row.actors.includes(actor)).map(({ action }) => ({ action, subject: SUBJECT })),
    ),
  ]),
);
export const actorMay = (actor: Actor, action: string): boolean => ABILITIES.get(actor)!.can(action, SUBJECT);
export const actionsOf = (actor: Actor): readonly string[] =>
  POLICY.filter(({ action }) => actorMay(actor, action)).map(({ action }) => action);

/**
 * A broken glass opens reading, and what makes a person safer; nothing that makes freer, and no
 * matters of the ward itself.
 */
export const glassMay = (action: string): boolean => {
  const row = policyRow(action);
  return (
    row !== undefined &&
    ([
      'read-board',
      'read-board-then',
      'read-stay',
      'read-staff',
      'read-huddle',
      'read-rules',
      'read-protocols',
      'join-ward',
      'leave-ward',
    ].includes(action) ||
      row.moves === 'safer')
  );
};

/** Administrators keep the place, not the patients: they see the board as a wall without initials does. */
const levelFor = (actor: Actor, identity: Identity): BoardLevel =>
  actor === 'wall'
    ? (identity.device?.level ?? 'bed-only')
    : actor === 'administrator'
      ? 'bed-only'
      : 'whole';

const memberRole = (ward: WardState | null, staff: StaffId): Role | null => {
  const member = ward?.staff.get(staff);
  return member?.active ? member.role : null;
};

export class Gate {
  constructor(private readonly glass: Pick<Glass, 'open'>) {}

  /** Everything this identity is on a ward, the one that may most for a person first; empty for nothing. */
  async passes(identity: Identity, id: WardId, ward: WardState | null): Promise<readonly Pass[]> {
    const as = (actor: Actor, glass: GlassRecord | null = null): Pass => ({
      actor,
      level: glass ? 'whole' : levelFor(actor, identity),
      glass,
    });
    const found: Pass[] = [];
    const { person, device } = identity;
    const staff = person?.staff ?? (identity.access === 'open' ? identity.claimed : null);
    // A code signed on a device counts on that device's ward and nowhere else.
    const elsewhere = person?.via === 'signing' && device?.ward !== id;
    if (staff !== null && !elsewhere) {
      const role = memberRole(ward, staff);
      if (role) found.push(as(role));
      if (person?.wide && role !== 'administrator') found.push(as('administrator'));
      if (person && !role) {
        const glass = await this.glass.open(id, staff);
        if (glass) found.push(as('aide', glass));
      }
    }
    if (device?.ward === id) found.push(as(device.kind === 'wall' ? 'wall' : 'device'));
    // Sign-in is off: whoever comes reads all of it (the demo).
    if (identity.access === 'open') found.push({ actor: 'device', level: 'whole', glass: null });
    return found;
  }

  async on(identity: Identity, action: string, id: WardId, ward: WardState | null): Promise<Passed> {
    const passes = await this.passes(identity, id, ward);
    const pass = passes.find((one) => (one.glass ? glassMay(action) : actorMay(one.actor, action)));
    if (pass) return { pass };
    // With sign-in off nobody is asked for more than a name: what a role may still goes for commands.
    if (identity.access === 'open' && policyRow(action)?.kind !== 'account') {
      return { pass: { actor: 'device', level: 'whole', glass: null } };
    }
    return { problem: refusal(identity, action, passes) };
  }

  /** A command of nobody at all is not even read. Null: go on. */
  unheard(identity: Identity): Problem | null {
    const somebody = identity.access === 'open' || identity.person !== null || identity.claimed !== null;
    return somebody ? null : signInFirst(identity);
  }

  /** For what belongs to no ward. Null: go on. */
  without(identity: Identity, action: ActionWithoutWard): Problem | null {
    const needs = WITHOUT_A_WARD[action];
    if (needs === 'anyone') return null;
    if (!identity.person) return signInFirst(identity);
    if (needs === 'wide' && !identity.person.wide) {
      return problem(
        'not-allowed',
        'That is for an administrator of this server.',
        'Ask an administrator, the manager or the charge nurse.',
      );
    }
    return null;
  }
}

const signInFirst = (identity: Identity): Problem =>
  problem(
    'sign-in-first',
    identity.ranOut ? 'Your sign-in has run out.' : 'Nobody is signed in here.',
    identity.device?.kind === 'shared'
      ? 'Choose your name and type your code, or sign in.'
      : 'Sign in, then do it again: nothing you entered is lost.',
  );

function refusal(identity: Identity, action: string, passes: readonly Pass[]): Problem {
  const instead = policyRow(action)?.instead || 'Ask the charge nurse.';
  if (!identity.person && identity.device?.kind !== 'wall') return signInFirst(identity);
  if (passes.length === 0 || (identity.person && passes.every((p) => p.actor === 'device'))) {
    return problem('not-on-this-ward', 'You are not on the staff list of this ward.', instead);
  }
  const who = passes[0]!.glass ? 'an opened ward' : passes[0]!.actor.replaceAll('-', ' ');
  return problem('not-allowed', `"${action.replaceAll('-', ' ')}" is not for ${who}.`, instead);
}
