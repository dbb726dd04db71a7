import type { z } from 'zod';
import type { AidClass } from '@footboard/shared/capabilities/handling/values';
import { missedAid } from '@footboard/shared/capabilities/sessions/rules/planned-aid';
import type {
  Activity,
  AidNotUsedReason,
  NotDoneGroup,
  sessionEventKind,
} from '@footboard/shared/capabilities/sessions/values';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { MINUTE, toIso, type EpochMs } from '@footboard/shared/kernel/times';
import type { ReadingSlots } from '../assessments/reading-slots.ts';
import { sessionReadings, startOf } from './session-readings.ts';

export type Occasion = 'planned' | 'toilet' | 'wash' | 'meal';
export type SessionEventKind = z.infer<typeof sessionEventKind>;

/** What is on the session sheet before it is sent. Times are minutes ago, as a person says them. */
export interface SessionDraft {
  readonly activities: readonly Activity[];
  /** True while `activities` is only our suggestion: the first other chip replaces it. */
  readonly suggested: boolean;
  readonly occasion: Occasion;
  readonly minutesAgo: number;
  readonly minutesOutOfBed: number | null;
  readonly metres: number | null;
  readonly help: { readonly people: number; readonly aid: AidClass } | null;
  /** The plan's equipment was not used, and why, as far as somebody tapped it. */
  readonly notUsed: { readonly planned: AidClass; readonly because: AidNotUsedReason | null } | null;
  readonly effort: number | null;
  readonly breathless: number | null;
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  readonly events: readonly SessionEventKind[];
  readonly left: 'bed' | 'chair' | 'toilet-with-staff' | null;
  /** Minutes from now by which the person is back in bed. */
  readonly backInMinutes: number | null;
  readonly firstTimeUp: boolean;
  readonly slots: ReadingSlots;
  readonly said: string;
}

/** The activity people most often do here: the goal's, else the last one done, else none. */
export function usualActivity(stay: StayView | null): Activity | null {
  if (!stay) return null;
  return stay.today.goal?.activity ?? (stay.lastUp?.activity as Activity | undefined) ?? null;
}

export function startSession(stay: StayView | null): SessionDraft {
  const usual = usualActivity(stay);
  return {
    activities: usual ? [usual] : [],
    suggested: usual !== null,
    occasion: 'planned',
    minutesAgo: 0,
    minutesOutOfBed: null,
    metres: null,
    help: null,
    notUsed: null,
    effort: null,
    breathless: null,
    painBefore: null,
    painAfter: null,
    events: [],
    left: null,
    backInMinutes: null,
    firstTimeUp: stay?.firstTimeUpPending ?? false,
    slots: {},
    said: '',
  };
}

/** A tap on an activity chip. The first tap on another chip replaces the suggestion; later taps add and remove. */
export function tapActivity(draft: SessionDraft, activity: Activity): SessionDraft {
  if (draft.suggested) return { ...draft, activities: [activity], suggested: false };
  const has = draft.activities.includes(activity);
  return {
    ...draft,
    activities: has ? draft.activities.filter((a) => a !== activity) : [...draft.activities, activity],
  };
}

/** One tap says that it happened with care; a second tap takes it back. */
export const tapOccasion = (draft: SessionDraft, occasion: Exclude<Occasion, 'planned'>): SessionDraft => ({
  ...draft,
  occasion: draft.occasion === occasion ? 'planned' : occasion,
});

/**
 * Equipment of the plan that was not used: by what was used where that is on the sheet, else by the tap that said so.
 * @param planned what the plan has for the activities that are chosen now
 */
export function missedIn({ help, notUsed }: SessionDraft, planned: readonly AidClass[]): AidClass | null {
  if (help) return missedAid(planned, help.aid);
  return notUsed && planned.includes(notUsed.planned) ? notUsed.planned : null;
}

/** Data of `record-session` for a session that took place. `now` is the server's clock. An amount not given is left out, never sent as zero. */
export function sessionData(
  draft: SessionDraft,
  outcome: 'done' | 'part' | 'stopped',
  stay: string,
  now: EpochMs,
  planned: readonly AidClass[] = [],
): object {
  const missed = missedIn(draft, planned);
  const startedAt = startOf(draft, now);
  const readings = sessionReadings(draft.slots, startedAt);
  const given = {
    minutesOutOfBed: draft.minutesOutOfBed,
    metres: draft.metres,
    help: draft.help,
    aidNotUsed: missed && {
      planned: missed,
      ...(draft.notUsed?.because ? { because: draft.notUsed.because } : {}),
    },
    effort: draft.effort,
    breathless: draft.breathless,
    painBefore: draft.painBefore,
    painAfter: draft.painAfter,
    left: draft.left,
    backToBedBy:
      draft.left === 'chair' && draft.backInMinutes !== null
        ? toIso(now + draft.backInMinutes * MINUTE)
        : null,
  };
  return {
    stay,
    session: {
      outcome,
      occasion: draft.occasion,
      activities: draft.activities,
      startedAt: toIso(startedAt),
      events: draft.events,
      ...(readings.length ? { readings } : {}),
      firstTimeUp: draft.firstTimeUp,
      ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null)),
    },
    ...(draft.said.trim() ? { said: draft.said.trim() } : {}),
  };
}

/** Data of `record-session` for one that was offered or due and did not happen. */
export function notDoneData(
  stay: string,
  group: NotDoneGroup,
  example: string | null,
  occasion: Occasion,
  now: EpochMs,
): object {
  return {
    stay,
    session: {
      outcome: 'not-done',
      notDone: { group, ...(example ? { example } : {}) },
      occasion,
      activities: [],
      startedAt: toIso(now),
      events: [],
      firstTimeUp: false,
    },
  };
}

/**
 * Distances a ward walks without a tape, in metres. Invented round figures until a ward sets its
 * own landmarks; shown as "about".
 */
export const LANDMARKS: readonly {
  /** Key of its word. */
  readonly says: 'a-few-steps' | 'foot-of-bed' | 'bay-door' | 'to-toilet' | 'corridor';
  readonly metres: number;
}[] = [
  { says: 'a-few-steps', metres: 2 },
  { says: 'foot-of-bed', metres: 4 },
  { says: 'bay-door', metres: 8 },
  { says: 'to-toilet', metres: 12 },
  { says: 'corridor', metres: 40 },
];

/** Minutes until the person should be back in bed, unless the ward's rules say otherwise. */
export const CHAIR_SPELL_MINUTES = 60;
