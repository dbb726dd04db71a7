/** The title of the browser's tab: which page, of which ward, in the language of the screen (WCAG 2.4.2). */
import { watchEffect } from 'vue';
import type { Router } from 'vue-router';
import { useBoardStore } from '../sync/board-store.ts';
import { defineWords } from './words.ts';

const WORDS = {
  home: 'Wards and screens',
  'sign-in': 'Sign in',
  join: 'Join',
  pair: 'Pair this screen',
  parts: 'Parts of the screens',
  account: 'Account',
  'set-up': 'Set up a ward',
  wall: 'Wall',
  huddle: 'Huddle',
  day: 'Day',
  charge: 'Charge nurse',
  bedside: 'Bedside',
  round: 'Round',
  paper: 'Paper sheets',
  'round-acts': 'The round’s lists',
  fairness: 'Who was got up',
  stay: 'Stay',
  equipment: 'Equipment',
  coordinator: 'For the handling coordinator',
  concerns: 'Near misses and strain',
  'day-plan': 'Day plan',
  settings: 'Settings',
  accounts: 'Who can sign in',
  devices: 'Screens and devices',
  'access-log': 'Who looked',
  records: 'What is kept',
  glass: 'Openings from outside',
  nowhere: 'No such page',
} as const;
type Page = keyof typeof WORDS;

const say = defineWords('page-titles', {
  en: WORDS,
  de: {
    home: 'Stationen und Bildschirme',
    'sign-in': 'Anmelden',
    join: 'Mitmachen',
    pair: 'Bildschirm koppeln',
    parts: 'Teile der Bildschirme',
    account: 'Konto',
    'set-up': 'Station einrichten',
    wall: 'Wandtafel',
    huddle: 'Kurzbesprechung',
    day: 'Tag',
    charge: 'Schichtleitung',
    bedside: 'Am Bett',
    round: 'Runde',
    paper: 'Papierbögen',
    'round-acts': 'Listen der Runde',
    fairness: 'Wer aufstand',
    stay: 'Aufenthalt',
    equipment: 'Hilfsmittel',
    coordinator: 'Für die Transfer-Koordination',
    concerns: 'Beinahe-Ereignisse und Überlastung',
    'day-plan': 'Tagesplan',
    settings: 'Einstellungen',
    accounts: 'Wer sich anmelden kann',
    devices: 'Bildschirme und Geräte',
    'access-log': 'Wer hat nachgesehen',
    records: 'Was aufbewahrt wird',
    glass: 'Öffnungen von außen',
    nowhere: 'Keine solche Seite',
  },
});
const isPage = (name: unknown): name is Page => typeof name === 'string' && Object.hasOwn(WORDS, name);

/** Called once, at the start, when the stores are there. A page without a word of its own is "Footboard". */
export function keepPageTitle(router: Router): void {
  const board = useBoardStore();
  watchEffect(() => {
    const { name, params } = router.currentRoute.value;
    const ward = params['ward'] === undefined ? null : (board.board?.name ?? null);
    document.title = [isPage(name) ? say(name) : null, ward, 'Footboard']
      .filter((part) => part !== null)
      .join(' – ');
  });
}
