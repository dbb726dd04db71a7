/** How far a plan is to be believed, and when the next check is due, hour by hour, as it was read before. */
import { heldAgainst, telling } from '../../../kernel/told.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  confirm,
  hours,
  hold,
  order,
  recordOf,
  session,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';
import { change, named, role, told, type History } from './told-stays.testkit.ts';

const from = (where: string): Told => ({
  ...named(begun(), 'begun'),
  payload: { ...(begun().payload as object), from: where },
});
const says = (waitsForHelp: string) => ({ cooperation: { waitsForHelp, followsInstructions: 'yes' } });
const walked = (at: number, id = `walked-${at}`) => named(check('walk', at), id);
const sat = (at: number, id = `sat-${at}`) => named(check('edge', at), id);
const by = (one: Told, who: 'aide' | 'therapist') => role(one, who);
const scope = (at: number, kind: string) =>
  told(
    'scope-set',
    at,
    kind === 'clinicians-plan'
      ? { scope: kind, fence: 'traction', plan: { ref: 'text-1' } }
      : { scope: kind },
    `scope-${at}`,
  );
const off = (at: number, back?: number): History => [
  told('went-off-ward', at, { reason: 'test' }, `off-${at}`),
  ...(back === undefined ? [] : [told('came-back', back, {}, `back-${back}`)]),
];
const asleep = (at: number) =>
  named(
    session(at, { outcome: 'not-done', activities: [], notDone: { group: 'bad-moment', example: 'sleep' } }),
    `asleep-${at}`,
  );
const fell = (at: number) => named(trigger('fall', at), `fell-${at}`);
const every = (last: number, each: number, one: (at: number) => Told): History =>
  Array.from({ length: Math.floor(last / each) }, (_, i) => one(1 + i * each));

