/** Who can be planned with: as named, without breaks and without what they have taken already. Pure. */
import type { StaffId } from '../../../kernel/ids.ts';
import type { PlannedStaff, Slots } from '../problem.ts';
import { inside, touched, type Grid } from './grid.ts';
import { timesOn } from './people-on.ts';
import type { StayView } from '../../board/view.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { WardState } from '../../wards/context.ts';

interface Here {
  readonly ward: WardState;
  readonly stays: readonly { readonly stay: StayView }[];
  readonly t: EpochMs;
}

const some = (slots: Slots | null): Slots[] => (slots ? [slots] : []);

export function staffOf({ ward, stays, t }: Here, grid: Grid): PlannedStaff[] {
  const taken = new Map<StaffId, Slots[]>();
  const bays = new Map<StaffId, Set<string>>();
  for (const { stay } of stays) {
    const { visit } = stay;
    if (!visit || visit.until <= t) continue;
    for (const who of [visit.by, ...(visit.second ? [visit.second] : [])]) {
      taken.set(who, [
        ...(taken.get(who) ?? []),
        ...some(touched({ from: visit.from, to: visit.until }, grid)),
      ]);
    }
  }
  for (const { bed, label: _label, bay } of ward.beds) {
    const named = ward.carers.get(bed);
    if (!named || named.until <= t) continue;
    for (const who of [named.who.nurse, named.who.aide]) {
      if (who) bays.set(who, (bays.get(who) ?? new Set()).add(bay));
    }
  }
  return [...timesOn(ward, { from: grid.start, to: grid.end })]
    .map(([staff, times]) => ({
      staff,
      role: ward.staff.get(staff)!.role,
      on: times.flatMap((time) => some(inside(time, grid))),
      breaks: times.flatMap(({ breaks }) => breaks.flatMap((pause) => some(touched(pause, grid)))),
      taken: taken.get(staff) ?? [],
      bays: [...(bays.get(staff) ?? [])],
    }))
    .filter(({ on }) => on.length > 0)
    .toSorted((a, b) => (a.staff < b.staff ? -1 : 1));
}
