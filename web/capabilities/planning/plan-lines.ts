/** A plan as lines to read: by time or by person, each visit in words. Pure but for the language. */
import type { Placement } from '@footboard/shared/capabilities/planning/problem';
import type { Frees, Move } from '@footboard/shared/capabilities/planning/proposal';
import type { DayPlanPage, PlanChecked } from '@footboard/shared/wire/planning';
import { told } from '../../i18n/told.ts';
import { sayInside } from '../words.ts';
import { say } from './plan-words.ts';

export const SLOT_MS = 15 * 60_000;
export type PlanVisit = DayPlanPage['visits'][number];
export type Drawn = Pick<Placement, 'start'> & {
  readonly visit: string;
  readonly crew: readonly string[];
  readonly items: readonly string[];
};

export interface Speaks {
  readonly time: (at: number) => string;
  readonly nameOf: (staff: string) => string;
}

export interface PlanLine extends Drawn {
  readonly from: number;
  readonly to: number;
  readonly times: string;
  /** "Bed A3": whom. */
  readonly whom: string;
  readonly what: string;
  readonly who: string;
  readonly with: string;
  readonly marks: readonly string[];
}

export const whomWords = (visit: PlanVisit | undefined): string =>
  visit === undefined || visit.label === '' ? say('bed-unknown') : say('bed', { label: visit.label });

export function whatWords(visit: PlanVisit | undefined): string {
  if (!visit) return say('first-check');
  if (visit.kind === 'check') return visit.expected ? say('first-check') : say('check');
  return say('goal-visit', { activity: sayInside(visit.activity ?? 'chair'), n: visit.nth ?? 1 });
}
export const visitWords = (visit: PlanVisit | undefined): string =>
  `${whomWords(visit)}, ${whatWords(visit)}`;

/** In the order of time, then of beds. */
export function planLines(
  page: DayPlanPage,
  placed: readonly Drawn[],
  { time, nameOf }: Speaks,
): readonly PlanLine[] {
  const visits = new Map(page.visits.map((one, order) => [one.visit as string, { one, order }]));
  const labels = new Map(page.items.map(({ item, label }) => [item as string, label]));
  return placed
    .map((drawn) => {
      const visit = visits.get(drawn.visit)?.one;
      const from = page.start + drawn.start * SLOT_MS;
      const to = from + (visit?.length ?? 1) * SLOT_MS;
      const items = drawn.items.map((item) => labels.get(item) ?? item).join(', ');
      return {
        ...drawn,
        from,
        to,
        times: `${time(from)}–${time(to)}`,
        whom: whomWords(visit),
        what: whatWords(visit),
        who: drawn.crew.map(nameOf).join(', '),
        with: items,
        marks: [
          ...(visit?.firstTimeUp ? [say('first-time-up')] : []),
          ...(visit?.isolation ? [say('isolation')] : []),
        ],
      };
    })
    .toSorted(
      (a, b) => a.from - b.from || (visits.get(a.visit)?.order ?? 999) - (visits.get(b.visit)?.order ?? 999),
    );
}

export interface PlanGroup {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly PlanLine[];
}

/** By the hour of the ward's clock. */
export function byHour(lines: readonly PlanLine[], time: Speaks['time']): readonly PlanGroup[] {
  const groups = new Map<string, PlanLine[]>();
  for (const line of lines) {
    const hour = time(line.from).replace(/:\d\d/, ':00');
    groups.set(hour, [...(groups.get(hour) ?? []), line]);
  }
  return [...groups].map(([hour, of]) => ({ key: hour, title: say('hour', { time: hour }), lines: of }));
}

/** Everybody who is on, also whoever has nothing; a visit for two stands with both. */
export const byPerson = (
  page: DayPlanPage,
  lines: readonly PlanLine[],
  nameOf: Speaks['nameOf'],
): readonly PlanGroup[] =>
  page.staff.map(({ staff }) => ({
    key: staff,
    title: nameOf(staff),
    lines: lines.filter(({ crew }) => crew.includes(staff)),
  }));

export function moveWords(page: DayPlanPage, move: Move, { time, nameOf }: Speaks): string {
  const at = (placement: Move['before']): string =>
    placement ? time(page.start + placement.start * SLOT_MS) : '';
  const what = visitWords(page.visits.find(({ visit }) => visit === move.visit));
  const crew = (move.after?.crew ?? []).map(nameOf).join(', ');
  return say(`move-${move.kind}`, { what, before: at(move.before), after: at(move.after), crew });
}

/** A rule that is broken, with who, what and which other visit it is about; `of` is the visit that is spoken of. */
export function breachSays(
  page: DayPlanPage,
  { visit, other, staff, item, words }: PlanChecked['breaches'][number],
  nameOf: Speaks['nameOf'],
  of: string | null,
): string {
  const label = item && (page.items.find((one) => one.item === item)?.label ?? item);
  const about = [staff && nameOf(staff), label].filter(Boolean).join(', ');
  const others = [visit, other].filter((id) => id !== undefined && id !== of);
  const beside = others.map((id) => visitWords(page.visits.find((one) => one.visit === id))).join(', ');
  const rule = about === '' ? told(words) : say('breach-of', { about, words: told(words) });
  return beside === '' ? rule : say('breach-beside', { words: rule, what: beside });
}

export function freesWords(page: DayPlanPage, frees: Frees, time: Speaks['time']): string {
  if (frees.by === 'instead-of') {
    const what = visitWords(page.visits.find(({ visit }) => visit === frees.visit));
    return say('frees-instead-of', { what });
  }
  const from = time(page.start + frees.at.from * SLOT_MS);
  if (frees.by === 'blocked') return say('frees-blocked', { time: from, why: say(`why-${frees.why}`) });
  return say(`frees-${frees.by}`, { time: from });
}

/** "Within 2 % of the best possible", rounded so that it never says less than there is. */
export function gapWords(gap: number | null): string {
  if (gap === null) return say('no-bound');
  if (gap < 0.0005) return say('the-best');
  const percent = gap < 0.01 ? Math.ceil(gap * 1000) / 10 : Math.ceil(gap * 100);
  return say('best', { n: percent });
}
