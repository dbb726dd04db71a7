/** What asks for one more person than the tables do, and the floors that body weight sets. */
import { HOUR } from '../../../kernel/times.ts';
import type { AidClass, People, Task } from '../values.ts';
import type { Demand } from './demand.ts';
import { demand, onePersonMore } from './demand.ts';
import { rises } from './limits.ts';
import type { PlanInput } from './types.ts';

export function attachmentDemands(input: PlanInput): Demand[] {
  const out: Demand[] = [];
  const all = input.attachments;
  const crowd = all.length >= input.rules.handling.manyAttachmentsFrom.value;
  const heavyTether = all.filter((a) => a.value.kind === 'chest-drain' || a.value.kind === 'oxygen-cylinder');
  if (crowd || heavyTether.length) {
    out.push(
      onePersonMore(
        'attachments',
        crowd
          ? `${all.length} attachments: one more person`
          : `${heavyTether[0]!.value.kind.replaceAll('-', ' ')}: one more person`,
        (crowd ? all : heavyTether).map((a) => a.fact),
      ),
    );
  }
  for (const a of all) {
    if (!a.value.needsOwnPerson) continue;
    out.push(
      onePersonMore(
        'attachments/own-person',
        `${a.value.kind.replaceAll('-', ' ')} needs a person to itself`,
        [a.fact],
      ),
    );
  }
  return out;
}

export function pressureDemands(task: Task, input: PlanInput): Demand[] {
  if (!input.pressureDrop || !rises(task)) return [];
  return [
    onePersonMore('pressure-drop', 'PRESSURE DROP on rising: one more person', [input.pressureDrop.fact]),
  ];
}

/** When the sedative's hours end, or null when none are running at `t`. */
export function sedatedUntil(input: PlanInput): number | null {
  if (!input.sedatedAt) return null;
  const until = input.sedatedAt.at + input.rules.handling.sedativeNightHours.value * HOUR;
  return input.t < until ? until : null;
}

/**
 * From the bariatric weight, or with a weight nobody knows, a lift is the bariatric one with at
 * least three. With no weight, aids that carry the person are not chosen by guess: only the ward's
 * highest-rated lift is offered.
 */
export function weightDemands(input: PlanInput, aids: readonly AidClass[]): Demand[] {
  const { weightKg } = input.capability;
  const from = input.rules.handling.bariatricFromKg.value;
  const facts = [input.weight?.fact ?? input.arrival];
  const carries = aids.filter((a) => a === 'sling-lift' || a === 'bariatric-lift');
  const rated = aids.filter((a) => a === 'standing-aid' || a === 'seated-transfer-aid');
  if (weightKg === null) {
    // A lone carer with a belt is for a weight that is known; from the bariatric weight up no row offers it.
    if (!carries.length && !rated.length && !aids.includes('belt')) return [];
    return [
      demand(
        'weight/unknown',
        "Weight unknown: only the ward's highest-rated lift; weigh or estimate",
        facts,
        'three-or-more',
        'bariatric-lift',
      ),
    ];
  }
  if (weightKg < from) return [];
  const out: Demand[] = [];
  const why = `From ${from} kg: `;
  if (carries.length) {
    out.push(
      demand(
        'weight/bariatric',
        `${why}bariatric lift, at least three`,
        facts,
        'three-or-more',
        'bariatric-lift',
      ),
    );
  }
  if (rated.length) {
    out.push(
      demand(
        'weight/bariatric',
        `${why}aid rated for the weight, at least two`,
        facts,
        'two' satisfies People,
        'none',
      ),
    );
  }
  return out;
}
