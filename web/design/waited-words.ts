import { defineWords } from '../i18n/words.ts';

/** What a page is waiting for, as PageState says it: "Asking for {of}." and "{of}: wird abgefragt." */
export const waitedFor = defineWords('waited-for', {
  en: {
    wards: 'the list of wards',
    list: 'the list',
    round: 'the round',
    expected: 'who is expected',
    'people-on': 'who is on',
    'day-plan': 'the day plan',
    equipment: 'the list of equipment',
    concerns: 'near misses and strain',
    sheets: 'the list of sheets',
    staff: 'the staff list',
    documents: 'the protocol and the rules',
    accounts: 'the accounts',
    devices: 'the list of screens and devices',
    log: 'the log',
    openings: 'the list of openings',
  },
  de: {
    wards: 'Liste der Stationen',
    list: 'Liste',
    round: 'Runde',
    expected: 'Erwartete Zugänge',
    'people-on': 'Wer da ist',
    'day-plan': 'Tagesplan',
    equipment: 'Liste der Hilfsmittel',
    concerns: 'Beinahe-Ereignisse und Überlastung',
    sheets: 'Liste der Bögen',
    staff: 'Personalliste',
    documents: 'Protokoll und Regeln',
    accounts: 'Konten',
    devices: 'Liste der Bildschirme und Geräte',
    log: 'Zugriffsprotokoll',
    openings: 'Liste der Öffnungen',
  },
});
