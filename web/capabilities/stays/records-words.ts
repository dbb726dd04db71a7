/** Words and dates for whoever keeps the records. */
import type { z } from 'zod';
import type { eraseStayRequest } from '@footboard/shared/wire/access';
import { speaks } from '../../i18n/language.ts';
import { defineWords } from '../../i18n/words.ts';

/** What the server writes where a name or text was erased. */
export const TEXT_REMOVED = '(text removed)';

export const say = defineWords('records', {
  en: {
    'retention-over': 'Kept long enough',
    'asked-by-person': 'The person asked for it',
    'entered-by-mistake': 'Entered by mistake',
    days: '{n} day | {n} days',
    why: 'Why',
    'why-erased': 'Why it is erased',
    choose: 'Choose the reason.',
    'few-words': 'In a few words',
    'few-words-hint': 'Kept with your name in the log of who looked. Leave out names.',
    'too-long': 'Say it in {n} characters or fewer',
    'say-why': 'Say in a few words why',
    'no-undo': 'This cannot be undone',
    nobody: 'Nobody can bring the {what} back, not even you.',
    'go-back': 'No, go back',
    erasing: 'Erasing',
    'erase-yes': 'Yes, erase for good',
    erase: 'Erase the {what}',
    title: '{ward}: what is kept',
    'kept-title': 'Stays kept too long',
    'gone-title': 'Staff who have left',
    'what-is-kept': 'what is kept',
    'no-time': 'No time is set, so no stay is too old. Whoever runs Footboard sets it in days: KEEP_DAYS.',
    'to-keep':
      'Names and texts are to be kept for {days} after a stay has ended. Nothing is erased by itself: open the stay, look, and erase it there.',
    none: 'No stay is kept longer than that.',
    ended: 'Ended {date}',
    open: 'Open the stay',
    'open-one': 'Open the stay that ended {date}',
    already: 'Erased already: {n}',
    'erased-list': 'Stays that were erased',
    'ended-erased': 'Ended {date}, names and texts erased',
    'open-erased': 'Open the erased stay that ended {date}',
    'for-records': 'For the records',
    'hand-over': 'Hand over everything there is',
    'hand-over-about':
      'One file with the person, every entry in words and who made it, and how to check that nothing was changed. That you took it out is recorded.',
    'not-ended':
      'Names and texts can be erased once the stay has ended. One entered by mistake is ended first.',
    'erase-stay': 'Erase names and texts',
    'erase-title': 'Erase names and texts of this stay',
    'names-texts': 'names and texts',
    goes: 'What goes:',
    'goes-stay':
      'the name, the date of birth, the record number, notes and every other text. They read “(text removed)” for everybody, at once, and no words can be added any more.',
    stays: 'What stays:',
    'stays-stay': 'every entry with its time and who made it. The log can still be checked from end to end.',
    'not-reached': 'What it does not reach:',
    'not-reached-stay':
      'the key they are sealed with is destroyed here, but a backup from before still holds it, and a file that was handed over stays where it is. Tell whoever keeps the backups.',
    another: 'Another stay of the same person is erased on its own page.',
    'name-erased': 'The name is erased.',
    'reading-staff': 'Reading the staff list…',
    'nobody-gone': 'Nobody on the staff list is marked as gone.',
    'no-longer': 'No longer active',
    nameless: 'name erased',
    'erase-name': 'Erase the name',
    'erase-name-of': 'Erase the name of {name}',
    name: 'name',
    'goes-name':
      'the name, on every ward of this server, and the account with it. Where it stood, it reads “(text removed)”.',
    'stays-name':
      'everything they entered, with its time and role, under an id without a name. The log can still be checked from end to end.',
    'not-reached-name':
      'a backup from before, and files that were handed over. Tell whoever keeps the backups.',
  },
  de: {
    'retention-over': 'Lange genug aufbewahrt',
    'asked-by-person': 'Die Person hat darum gebeten',
    'entered-by-mistake': 'Irrtümlich eingetragen',
    days: '{n} Tag | {n} Tage',
    why: 'Grund',
    'why-erased': 'Grund der Löschung',
    choose: 'Grund wählen.',
    'few-words': 'In wenigen Worten',
    'few-words-hint': 'Wird mit dem eigenen Namen im Zugriffsprotokoll aufbewahrt. Keine Namen nennen.',
    'too-long': 'Höchstens {n} Zeichen',
    'say-why': 'In wenigen Worten sagen, warum',
    'no-undo': 'Das lässt sich nicht rückgängig machen',
    nobody: 'Niemand kann {what} zurückholen.',
    'go-back': 'Nein, zurück',
    erasing: 'Wird gelöscht',
    'erase-yes': 'Ja, endgültig löschen',
    erase: '{what} löschen',
    title: '{ward}: was aufbewahrt wird',
    'kept-title': 'Zu lange aufbewahrte Aufenthalte',
    'gone-title': 'Ausgeschiedenes Personal',
    'what-is-kept': 'Was aufbewahrt wird',
    'no-time':
      'Keine Frist gesetzt, also ist kein Aufenthalt zu alt. Wer Footboard betreibt, setzt sie in Tagen: KEEP_DAYS.',
    'to-keep':
      'Namen und Texte werden nach dem Ende eines Aufenthalts {days} aufbewahrt. Nichts löscht sich von selbst: Aufenthalt öffnen, ansehen, dort löschen.',
    none: 'Kein Aufenthalt wird länger aufbewahrt.',
    ended: 'Beendet am {date}',
    open: 'Aufenthalt öffnen',
    'open-one': 'Aufenthalt öffnen, beendet am {date}',
    already: 'Schon gelöscht: {n}',
    'erased-list': 'Gelöschte Aufenthalte',
    'ended-erased': 'Beendet am {date}, Namen und Texte gelöscht',
    'open-erased': 'Gelöschten Aufenthalt öffnen, beendet am {date}',
    'for-records': 'Für die Akten',
    'hand-over': 'Alles Vorhandene herausgeben',
    'hand-over-about':
      'Eine Datei mit der Person, jedem Eintrag in Worten und von wem er ist, und wie sich prüfen lässt, dass nichts verändert wurde. Die Herausgabe wird protokolliert.',
    'not-ended':
      'Namen und Texte lassen sich löschen, wenn der Aufenthalt beendet ist. Ein irrtümlicher wird erst beendet.',
    'erase-stay': 'Namen und Texte löschen',
    'erase-title': 'Namen und Texte dieses Aufenthalts löschen',
    'names-texts': 'Namen und Texte',
    goes: 'Gelöscht wird:',
    'goes-stay':
      'Name, Geburtsdatum, Aktennummer, Notizen und jeder andere Text. Für alle steht dort sofort „(Text entfernt)“, und es kommt kein Text mehr hinzu.',
    stays: 'Es bleibt:',
    'stays-stay':
      'jeder Eintrag mit Zeit und von wem er ist. Das Protokoll lässt sich weiter lückenlos prüfen.',
    'not-reached': 'Nicht erreicht wird:',
    'not-reached-stay':
      'Der Schlüssel wird hier vernichtet, eine frühere Sicherung enthält ihn aber noch, und eine herausgegebene Datei bleibt, wo sie ist. Zuständige für die Sicherungen informieren.',
    another: 'Ein anderer Aufenthalt derselben Person wird auf seiner eigenen Seite gelöscht.',
    'name-erased': 'Der Name ist gelöscht.',
    'reading-staff': 'Die Personalliste wird gelesen …',
    'nobody-gone': 'Niemand auf der Personalliste ist als ausgeschieden vermerkt.',
    'no-longer': 'Nicht mehr aktiv',
    nameless: 'Name gelöscht',
    'erase-name': 'Namen löschen',
    'erase-name-of': 'Namen löschen: {name}',
    name: 'Name',
    'goes-name':
      'der Name auf jeder Station dieses Servers und das Konto dazu. Wo er stand, steht „(Text entfernt)“.',
    'stays-name':
      'alles Eingetragene mit Zeit und Rolle unter einer Kennung ohne Namen. Das Protokoll lässt sich weiter lückenlos prüfen.',
    'not-reached-name':
      'eine frühere Sicherung und herausgegebene Dateien. Zuständige für die Sicherungen informieren.',
  },
});
type EraseReason = z.infer<typeof eraseStayRequest>['reason'];
export const eraseReason = (reason: EraseReason): string => say(reason);

/** "25 November 2026" on the ward's clock: what is kept too long is older than a date without its year tells. */
export const wardFullDate = (at: number, zone: string): string =>
  new Intl.DateTimeFormat(speaks.value === 'de' ? 'de-DE' : 'en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: zone,
  }).format(at);

export const days = (n: number): string => say('days', { n }, n);