const STAYS: Readonly<Record<string, History>> = {
  'only arrived': [],
  'checked once': [walked(1)],
  'checked once by an aide': [by(walked(1), 'aide')],
  'checked, then confirmed': [walked(1, 'check'), named(confirm(8, 'check'), 'seen')],
  'checked, then confirmed by an aide': [walked(1, 'check'), named(confirm(8, 'check', 'aide'), 'seen')],
  'checked twice, the first confirmed': [
    walked(1, 'first'),
    sat(2, 'second'),
    named(confirm(8, 'first'), 'seen'),
  ],
  'walked, looked at in bed, the first confirmed': [
    walked(1, 'first'),
    by(sat(2, 'second'), 'aide'),
    named(confirm(8, 'first'), 'seen'),
  ],
  'walked, then a check of nothing, that confirmed': [
    walked(1, 'first'),
    named(check('clear', 2, { clear: { outcome: 'met' } }), 'second'),
    named(confirm(8, 'second'), 'seen'),
  ],
  'confirmed before any check': [named(confirm(1, 'no-check'), 'seen')],
  'checked every ten hours': every(74, 10, walked),
  'checked every ten hours, less once': [
    ...every(74, 10, walked).slice(0, 3),
    sat(31),
    ...every(74, 10, walked).slice(4),
  ],
  'checked every ten hours, fell once': [...every(74, 10, walked), fell(25)].toSorted(
    (a, b) => a.at! - b.at!,
  ),
  'checked every ten hours, fell at the last check': [...every(61, 10, walked), fell(51)],
  'checked every ten hours by two': every(74, 10, (at) =>
    at % 20 === 1 ? walked(at) : by(walked(at), 'therapist'),
  ),
  'checked, fell': [walked(1), fell(4)],
  'checked, fell, checked': [walked(1), fell(4), walked(6)],
  'checked, fell, checked less far': [walked(1), fell(4), sat(6)],
  'checked, came back from surgery': [walked(1), named(trigger('return-from-surgery', 4), 'surgery')],
  'came back from surgery, then checked': [
    walked(1),
    named(trigger('return-from-surgery', 4), 'surgery'),
    walked(6),
  ],
  'arrived from theatre, checked': [sat(1)],
  'came back from dialysis': [walked(1), named(trigger('return-from-dialysis', 4), 'dialysis')],
  sedated: [walked(1), named(trigger('sedation', 4), 'sedated')],
  'block on and off': [walked(1), named(trigger('block-on', 4), 'on'), named(trigger('block-off', 9), 'off')],
  'waits at times': [named(check('walk', 1, {}, says('varies')), 'check')],
  'waits at times, then always': [named(check('walk', 1, {}, says('varies')), 'check'), walked(6)],
  'waits at times, said by an aide': [
    walked(1),
    by(named(check('walk', 2, {}, says('varies')), 'aide'), 'aide'),
  ],
  'off the ward': [walked(1), ...off(4)],
  'off the ward and back before it ran out': [walked(1), ...off(4, 6)],
  'off the ward while it ran out': [walked(1), ...off(10, 16)],
  'off the ward twice': [walked(1), ...off(3, 4), ...off(12, 15)],
  'off the ward before the first check': [...off(1, 6)],
  'asleep when it ran out': [walked(1), asleep(14.2)],
  'asleep before it ran out': [walked(1), asleep(12)],
  'asleep before any check': [asleep(5)],
  'asleep, then up': [walked(1), asleep(14.2), named(session(14.8), 'up')],
  'asleep, and fell before': [walked(1), fell(4), asleep(14.2)],
  'comfort plan': [walked(1), scope(3, 'comfort')],
  'comfort plan, fell': [walked(1), scope(3, 'comfort'), fell(4)],
  'comfort plan and nothing else': [scope(1, 'comfort')],
  "clinician's plan": [walked(1), scope(3, 'clinicians-plan')],
  "clinician's plan, fell, fainted": [
    walked(1),
    scope(3, 'clinicians-plan'),
    fell(4),
    named(trigger('faint', 8), 'fainted'),
  ],
  "clinician's plan, two orders of one time": [
    scope(1, 'clinicians-plan'),
    named(order(3, { about: 'activity', most: 'chair' }), 'chair'),
    named(order(3, { about: 'activity', most: 'bed' }), 'bed'),
  ],
  'comfort plan, then the staged check': [walked(1), scope(3, 'comfort'), scope(8, 'staged')],
  'two orders of one time': [
    walked(1),
    named(order(3, { about: 'activity', most: 'chair' }), 'chair'),
    named(order(3, { about: 'activity', most: 'bed' }), 'bed'),
  ],
  'walked, then two stages less': [walked(1), named(check('stand', 9), 'stood')],
  'walked, then one stage less': [walked(1), named(check('turn', 9), 'turned')],
  'walked, then three stages less, then back': [walked(1), sat(9), walked(13.2)],
  'walked, then less long after': [walked(1), sat(26)],
  'walked, then less, that confirmed': [walked(1), sat(9, 'sat'), named(confirm(14.2, 'sat'), 'seen')],
  'walked, less, less again': [
    walked(1),
    named(check('stand', 9), 'stood'),
    named(check('clear', 13.2), 'lay'),
  ],
  'walked, then not met twice': [
    walked(1),
    named(check('stand', 9, { stand: { outcome: 'not-met' } }), 'failed'),
    named(check('edge', 13.2, { edge: { outcome: 'not-met' } }), 'failed-again'),
  ],
  'walked, a hold, then less': [walked(1), hold(5, 'walking', 30), sat(9)],
  'less, then walked, then less': [sat(1), walked(5), sat(9)],
};
const HOURS = [0.5, 1, 3.5, 4, 5, 9, 10.5, 12.5, 13, 13.5, 14, 14.5, 16, 22, 26, 28, 38, 50.5, 62, 74];

/** A ward that asks for a check in every shift. */
const { eachShift } = DEFAULT_RULES.validity;
const EACH_SHIFT = {
  ...ward,
  rules: {
    ...DEFAULT_RULES,
    validity: { ...DEFAULT_RULES.validity, eachShift: { ...eachShift, value: true } },
  },
};

function hourly(history: History, of = ward): string {
  const entries = history[0]?.type === 'stay-begun' ? history : [named(begun(), 'begun'), ...history];
  let before: string[] = [];
  return HOURS.flatMap((h) => {
    const { view, nextChange } = evaluateStay(recordOf(entries), of, calendar, hours(h));
    const { trust, due, signs } = view;
    const until = nextChange === null ? null : Math.round((nextChange - hours(0)) / 36_000) / 100;
    const now = telling({ trust, due, signs, until });
    const lines = change(before, now);
    before = now;
    return lines.length === 0 ? [] : [`at hour ${h}`, ...lines.map((line) => `  ${line}`)];
  }).join('\n');
}

heldAgainst(new URL('told-trust.txt', import.meta.url), [
  ...Object.entries(STAYS).map(
    ([title, history]) =>
      [title, () => hourly(title.includes('theatre') ? [from('theatre'), ...history] : history)] as const,
  ),
  ...[
    'checked once',
    'checked every ten hours',
    'off the ward while it ran out',
    'asleep when it ran out',
    'sedated',
  ].map((title) => [`${title}, a check in every shift`, () => hourly(STAYS[title]!, EACH_SHIFT)] as const),
]);
