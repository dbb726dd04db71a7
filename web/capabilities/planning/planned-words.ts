/** What a visit of the accepted plan says on a phone. Apart from the words of the plan's own page: phones load these alone. */
import type { PlannedView } from '@footboard/shared/capabilities/board/activity-view';
import { defineWords } from '../../i18n/words.ts';
import { told } from '../../i18n/told.ts';

export const say = defineWords('planned', {
  en: {
    title: 'Planned',
    'for-you': 'Planned for you',
    'for-you-about':
      'By the day plan that was accepted. Look at the person before you go: the plan of how to move them, holds and the bedside come first.',
    planned: 'planned {what}',
    with: '{time} with {names}',
    alone: '{time}, you alone',
    names: '{a} and {b}',
    check: 'staged check',
    held: 'HELD, not to be done: {what}. {why}',
    bed: 'Bed {label}: {what}',
    arrival: 'Expected arrival: first check {time}, you alone',
    'arrival-with': 'Expected arrival: first check {time} with {names}',
    go: 'I go as planned, {what}',
    accepted: 'Accepted {time} by {name}.',
    ahead: '{n} visit still ahead | {n} visits still ahead',
    'held-now': '{n} of them held',
    passed: '{n} passed with nothing recorded',
    unplaced: '{n} found no place',
    'all-placed': 'nothing is without a place',
    none: 'No plan is accepted for this day.',
    plan: 'Day plan',
  },
  de: {
    title: 'Geplant',
    'for-you': 'Für dich geplant',
    'for-you-about':
      'Nach dem angenommenen Tagesplan. Vor dem Gehen auf die Person sehen: wie bewegt wird, Stopps und wer am Bett ist gehen vor.',
    planned: 'geplant {what}',
    with: '{time} mit {names}',
    alone: '{time}, allein',
    names: '{a} und {b}',
    check: 'Stufenprüfung',
    held: 'GESTOPPT, nicht zu machen: {what}. {why}',
    bed: 'Bett {label}: {what}',
    arrival: 'Erwartete Ankunft: erste Prüfung {time}, allein',
    'arrival-with': 'Erwartete Ankunft: erste Prüfung {time} mit {names}',
    go: 'Ich gehe wie geplant, {what}',
    accepted: 'Angenommen {time} von {name}.',
    ahead: '{n} Besuch steht noch aus | {n} Besuche stehen noch aus',
    'held-now': '{n} davon gestoppt',
    passed: '{n} vorbei, nichts erfasst',
    unplaced: '{n} ohne Platz',
    'all-placed': 'keiner ohne Platz',
    none: 'Für diesen Tag ist kein Plan angenommen.',
    plan: 'Tagesplan',
  },
});

interface Speaks {
  readonly time: (at: number) => string;
  readonly nameOf: (staff: string) => string;
  /** Who holds the phone; null: nobody has said. */
  readonly me: string | null;
}

/** "10:15 with Lena, Lift 2": for one of the two the other one alone is named. */
export function plannedSays(one: PlannedView, { time, nameOf, me }: Speaks): string {
  const mine = me !== null && one.crew.some((staff) => staff === me);
  const [a, b] = one.crew.filter((staff) => !mine || staff !== me).map(nameOf);
  const at = time(one.from);
  const who = a === undefined ? say('alone', { time: at }) : b === undefined ? a : say('names', { a, b });
  return [
    a === undefined ? who : say('with', { time: at, names: who }),
    ...(one.kind === 'check' ? [say('check')] : []),
    ...one.with,
  ].join(', ');
}

/** The same, as held where something stands against it by now. */
export function plannedLine(one: PlannedView, speaks: Speaks): string {
  const what = plannedSays(one, speaks);
  return one.stopped ? say('held', { what, why: told(one.stopped.words) }) : what;
}
