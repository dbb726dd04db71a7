/** Bed to chair and toilet: the rules before the tables, then the table's row for this person. */
import { supportForbidden } from './arms.ts';
import { aidCovers, atLeast } from './help.ts';
import type { Demand } from './demand.ts';
import { demand, factsOf, fromRow, note, told } from './demand.ts';
import { BARIATRIC_TRANSFER, CHAIR_TO_TROLLEY, TRANSFER } from './tables/transfer.ts';
import type { TransferCase } from './tables/transfer.ts';
import type { Option, Row, Table } from './tables/table.ts';
import { rowFor } from './tables/table.ts';
import type { Capability, PlanInput } from './types.ts';
import type { AidClass, People } from '../values.ts';

export const cooperates = (c: Capability): boolean =>
  c.followsInstructions === 'yes' && c.waitsForHelp === 'yes';

/** Sternum precautions: the arms may not push or pull. */
const armsMayPush = (input: PlanInput): boolean => !input.orders.precautions.has('sternum');
export const armsPush = (input: PlanInput): boolean =>
  input.capability.armStrength === 'both' && armsMayPush(input);

const hasGrip = (c: Capability): boolean => c.grip === 'both' || c.grip === 'one';

/** A standing aid needs sitting balance, one leg that bears, instructions followed and grip on one side. */
export const canUseStandingAid = (input: PlanInput): boolean => {
  const c = input.capability;
  return (
    c.sitsUnheld && c.bears !== 'none' && c.followsInstructions === 'yes' && hasGrip(c) && armsMayPush(input)
  );
};

const isHeavy = (input: PlanInput): boolean =>
  input.capability.weightKg !== null &&
  input.capability.weightKg >= input.rules.handling.bariatricFromKg.value;

export const peopleUsed = (count: number): People =>
  count >= 3 ? 'three-or-more' : count === 2 ? 'two' : count === 1 ? 'one' : 'stand-by';

/** Whether this person and the ward's rules allow an option of a transfer table. */
function allowed(option: Option, input: PlanInput): boolean {
  switch (option.aid) {
    case 'belt':
      // With one person only where the ward allows a lone carer with a belt; the needs are those of the standing aid.
      return (
        (input.rules.handling.loneCarerWithBelt.value || atLeast(option.people[1], 'two')) &&
        canUseStandingAid(input)
      );
    case 'standing-aid':
      return canUseStandingAid(input);
    case 'seated-transfer-aid':
      // Grip as for the standing aid, so that an order taking weight off never ends in less help.
      return input.capability.sittingBalance && hasGrip(input.capability);
    default:
      return true;
  }
}

const NOT_ALLOWED: Partial<Record<Option['aid'], string>> = {
  'standing-aid':
    'a standing aid needs sitting balance, a leg that bears, instructions followed, grip and arms that may pull: sling lift instead',
  belt: 'a belt needs sitting balance, a leg that bears, instructions followed, grip and arms that may pull: sling lift instead',
};

/** Capability questions a transfer stands on. */
const GROUNDS = [
  'capability/weight-bearing',
  'capability/not-seen-standing',
  'capability/lesser-of-order-and-seen',
  'capability/worst-of-the-window',
  'capability/not-recorded',
  'capability/arm-by-order',
  'capability/sitting-balance',
];

function take(table: Table<TransferCase>, row: Row<TransferCase>, input: PlanInput): Demand[] {
  const index = row.options.findIndex((o) => allowed(o, input));
  const facts = factsOf(input.capability, ...GROUNDS);
  if (index >= 0) return [fromRow(table, row, facts, index)];
  const last = row.options[row.options.length - 1]!;
  return [
    demand(table.rule, `${row.says} (${table.source})`, facts, last.people[1]),
    demand(
      'before-the-tables/fit-for-the-aid',
      NOT_ALLOWED[last.aid] ?? 'sling lift instead',
      [],
      'two',
      'sling-lift',
    ),
  ];
}

/**
 * How the person was held at the edge, standing and turning stays in the plan until the same is
 * cleared free, and what was tried and not met takes two. Two or more who helped at a stand or a turn
 * stay though it was free, until it is done free with fewer. On a transfer that does not go over the
 * feet the people stay and a standing aid does not.
 */
