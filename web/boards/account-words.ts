import { defineWords } from '../i18n/words.ts';

export const say = defineWords('account-page', {
  en: {
    'your-sign-in-ends-after-a':
      'Your sign-in ends after a while without use, and when your role changes. What is not sent yet stays on this device.',
    'leave-it-empty-if-you-only':
      'Leave it empty if you only ever sign in with {label}, within 5 minutes of signing in.',
    'change-only-what-you-want-to':
      'Change only what you want to change. A new password ends your sign-in on every other screen.',
    'you-sign-with-your-short-code': 'You sign with your short code on this device until {wardtime}.',
    'you-are-on-no-ward-staff':
      "You are on no ward's staff list. Ask the charge nurse of your ward to add you.",
    'changed-every-sign-in-of-yours':
      'Changed. Every sign-in of yours has ended: sign in with the new password.',
    'scan-it-here-to-sign-by': 'Scan it here, to sign by badge and code on shared devices.',
    'six-to-eight-digits-for-signing': 'Six to eight digits, for signing on shared devices.',
    'nothing-to-change-yet-fill-in': 'Nothing to change yet: fill in what is to be new.',
    'sign-in-is-off-here-there': 'Sign-in is off here: there are no accounts.',
    'nobody-is-signed-in-here': 'Nobody is signed in here.',
    'at-least-12-characters': 'At least 12 characters.',
    'your-password-now': 'Your password now',
    'wards-and-screens': 'Wards and screens',
    'how-you-sign-in': 'How you sign in',
    'where-you-work': 'Where you work',
    'new-short-code': 'New short code',
    'your-account': 'Your account',
    'new-password': 'New password',
    'this-device': 'this device',
    'change-it': 'Change it',
    changed: 'Changed.',
    'sign-out': 'Sign out',
    'sign-in': 'Sign in',
    badge: 'Badge',
    done: 'Done',
    wait: 'Wait',
  },
  de: {
    'your-sign-in-ends-after-a':
      'Die Anmeldung endet nach einer Weile ohne Gebrauch und wenn sich die Rolle ändert. Was noch nicht gesendet ist, bleibt auf diesem Gerät.',
    'leave-it-empty-if-you-only':
      'Leer lassen, wer sich nur mit {label} anmeldet, binnen 5 Minuten nach der Anmeldung.',
    'change-only-what-you-want-to':
      'Nur ändern, was neu sein soll. Ein neues Passwort beendet die Anmeldung auf allen anderen Bildschirmen.',
    'you-sign-with-your-short-code': 'Auf diesem Gerät mit dem kurzen Code unterschreiben bis {wardtime}.',
    'you-are-on-no-ward-staff':
      'Auf keiner Personalliste. Die Schichtleitung der Station um Aufnahme bitten.',
    'changed-every-sign-in-of-yours':
      'Geändert. Alle Anmeldungen sind beendet: mit dem neuen Passwort anmelden.',
    'scan-it-here-to-sign-by':
      'Hier scannen, um auf gemeinsamen Geräten mit Ausweis und Code zu unterschreiben.',
    'six-to-eight-digits-for-signing': 'Sechs bis acht Ziffern, zum Unterschreiben auf gemeinsamen Geräten.',
    'nothing-to-change-yet-fill-in': 'Noch nichts zu ändern: ausfüllen, was neu sein soll.',
    'sign-in-is-off-here-there': 'Die Anmeldung ist hier aus: es gibt keine Konten.',
    'nobody-is-signed-in-here': 'Hier ist niemand angemeldet.',
    'at-least-12-characters': 'Mindestens 12 Zeichen.',
    'your-password-now': 'Jetziges Passwort',
    'wards-and-screens': 'Stationen und Bildschirme',
    'how-you-sign-in': 'Anmeldung',
    'where-you-work': 'Arbeitsplatz',
    'new-short-code': 'Neuer kurzer Code',
    'your-account': 'Eigenes Konto',
    'new-password': 'Neues Passwort',
    'this-device': 'dieses Gerät',
    'change-it': 'Ändern',
    changed: 'Geändert.',
    'sign-out': 'Abmelden',
    'sign-in': 'Anmelden',
    badge: 'Ausweis',
    done: 'Fertig',
    wait: 'Warten',
  },
});
