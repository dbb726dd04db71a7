/** What the server says of a request that was no rule's matter: sign-in, devices, times, the database. */
import type { Phrase } from '../phrase-book.ts';

export const problemPhrases: readonly Phrase[] = [
  // accounts and sign-in
  ['Somebody else signs in with that name.', 'Jemand anderes meldet sich mit diesem Namen an.'],
  ['Choose another one.', 'Anderen wählen.'],
  ['That badge belongs to somebody else.', 'Dieser Ausweis gehört jemand anderem.'],
  [
    'Scan your own, or ask whoever keeps the accounts.',
    'Eigenen scannen, oder fragen, wer die Konten führt.',
  ],
  ['That is not your password now.', 'Das ist nicht das jetzige Passwort.'],
  ['Type the one you sign in with.', 'Das Passwort der Anmeldung eingeben.'],
  ['There is no account with that id here.', 'Dieses Konto gibt es hier nicht.'],
  ['Choose one from the list.', 'Eines aus der Liste wählen.'],
  ['That person has an account already.', 'Diese Person hat schon ein Konto.'],
  ['Make a new link for the account they have.', 'Für das vorhandene Konto einen neuen Link machen.'],
  [
    'Nobody else could keep the accounts of this server then.',
    'Dann könnte niemand sonst die Konten dieses Servers führen.',
  ],
  [
    'Make another administrator first, and let them sign in once.',
    'Erst eine weitere Verwaltung anlegen und einmal anmelden lassen.',
  ],
  ['No device of this ward has that id.', 'Kein Gerät dieser Station hat diese Nummer.'],
  ['Open the list of devices again and choose one of it.', 'Geräteliste neu öffnen und eines wählen.'],
  ['That is for an administrator of this server.', 'Das darf nur die Verwaltung dieses Servers.'],
  ['Your sign-in has run out.', 'Die Anmeldung ist abgelaufen.'],
  ['Nobody is signed in here.', 'Hier ist niemand angemeldet.'],
  ['Choose your name and type your code, or sign in.', 'Namen wählen und Code eingeben, oder anmelden.'],
  [
    'Sign in, then do it again: nothing you entered is lost.',
    'Anmelden, dann wiederholen: nichts Eingegebenes geht verloren.',
  ],
  ['You are not on the staff list of this ward.', 'Nicht auf der Personalliste dieser Station.'],
  ['an opened ward', 'eine geöffnete Station'],
  ['This ward has no such opening.', 'Diese Station hat keine solche Öffnung.'],
  ['Open the list again and choose one of it.', 'Liste neu öffnen und eine wählen.'],
  ['That is an opening of your own.', 'Das ist eine eigene Öffnung.'],
  [
    'Ask the charge nurse, the manager or the records role to review it.',
    'Schichtleitung, Leitung oder Akten sollen sie prüfen.',
  ],
  [
    'Somebody has reviewed it already; what they wrote stands.',
    'Jemand hat sie schon geprüft; das Geschriebene gilt.',
  ],
  ['Look at the list again.', 'Liste noch einmal ansehen.'],
  [
    'That link was used already, has run out, or a newer one was made.',
    'Dieser Link wurde schon benutzt, ist abgelaufen oder durch einen neueren ersetzt.',
  ],
  [
    'Ask whoever gave it to you for a new one. The first link of all is printed when the server starts.',
    'Um einen neuen bitten, wo er herkam. Der allererste Link steht beim Start des Servers da.',
  ],
  ['give the name that others know you by', 'den Namen angeben, unter dem andere die Person kennen'],
  [
    '{n} screens are waiting to be paired with this server.',
    '{n} Bildschirme warten auf die Kopplung mit diesem Server.',
  ],
  [
    '{n} screens that ask from here are waiting to be paired.',
    '{n} Bildschirme von hier warten auf die Kopplung.',
  ],
  [
    'Approve those first, or wait ten minutes and ask again.',
    'Erst diese zulassen, oder zehn Minuten warten.',
  ],
  [
    'No screen that waits to be paired shows that code. A code is good for ten minutes and for one approval.',
    'Kein wartender Bildschirm zeigt diesen Code. Ein Code gilt zehn Minuten und für eine Zulassung.',
  ],
  [
    'Look at the screen again; take a new code there if it asks for one. Choose the kind that the screen says.',
    'Bildschirm noch einmal ansehen; dort bei Bedarf einen neuen Code holen. Die Art wählen, die er nennt.',
  ],
  ['A wall never shows the whole board.', 'Eine Wandtafel zeigt nie die ganze Tafel.'],
  [
    'Choose initials, bed only or visitors; pair a shared device for the whole board.',
    'Initialen, nur Bett oder Besuch wählen; für die ganze Tafel ein gemeinsames Gerät koppeln.',
  ],
  ['That password is among those that are guessed first.', 'Dieses Passwort wird zuerst erraten.'],
  [
    'Choose a few words of your own that do not belong together, without your name or the ward’s.',
    'Ein paar eigene Wörter wählen, die nicht zusammengehören, ohne den eigenen Namen oder den der Station.',
  ],
  ['That code is among those that are guessed first.', 'Dieser Code wird zuerst erraten.'],
  [
    'Choose digits that do not run on or repeat.',
    'Ziffern wählen, die nicht fortlaufen oder sich wiederholen.',
  ],
  ['This account is switched off.', 'Dieses Konto ist abgeschaltet.'],
  [
    'Ask whoever keeps the accounts: an administrator, the manager or the charge nurse.',
    'Fragen, wer die Konten führt: Verwaltung, Leitung oder Schichtleitung.',
  ],
  ['There were too many wrong sign-ins.', 'Es gab zu viele falsche Anmeldungen.'],
  [
    'Wait {n} min. If you forgot the password, ask for a new link.',
    '{n} Min. warten. Passwort vergessen: um einen neuen Link bitten.',
  ],
  [
    'Raising caution (a trigger, a hold) stays possible without a code.',
    'Vorsicht melden (Anlass, Stopp) geht auch ohne Code.',
  ],
  [
    'The code is not right. One try is left on this device.',
    'Der Code stimmt nicht. Auf diesem Gerät bleibt ein Versuch.',
  ],
  [
    'The code is not right. {n} tries are left on this device.',
    'Der Code stimmt nicht. Auf diesem Gerät bleiben {n} Versuche.',
  ],
  [
    'Type it again, or sign in with name and password.',
    'Noch einmal eingeben, oder mit Name und Passwort anmelden.',
  ],
  [
    'Badge and code do not belong together, or the badge is not known.',
    'Ausweis und Code passen nicht zusammen, oder der Ausweis ist nicht bekannt.',
  ],
  [
    'Scan it again, choose your name instead, or sign in with name and password.',
    'Noch einmal scannen, stattdessen den Namen wählen, oder mit Name und Passwort anmelden.',
  ],
  [
    'There were {n} wrong codes for this person on this device.',
    'Für diese Person gab es auf diesem Gerät {n} falsche Codes.',
  ],
  [
    'Sign in fully, with name and password: that opens the code again.',
    'Voll anmelden, mit Name und Passwort: dann geht der Code wieder.',
  ],
  [
    'That person is not an active member of the staff list of this ward.',
    'Diese Person ist auf der Personalliste dieser Station nicht aktiv.',
  ],
  [
    'Choose another name, or ask whoever keeps the staff list.',
    'Anderen Namen wählen, oder fragen, wer die Personalliste führt.',
  ],
  [
    'A short code works only on a device that is paired with a ward as a shared one.',
    'Ein kurzer Code geht nur auf einem gekoppelten gemeinsamen Gerät.',
  ],
  [
    'Sign in with name and password, or have this device paired.',
    'Mit Name und Passwort anmelden, oder dieses Gerät koppeln lassen.',
  ],
  [
    'The sign-in was begun in another browser, or too long ago.',
    'Die Anmeldung begann in einem anderen Browser oder vor zu langer Zeit.',
  ],
  ['The provider does not say the name of who signed in.', 'Die zentrale Anmeldung nennt keinen Namen.'],
  [
    'The provider and this server did not agree on who it is.',
    'Zentrale Anmeldung und Server sind sich nicht einig, wer es ist.',
  ],
  [
    'The single sign-on provider does not answer as it should.',
    'Die zentrale Anmeldung antwortet nicht, wie sie soll.',
  ],
  [
    'Try again in a moment, or sign in with a name and password of this server.',
    'Gleich noch einmal versuchen, oder mit Name und Passwort dieses Servers anmelden.',
  ],
  [
    'Begin the sign-in again; when it fails twice, tell whoever runs Footboard.',
    'Anmeldung neu beginnen; nach zwei Fehlern Bescheid geben, wer Footboard betreibt.',
  ],
  [
    'Sign in with your name and password, then do it again.',
    'Mit Name und Passwort anmelden, dann wiederholen.',
  ],
  ['Sign in first.', 'Erst anmelden.'],
  ['Sign in fully, then do it again.', 'Voll anmelden, dann wiederholen.'],
  ['Accounts are kept with a full sign-in.', 'Konten werden nur mit voller Anmeldung geführt.'],
  [
    'Nobody active on the staff list of this ward has that id.',
    'Niemand Aktives auf der Personalliste hat diese Nummer.',
  ],
  ['Add them to the staff list first.', 'Erst auf die Personalliste setzen.'],
  [
    'That person is on another ward too, or keeps the accounts of the whole server.',
    'Diese Person ist auch auf einer anderen Station oder führt die Konten des ganzen Servers.',
  ],
  ['Ask an administrator of this server.', 'Verwaltung dieses Servers fragen.'],
  ['That is not the id of a stay.', 'Das ist keine Aufenthaltsnummer.'],
  ['Open the stay from the board.', 'Aufenthalt von der Tafel öffnen.'],
  [
    'The request does not come from a page of this server. Nothing was changed.',
    'Die Anfrage kommt nicht von einer Seite dieses Servers. Nichts wurde geändert.',
  ],
  [
    'Open Footboard by its own address and do it there. Behind a proxy: see docs/deploy.md.',
    'Footboard unter der eigenen Adresse öffnen und dort wiederholen. Hinter einem Proxy: siehe docs/deploy.md.',
  ],
  [
    'A ward is opened by somebody who has signed in with their own name and password.',
    'Eine Station öffnet, wer mit eigenem Namen und Passwort angemeldet ist.',
  ],
  [
    'You need not: you are on the staff list of this ward.',
    'Nicht nötig: schon auf der Personalliste dieser Station.',
  ],
  [
    'Open the ward as usual. If your role there does not reach far enough, ask whoever keeps the staff list.',
    'Station wie sonst öffnen. Reicht die Rolle nicht, fragen, wer die Personalliste führt.',
  ],
  [
    'Name and password do not belong together, or the account is switched off.',
    'Name und Passwort passen nicht zusammen, oder das Konto ist abgeschaltet.',
  ],
  [
    'Try again, or ask whoever keeps the accounts for a new link.',
    'Noch einmal versuchen, oder um einen neuen Link bitten.',
  ],
  [
    'Password, code and badge are changed with a full sign-in.',
    'Passwort, Code und Ausweis werden mit voller Anmeldung geändert.',
  ],
  [
    'You have no password here, and your single sign-on is longer ago than {n} min.',
    'Hier gibt es kein Passwort, und die zentrale Anmeldung ist länger als {n} Min. her.',
  ],
  ['Sign on again, then do it within {n} min.', 'Neu zentral anmelden, dann binnen {n} Min. wiederholen.'],
  ['Your account on this server is switched off.', 'Das Konto auf diesem Server ist abgeschaltet.'],
  [
    'None of your groups has a role on a ward here.',
    'Keine Gruppe des Kontos hat hier auf einer Station eine Rolle.',
  ],
  [
    'Single sign-on is not set up on this server.',
    'Zentrale Anmeldung ist auf diesem Server nicht eingerichtet.',
  ],
  ['Sign in with a name and password of this server.', 'Mit Name und Passwort dieses Servers anmelden.'],
  [
    'Ask whoever keeps the groups, or an administrator of this server, to add you.',
    'Wer die Gruppen führt oder die Verwaltung soll das Konto hinzufügen.',
  ],
];
