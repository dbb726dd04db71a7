/**
 * Who may be on the round at all. A gate is never outscored: whoever meets one is not on the list, and
 * stands in the register beside it with the reason and with what would put them back. Ours, practice.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import type { Task } from '../../handling/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';

export type GateKind =
  | 'not-read'
  | 'away'
  | 'comfort'
  | 'clinicians-plan'
  | 'held'
  | 'nurse-first'
  | 'not-now'
  | 'talk-first'
  | 'night'
  | 'up-now'
  | 'resting'
  | 'said-no'
  | 'later'
  | 'taken'
  | 'booked';

export interface Gate {
  readonly kind: GateKind;
  readonly because: Because;
  /** What would put the person on the list. */
  readonly until: string;
}

export interface GateInput {
  readonly t: EpochMs;
  readonly night: { readonly is: boolean; readonly until: EpochMs };
  readonly rules: RulesDocument;
  readonly say: (at: EpochMs) => string;
}

type SayInput = Pick<GateInput, 'say'>;

/** From what asks most to what asks least: the moves that bring somebody out of bed. */
export const GETTING_UP: readonly Task[] = ['walk', 'stand', 'bed-chair', 'edge-of-bed'];

const plain = (code: string): string => code.replaceAll('-', ' ');

/** The first gate that stops it, in the order in which somebody would ask; null: may be on the list. */
export function gateOf(stay: StayView, input: GateInput): Gate | null {
  return whoGates(stay, input) ?? safetyGates(stay, input) ?? momentGates(stay, input);
}

const gate = (kind: GateKind, words: string, until: string, facts: Because['facts'] = []): Gate => ({
  kind,
  because: { rule: `round/${kind}`, facts: [...facts], words },
  until,
});

function whoGates(stay: StayView, { say }: SayInput): Gate | null {
  // A row of which nothing was read yet, or that tells only a part, says nothing about the person. That
  // is all this gate means: who somebody is no list can know, and two identifiers at the bed confirm it.
  if (stay.version === 0 || stay.shown !== 'whole') {
    return gate(
      'not-read',
      'The entries of this person are not read here yet',
      'Once they are read; who it is, is confirmed at the bed by two identifiers',
    );
  }
  if (stay.away) {
    const back = stay.away.dueBack === null ? '' : `, due back ${say(stay.away.dueBack)}`;
    return gate('away', `Off the ward since ${say(stay.away.since)}${back}`, 'Once they are back');
  }
  if (stay.scope.kind === 'comfort') {
    return gate('comfort', 'Comfort plan: no rank, no goal', 'Moves for comfort go on as the person wishes');
  }
  if (stay.scope.kind === 'clinicians-plan') {
    return gate('clinicians-plan', "Clinician's plan only", 'Ask the nurse what that plan says for today');
  }
  return null;
}

const safetyGates = (stay: StayView, { say }: SayInput): Gate | null =>
  heldGate(stay, say) ?? noMoveGate(stay) ?? checkGate(stay, say) ?? startGate(stay);

/** What stands against getting somebody up at all, whatever the hour; `inBed`: against exercise in bed. */
export const stopOf = (stay: StayView, input: SayInput, inBed: boolean): Gate | null =>
  whoGates(stay, input) ??
  heldGate(stay, input.say) ??
  (inBed ? null : noMoveGate(stay)) ??
  checkGate(stay, input.say) ??
  startGate(stay, inBed ? ordersToBed(stay) : []);

/** Off the ward, or under a plan of their own: what stands against any visit. */
export { whoGates as whoStop };

function heldGate(stay: StayView, say: SayInput['say']): Gate | null {
  const stops = stay.holds.find((h) => h.scope !== 'walking' && h.scope !== 'standing');
  if (stops) {
    return gate(
      'held',
      `Hold on ${plain(stops.scope)} since ${say(stops.placedAt)}`,
      `Once a nurse or therapist ends the hold, review ${say(stops.reviewAt)}`,
      [stops.event],
    );
  }
  return null;
}

function noMoveGate(stay: StayView): Gate | null {
  if (gettingUp(stay).length > 0) return null;
  const because = stay.plan?.day.find((p) => p.task === 'edge-of-bed')?.because ?? [];
  return gate(
    'held',
    'The plan allows no move out of bed',
    'Once the plan allows one',
    because.flatMap(({ facts }) => facts),
  );
}