function heldStages(input: PlanInput, onFeet: boolean): Demand[] {
  const c = input.capability;
  const out: Demand[] = [];
  for (const key of ['edge', 'stand', 'turn'] as const) {
    const standing = c.standings.get(key);
    if (!standing) continue;
    const facts = [standing.fact.id];
    const inSling = standing.securedWith === 'sling';
    if (standing.outcome === 'not-met') {
      // The table lifts whoever was not met at the edge, with two.
      if (key === 'edge' && !inSling && standing.people <= 2) continue;
      const people = peopleUsed(Math.max(standing.people, 2));
      const words = `${DONE[key]} was tried and not met: ${standing.people > 2 ? 'three' : 'two'} people`;
      out.push(demand('ours/tried-and-not-met', words, facts, people, inSling ? 'sling-lift' : 'none'));
      continue;
    }
    const free = c.clearedFree.has(key) || (standing.outcome === 'taken-back' && standing.how === 'free');
    if (free && !inSling) {
      if (key !== 'edge' && standing.people >= 2) {
        const by = standing.people > 2 ? 'three people or more' : 'two people';
        const words = `${DONE[key]} was helped by ${by}: the plan keeps that`;
        out.push(demand('secured/keep', words, facts, peopleUsed(standing.people)));
      }
      continue;
    }
    const words = `${DONE[key]} was held safe, not free: the plan keeps that`;
    const byPeople = standing.securedWith === 'two-people';
    // No standing aid is kept from the edge: nobody was on the feet there.
    const overFeet = onFeet && key !== 'edge' && !byPeople;
    const lifted = inSling || (overFeet && !canUseStandingAid(input));
    const people = peopleUsed(Math.max(standing.people, byPeople || lifted ? 2 : 1));
    const aid = lifted ? 'sling-lift' : overFeet ? 'standing-aid' : 'none';
    out.push(demand('secured/keep', words, facts, people, aid));
  }
  return out;
}
const DONE = { edge: 'Sitting at the edge', stand: 'Standing', turn: 'Turning' } as const;

export function transferHelp(input: PlanInput): Demand[] {
  const c = input.capability;
  const cooperative = cooperates(c);
  const table = isHeavy(input) ? BARIATRIC_TRANSFER : TRANSFER;
  const free = c.clearedFree.has('stand') && c.clearedFree.has('turn');
  const forbidden = supportForbidden(input);
  const notes: Demand[] = [];
  let bears = c.bears;
  if (bears === 'full' && !cooperative) {
    bears = 'partial';
    notes.push(
      demand(
        'before-the-tables/not-cooperating',
        'Bears full weight but is not known to follow instructions and wait for help: taken as partial and not cooperating',
        factsOf(c, 'capability/worst-of-the-window'),
        'one',
      ),
    );
  } else if (bears === 'full' && !free) {
    bears = 'partial';
    notes.push(
      demand(
        'before-the-tables/turn-not-free',
        'Bears full weight but was not seen to stand and turn free: taken as partial (ours, practice)',
        [c.standings.get('turn')?.fact.id],
        'one',
      ),
    );
  } else if (bears === 'full' && forbidden) {
    bears = 'partial';
    const words = `${forbidden.words}; taken as partial (ours, practice)`;
    notes.push(demand('ours/arms', words, forbidden.facts, 'one'));
  }
  const rowWith = (arms: boolean) => rowFor<TransferCase>(table, { bears, cooperative, arms });
  const withArms = rowWith(armsPush(input));
  // Arms that push and a seat that does not hold give no more help than arms that do not push.
  const seatHolds = withArms.options[0].aid !== 'seated-transfer-aid' || allowed(withArms.options[0], input);
  if (!seatHolds) {
    const words =
      'A seated transfer needs sitting balance cleared today and grip: as if the arms did not push';
    notes.push(note('before-the-tables/fit-for-the-aid', words, [c.standings.get('edge')?.fact.id]));
  }
  const row = seatHolds ? withArms : rowWith(false);
  const base = take(table, row, input);
  // A seated or lifted transfer does not go over the feet: how standing was held does not bear on it.
  const onFeet = base.some((d) => d.help.aids.some((a) => a === 'belt' || a === 'standing-aid'));
  const held = heldStages(input, onFeet);
  return [...notes, ...base, ...held, ...told(c, ...GROUNDS)];
}

/** What the plan of the way from bed to chair asks. */
export interface ChairAsks {
  readonly hold: boolean;
  readonly people: People;
  readonly aid: AidClass;
}

const BESIDE: Readonly<Record<People, string>> = {
  'on-own': 'stand by',
  'stand-by': 'stand by',
  one: 'one person',
  two: 'two people',
  'three-or-more': 'three people or more',
};

/**
 * What applies when the person is to go to the trolley from a chair: words beside the lateral plan. Where
 * the way from bed to chair asks for more than the figure, or may not be gone, that is what they say.
 */
export function fromChairWords(input: PlanInput, chair: ChairAsks | null = null): string {
  const cooperative = cooperates(input.capability);
  const bears = input.capability.bears === 'full' && !cooperative ? 'partial' : input.capability.bears;
  const row = rowFor<Omit<TransferCase, 'arms'>>(CHAIR_TO_TROLLEY, { bears, cooperative });
  const lifted = row.options[0].aid === 'standing-aid' && !canUseStandingAid(input);
  const [people, aid]: [People, AidClass] = lifted
    ? ['two', 'sling-lift']
    : [row.options[0].people[1], row.options[0].aid];
  if (chair?.hold) return 'From a chair: HOLD as bed to chair, ask';
  if (chair && !(atLeast(people, chair.people) && aidCovers('bed-chair', chair.aid, aid))) {
    return `From a chair: as bed to chair: ${BESIDE[chair.people]}${chair.aid === 'none' ? '' : `, ${chair.aid.replaceAll('-', ' ')}`}`;
  }
  return lifted ? 'From a chair: sling lift, two' : `From a chair: ${row.says}`;
}
