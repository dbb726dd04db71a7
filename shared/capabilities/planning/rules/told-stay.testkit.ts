/** A person as the board tells of them, with what the day plan asks for and nothing else: up three times into the chair. */
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';

/** One person and no equipment from bed to chair, unless said otherwise. */
export const move = (more: Partial<TaskPlan> = {}): TaskPlan => ({
  task: 'bed-chair',
  hold: false,
  people: 'one',
  aid: 'none',
  with: [],
  towards: null,
  cautions: [],
  because: [],
  ...more,
});
export const toldStay = (plans: readonly TaskPlan[], more: Partial<StayView> = {}): StayView =>
  ({
    stay: 's1',
    version: 5,
    shown: 'whole',
    away: null,
    scope: { kind: 'staged', fence: null, plan: null },
    trust: { state: 'current', openTriggers: [], conflicts: [], because: [] },
    holds: [],
    orders: [],
    plan: { day: plans, night: plans },
    checkBeforeMoving: false,
    due: { state: 'not-due', at: null, because: [] },
    lastUp: null,
    today: { goal: { activity: 'chair', timesUp: 3 }, timesUp: 0, met: false },
    signs: [],
    firstTimeUpPending: false,
    mayStart: null,
    debt: null,
    chair: null,
    isolation: false,
    leaving: null,
    visit: null,
    lately: null,
    ...more,
  }) as unknown as StayView;