function checkGate(stay: StayView, say: SayInput['say']): Gate | null {
  if (stay.checkBeforeMoving || stay.trust.state === 'not-known') {
    return gate('nurse-first', 'CHECK BEFORE MOVING: a nurse looks first', 'Once a nurse has checked');
  }
  if (stay.trust.state === 're-check') {
    const [open] = stay.trust.openTriggers;
    const [because] = stay.trust.because;
    const ranOut = because?.rule === 'trust/ran-out';
    const why = open ? `${open.words}, ${say(open.at)}` : ranOut ? 'the last check ran out' : because?.words;
    const facts = open ? [open.event] : because?.facts;
    return gate('nurse-first', `A nurse checks first: ${why}`, 'Once a nurse has checked', facts);
  }
  return null;
}

/** An order to stay in bed is nothing against exercise there. */
const ordersToBed = ({ orders }: StayView): EventId[] =>
  orders.filter(({ order }) => order.about === 'activity' && order.most === 'bed').map(({ event }) => event);

function startGate(stay: StayView, saysNothing: readonly EventId[] = []): Gate | null {
  const why = stay.mayStart?.reasons.find(
    (r) => r.word === 'not-now' && !r.facts.some((fact) => saysNothing.includes(fact)),
  );
  if (why) return gate('not-now', `Not now: ${why.words}`, 'Once a nurse has looked', why.facts);
  const refusals = stay.signs.find(({ kind }) => kind === 'refusals');
  if (refusals) {
    return gate(
      'talk-first',
      'Said no several times in a row: a nurse or therapist talks with them first',
      'Once a session is recorded',
      refusals.because.flatMap(({ facts }) => facts),
    );
  }
  return null;
}

function momentGates(stay: StayView, { t, night, rules, say }: GateInput): Gate | null {
  if (night.is) {
    return gate('night', 'Night: asleep, unless they ask', `From ${say(night.until)} on`);
  }
  const { chair, lately } = stay;
  if (chair && (chair.backBy === null || t < chair.backBy)) {
    const back = chair.backBy === null ? '' : `, back to bed by ${say(chair.backBy)}`;
    const until = chair.backBy === null ? 'Once they are back in bed' : `From ${say(chair.backBy)} on`;
    return gate('up-now', `In the chair since ${say(chair.since)}${back}`, until, [chair.event]);
  }
  const last = lately?.last;
  const resting = restGate(stay, { t, rules, say });
  // What was tried after they were up says more of how to go on; the rest goes on beside it.
  if (resting && !last?.notDone) return resting;
  const refused = rules.round.againAfterMinutes['said-no']!.value * MINUTE;
  if (lately?.saidNo && t < lately.saidNo.at + refused) {
    return gate(
      'said-no',
      `Said no ${say(lately.saidNo.at)}`,
      `From ${say(lately.saidNo.at + refused)} on, asked in another way`,
      [lately.saidNo.event],
    );
  }
  if (last?.notDone) {
    const again = last.to + rules.round.againAfterMinutes[last.notDone]!.value * MINUTE;
    if (t < again) {
      return gate('later', `Not done ${say(last.to)}: ${plain(last.notDone)}`, `From ${say(again)} on`, [
        last.event,
      ]);
    }
  }
  return resting;
}

/** Overdue in the chair, help back to bed is what they need: no rest comes first. */
function restGate(
  { chair, lastUp }: StayView,
  { t, rules, say }: Pick<GateInput, 't' | 'rules' | 'say'>,
): Gate | null {
  if (chair || !lastUp) return null;
  const until = lastUp.at + rules.round.restMinutes.value * MINUTE;
  if (t >= until) return null;
  return gate('resting', `Resting: last up ${say(lastUp.at)}`, `From ${say(until)} on`, [lastUp.event]);
}

/** Moves out of bed that the plan of the day allows, the most demanding first. */
export const gettingUp = (stay: StayView): readonly TaskPlan[] =>
  GETTING_UP.flatMap((task) => stay.plan?.day.filter((p) => p.task === task && !p.hold) ?? []);
