/** Ready to check the next stage: sessions at the stage cleared were easy, and nothing speaks against the next. */
import type { StageMeaning } from '../../assessments/rules/protocol.ts';
import { stageKey } from '../../assessments/rules/stage-standing.ts';
import { isHeld, isOrdered, reaches } from '../../sessions/rules/activities.ts';
import { isWithin, mostByUsualWay } from '../../sessions/rules/goal-limits.ts';
import type { Activity, Session } from '../../sessions/values.ts';
import type { SignView } from '../activity-view.ts';
import type { SignsInput } from './signs-input.ts';

/** What is done at a stage, and what the next check would ask for. Ours, practice. */
const DONE_AT: Readonly<Record<StageMeaning, Activity>> = {
  clear: 'back-raised',
  upright: 'back-raised',
  edge: 'edge-sit',
  stand: 'stand',
  turn: 'chair',
  walk: 'walk',
};

/**
 * The ward's number of sessions in a row since the stage was cleared, since the next was last not met
 * and since the last thing that ended trust: each done, with no more effort than a step up allows, and
 * nothing wrong. Effort that nobody wrote down is not taken as easy. Nobody is called ready while the
 * plan itself is not to be trusted.
 */
export function readyForNext(input: SignsInput): SignView | null {
  const { tier, rules, sessions, holds, activityOrder, standing, triggers, trust } = input;
  const { protocol } = tier.seen;
  if (!protocol || tier.view.at === null || trust.state !== 'current') return null;
  const index = protocol.stages.findIndex((s) => !tier.cleared.has(stageKey(protocol, s)));
  const now = protocol.stages[index - 1];
  const next = protocol.stages[index];
  if (!now?.shows || !next?.shows) return null;
  const asked = DONE_AT[next.shows];
  const usual = standing.usualWay && mostByUsualWay(standing.usualWay);
  if (!isWithin(asked, usual) || holds.some((h) => isHeld(asked, h.scope))) return null;
  if (activityOrder && !isOrdered(asked, activityOrder.value)) return null;

  const failed = tier.seen.stages.get(stageKey(protocol, next));
  const since = Math.max(
    tier.view.at,
    failed?.outcome === 'not-met' ? failed.fact.occurred : -Infinity,
    triggers.seen.at(-1)?.at ?? -Infinity,
  );
  const limit = rules.activity.stepUpEffort.value;
  let easy: SignsInput['sessions'] = [];
  for (const one of sessions) {
    if (one.from <= since) continue;
    const ease = easeOf(one.session, DONE_AT[now.shows], limit);
    if (ease === true) easy = [...easy, one];
    else if (ease === false) easy = [];
  }
  const enough = rules.signs.readySessions.value;
  if (easy.length < enough) return null;
  const stage = now.word ?? protocol.lowestWord;
  const ask = tier.view.oneLeg ? 'a therapist may check' : 'ready to check';
  const decided = tier.view.because[0]?.facts ?? [];
  return {
    kind: 'ready',
    words: `${easy.length} easy sessions in a row at ${stage}: ${ask} the next stage, ${next.word ?? next.id}`,
    because: [
      {
        rule: 'signs/ready',
        facts: [...decided, ...easy.map((s) => s.fact.id)],
        words: `Done with effort ${limit} of 10 or less and nothing wrong, since ${stage} was cleared; a check decides, not this line`,
      },
    ],
  };
}

/** Null when a session says nothing of it. */
function easeOf(session: Session, at: Activity, effortMost: number): boolean | null {
  const { outcome, events, effort } = session;
  if (outcome === 'not-done') return session.notDone?.group === 'said-no' ? false : null;
  if (outcome !== 'done' || events.length > 0) return false;
  if (!reaches(session, at) || effort === undefined) return null;
  return effort <= effortMost;
}
