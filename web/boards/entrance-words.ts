import { defineWords } from '../i18n/words.ts';

export const say = defineWords('entrance', {
  en: {
    'charge-nurse': 'Charge nurse',
    'charge-nurse-says': 'who looks after whom, who is expected, the handover on paper',
    'equipment-says': 'lifts, slings and other aids: which can be used now',
    'storage-on-this-machine-is-the':
      'Storage on this machine is the built-in one, for trial: a power cut may lose the last seconds. A ward in service sets DATABASE_URL to a PostgreSQL server.',
    'the-server-prints-a-one-time':
      'The server prints a one-time link when it starts. Whoever opens that link becomes the first administrator and sets up the first ward.',
    'you-are-on-no-ward-staff':
      "You are on no ward's staff list. Ask the charge nurse of your ward to add you.",
    'who-to-speak-about-first-for': 'who to speak about first, for the morning review',
    'every-bed-at-once-for-the': 'every bed at once, for the screen on the wall',
    'beds-clock': '{beds} beds, clock {zone}',
    'look-before-you-move-record-what': 'look before you move; record what was done',
    'a-wall-or-a-device-that': 'a wall, or a device that the ward shares',
    'on-your-own-phone-or-workstation': 'on your own phone or workstation',
    'beds-and-the-staff-list': 'beds and the staff list',
    'nobody-can-sign-in-yet': 'Nobody can sign in yet',
    'set-up-another-ward': 'Set up another ward',
    'pair-this-screen': 'Pair this screen',
    'no-ward-yet': 'No ward yet',
    settings: 'Settings',
    bedside: 'Bedside',
    'sign-in': 'Sign in',
    huddle: 'Huddle',
    wall: 'Wall',
    'the-server-prints-a-one-time-2':
      'The server prints a one-time link when it starts. Whoever opens that link becomes the first administrator.',
    'nobody-was-signed-in-try-again':
      'Nobody was signed in. Try again, or sign in with a sign-in name and password of this server.',
    'try-again-in-a-minute-or':
      'Try again in a minute, or sign in with a sign-in name and password of this server.',
    'ask-whoever-keeps-the-groups-or':
      'Ask whoever keeps the groups, or an administrator of this server, to add you.',
    'the-single-sign-on-provider-does': 'The single sign-on provider does not answer',
    'your-groups-give-you-no-role': 'Your groups give you no role here',
    'pair-this-screen-with-a-ward': 'Pair this screen with a ward',
    'single-sign-on-did-not-work': 'Single sign-on did not work',
    'the-address-may-be-mistyped-or': 'The address may be mistyped, or the page has moved.',
    'choose-a-ward-and-a-screen': 'Choose a ward and a screen',
    'there-is-no-such-page': 'There is no such page',
    'you-set-up-the-wards-of':
      'You set up the wards of this server and decide who else may keep them. There is no other password than the one you choose here.',
    'a-link-works-once-and-for':
      'A link works once and for a limited time. Whoever keeps the accounts of your ward can give you a new one.',
    'six-to-eight-digits-for-signing':
      "Six to eight digits, for signing on the ward's shared devices. You may leave it out and choose it later.",
    'at-least-12-characters-a-few':
      'At least 12 characters. A few words you can remember are better than one odd one.',
    'what-you-will-type-to-sign': 'What you will type to sign in: at least 3 characters, no spaces.',
    'if-that-is-not-you-close': '. If that is not you, close this page and give the link back.',
    'open-the-link-again-whole-as': 'Open the link again, whole, as it was given to you.',
    'as-others-on-the-ward-will': 'As others on the ward will read it.',
    'something-is-missing-or-too-short': 'Something is missing or too short.',
    'this-needs-the-whole-link': 'This needs the whole link',
    'the-first-administrator': 'The first administrator',
    'see-the-marked-fields': 'See the marked fields.',
    'reading-the-link': 'Reading the link…',
    'not-complete-yet': 'Not complete yet',
    'this-link-is-for': 'This link is for',
    'join-and-sign-in': 'Join and sign in',
    'join-footboard': 'Join Footboard',
    'sign-in-name': 'Sign-in name',
    'short-code': 'Short code',
    'your-name': 'Your name',
    password: 'Password',
    wait: 'Wait',
    'somebody-who-looks-after-the-ward':
      "Somebody who looks after the ward's screens signs in on their own screen, opens the ward's settings, then Devices, and types this code there.",
    'the-code-works-until-leave-this':
      'The code works until {wardtime}. Leave this page open: it goes to the ward by itself.',
    'this-screen-is-paired-already-pairing':
      'This screen is paired already ({place}). Pairing it again replaces that.',
    'sign-in-is-off-here-every':
      'Sign-in is off here: every screen may show every ward, and none needs to be paired.',
    'a-phone-or-workstation-of-the': 'a phone or workstation of the ward; each person signs with their code',
    'shows-one-ward-to-whoever-stands': 'shows one ward to whoever stands before it; nobody enters anything',
    'that-code-has-run-out-or': 'That code has run out, or somebody turned it down.',
    'the-code-is': 'The code is {code}',
    'this-will-be-a-shared-device': 'This will be a shared device.',
    'what-is-this-screen-for': 'What is this screen for?',
    'not-this-choose-again': 'Not this: choose again',
    'this-will-be-a-wall': 'This will be a wall.',
    'asking-for-a-code': 'Asking for a code…',
    'a-shared-device': 'A shared device',
    'sign-in-instead': 'Sign in instead',
    'show-a-new-code': 'Show a new code',
    'try-again': 'Try again',
    'a-wall': 'A wall',
  },
  de: {
    'charge-nurse': 'Schichtleitung',
    'charge-nurse-says': 'wer wen betreut, wer erwartet wird, und die Übergabe auf einer Seite',
    'equipment-says': 'Lifter, Hebetücher und andere: was jetzt benutzbar ist',
    'storage-on-this-machine-is-the':
      'Dieser Rechner speichert mit dem eingebauten Speicher, zum Erproben: ein Stromausfall kann die letzten Sekunden kosten. Eine Station im Betrieb setzt DATABASE_URL auf einen PostgreSQL-Server.',
    'the-server-prints-a-one-time':
      'Der Server zeigt beim Start einen Einmal-Link. Wer ihn öffnet, wird die erste Verwaltung und richtet die erste Station ein.',
    'you-are-on-no-ward-staff':
      'Auf keiner Personalliste. Die Schichtleitung der Station um Aufnahme bitten.',
    'who-to-speak-about-first-for': 'über wen zuerst sprechen, für die Besprechung am Morgen',
    'every-bed-at-once-for-the': 'alle Betten auf einmal, für den Bildschirm an der Wand',
    'beds-clock': '{beds} Betten, Uhr {zone}',
    'look-before-you-move-record-what': 'erst ansehen, dann bewegen; erfassen, was gemacht wurde',
    'a-wall-or-a-device-that': 'eine Wandtafel oder ein gemeinsames Gerät der Station',
    'on-your-own-phone-or-workstation': 'auf dem eigenen Telefon oder Arbeitsplatz',
    'beds-and-the-staff-list': 'Betten und Personalliste',
    'nobody-can-sign-in-yet': 'Noch kann sich niemand anmelden',
    'set-up-another-ward': 'Weitere Station einrichten',
    'pair-this-screen': 'Diesen Bildschirm koppeln',
    'no-ward-yet': 'Noch keine Station',
    settings: 'Einstellungen',
    bedside: 'Am Bett',
    'sign-in': 'Anmelden',
    huddle: 'Kurzbesprechung',
    wall: 'Wandtafel',
    'the-server-prints-a-one-time-2':
      'Der Server zeigt beim Start einen Einmal-Link. Wer ihn öffnet, wird die erste Verwaltung.',
    'nobody-was-signed-in-try-again':
      'Niemand wurde angemeldet. Noch einmal versuchen, oder mit Anmeldename und Passwort dieses Servers anmelden.',
    'try-again-in-a-minute-or':
      'In einer Minute noch einmal versuchen, oder mit Anmeldename und Passwort dieses Servers anmelden.',
    'ask-whoever-keeps-the-groups-or': 'Wer die Gruppen führt oder die Verwaltung soll das Konto hinzufügen.',
    'the-single-sign-on-provider-does': 'Die zentrale Anmeldung antwortet nicht',
    'your-groups-give-you-no-role': 'Die Gruppen des Kontos geben hier keine Rolle',
    'pair-this-screen-with-a-ward': 'Diesen Bildschirm mit einer Station koppeln',
    'single-sign-on-did-not-work': 'Die zentrale Anmeldung hat nicht geklappt',
    'the-address-may-be-mistyped-or': 'Die Adresse ist vielleicht vertippt, oder die Seite ist umgezogen.',
    'choose-a-ward-and-a-screen': 'Station und Bildschirm wählen',
    'there-is-no-such-page': 'Diese Seite gibt es nicht',
    'you-set-up-the-wards-of':
      'Dieses Konto richtet die Stationen ein und bestimmt, wer sie noch führen darf. Es gibt kein anderes Passwort als das hier gewählte.',
    'a-link-works-once-and-for':
      'Ein Link gilt einmal und begrenzte Zeit. Wer die Konten der Station führt, kann einen neuen geben.',
    'six-to-eight-digits-for-signing':
      'Sechs bis acht Ziffern, zum Unterschreiben auf gemeinsamen Geräten. Geht auch später.',
    'at-least-12-characters-a-few':
      'Mindestens 12 Zeichen. Ein paar merkbare Wörter sind besser als ein seltsames.',
    'what-you-will-type-to-sign': 'Wird zum Anmelden eingegeben: mindestens 3 Zeichen, keine Leerzeichen.',
    'if-that-is-not-you-close': '. Wer das nicht ist, schließt diese Seite und gibt den Link zurück.',
    'open-the-link-again-whole-as': 'Link noch einmal ganz öffnen, wie er gegeben wurde.',
    'as-others-on-the-ward-will': 'Wie ihn andere auf der Station lesen.',
    'something-is-missing-or-too-short': 'Etwas fehlt oder ist zu kurz.',
    'this-needs-the-whole-link': 'Dafür braucht es den ganzen Link',
    'the-first-administrator': 'Die erste Verwaltung',
    'see-the-marked-fields': 'Siehe die markierten Felder.',
    'reading-the-link': 'Link wird gelesen …',
    'not-complete-yet': 'Noch nicht vollständig',
    'this-link-is-for': 'Dieser Link ist für',
    'join-and-sign-in': 'Mitmachen und anmelden',
    'join-footboard': 'Bei Footboard mitmachen',
    'sign-in-name': 'Anmeldename',
    'short-code': 'Kurzer Code',
    'your-name': 'Name',
    password: 'Passwort',
    wait: 'Warten',
    'somebody-who-looks-after-the-ward':
      'Wer die Bildschirme der Station betreut, meldet sich am eigenen Bildschirm an, öffnet Einstellungen, dann Bildschirme und Geräte, und gibt dort diesen Code ein.',
    'the-code-works-until-leave-this':
      'Der Code gilt bis {wardtime}. Diese Seite offen lassen: sie geht von selbst zur Station.',
    'this-screen-is-paired-already-pairing':
      'Dieser Bildschirm ist schon gekoppelt ({place}). Neu koppeln ersetzt das.',
    'sign-in-is-off-here-every':
      'Die Anmeldung ist hier aus: jeder Bildschirm darf jede Station zeigen, keiner muss gekoppelt werden.',
    'a-phone-or-workstation-of-the':
      'ein Telefon oder Arbeitsplatz der Station; jede Person unterschreibt mit ihrem Code',
    'shows-one-ward-to-whoever-stands': 'zeigt eine Station allen, die davor stehen; niemand gibt etwas ein',
    'that-code-has-run-out-or': 'Dieser Code ist abgelaufen, oder jemand hat ihn abgelehnt.',
    'the-code-is': 'Der Code ist {code}',
    'this-will-be-a-shared-device': 'Das wird ein gemeinsames Gerät.',
    'what-is-this-screen-for': 'Wofür ist dieser Bildschirm?',
    'not-this-choose-again': 'Nicht das: neu wählen',
    'this-will-be-a-wall': 'Das wird eine Wandtafel.',
    'asking-for-a-code': 'Code wird geholt …',
    'a-shared-device': 'Ein gemeinsames Gerät',
    'sign-in-instead': 'Stattdessen anmelden',
    'show-a-new-code': 'Neuen Code zeigen',
    'try-again': 'Noch einmal versuchen',
    'a-wall': 'Eine Wandtafel',
  },
});
