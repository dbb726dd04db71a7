/** What the server says of records, authors, times and the database. */
import type { Phrase } from '../phrase-book.ts';

export const serverProblemPhrases: readonly Phrase[] = [
  ['A sheet is asked for without a body.', 'Ein Bogen wird ohne Inhalt angefordert.'],
  ['Open the address itself.', 'Die Adresse selbst öffnen.'],
  // what a screen says where no answer came
  ['No answer', 'Keine Antwort'],
  ["{what}: the ward's server did not answer.", '{what}: der Server der Station hat nicht geantwortet.'],
  ['Nothing was read', 'Nichts wurde gelesen'],
  ['Nothing was changed', 'Nichts wurde geändert'],
  ['Not sent yet', 'Noch nicht gesendet'],
  ['Recorded or not', 'Erfasst oder nicht'],
  ['The answer could not be read.', 'Die Antwort war nicht lesbar.'],
  ['Check the network and try again.', 'Netz prüfen und noch einmal versuchen.'],
  ['Unexpected answer', 'Unerwartete Antwort'],
  [
    'The server answered {n} in a form this page does not know.',
    'Der Server antwortete {n} in einer Form, die diese Seite nicht kennt.',
  ],
  [
    'Reload the page. If it stays, tell whoever looks after this board.',
    'Seite neu laden. Bleibt es, Bescheid geben, wer diese Tafel betreut.',
  ],
  ['This page and the server do not match', 'Diese Seite und der Server passen nicht zusammen'],
  [
    'The answer of {~path} has a form this page does not know.',
    'Die Antwort von {path} hat eine Form, die diese Seite nicht kennt.',
  ],
  [
    'The answer has a form this page does not know.',
    'Die Antwort hat eine Form, die diese Seite nicht kennt.',
  ],
  ['Reload the page.', 'Seite neu laden.'],
  // records
  ['That is not the number of a line.', 'Das ist keine Zeilennummer.'],
  ['Send the "next" of the page before, or leave it out.', '"next" der vorigen Seite senden oder weglassen.'],
  [
    'Nobody on the staff list of this ward has that id.',
    'Niemand auf der Personalliste dieser Station hat diese Nummer.',
  ],
  ['Choose somebody from the staff list.', 'Jemand von der Personalliste wählen.'],
  [
    'They are still active on the staff list of {~ward}: others must know who they are.',
    'Die Person ist auf der Personalliste von {ward} noch aktiv: andere müssen wissen, wer sie ist.',
  ],
  [
    'Mark them as no longer active on every ward first.',
    'Erst auf jeder Station als nicht mehr aktiv kennzeichnen.',
  ],
  ['They are an administrator of this server.', 'Die Person gehört zur Verwaltung dieses Servers.'],
  ['Switch their account off first.', 'Erst das Konto abschalten.'],
  [
    'The person is still in a bed of this ward: their name is needed to tell the right person.',
    'Die Person ist noch in einem Bett dieser Station: der Name wird gebraucht, um sie zu erkennen.',
  ],
  [
    'End the stay first (also one entered by mistake), then erase it.',
    'Erst den Aufenthalt beenden (auch einen versehentlichen), dann löschen.',
  ],
  [
    'Another ward has a stay of the same id; its names and texts are under the same key.',
    'Eine andere Station hat einen Aufenthalt mit derselben Nummer; Namen und Texte liegen unter demselben Schlüssel.',
  ],
  [
    'Tell whoever runs Footboard: the two cannot be erased apart.',
    'Bescheid geben, wer Footboard betreibt: beide lassen sich nicht getrennt löschen.',
  ],
  [
    'The personal data of this person was erased, so nothing more can be written about them.',
    'Die Personendaten wurden gelöscht, darum kann nichts mehr über die Person geschrieben werden.',
  ],
  [
    'If the person is here again, begin a new stay.',
    'Ist die Person wieder hier, neuen Aufenthalt beginnen.',
  ],
  // authors
  [
    'This entry was made by somebody else than the person who is signed in.',
    'Diesen Eintrag hat jemand anderes gemacht als die angemeldete Person.',
  ],
  [
    'It stays on this device until the one who made it signs in, and is not taken for yours.',
    'Er bleibt auf diesem Gerät, bis sich anmeldet, wer ihn machte, und gilt nicht als eigener.',
  ],
  ['Sign in, then send it again.', 'Anmelden, dann noch einmal senden.'],
  [
    'The request does not say who makes the entry (header {~name}).',
    'Die Anfrage sagt nicht, wer den Eintrag macht (Kopfzeile {name}).',
  ],
  [
    'Add the first staff member, then choose who you are.',
    'Erste Person hinzufügen, dann wählen, wer hier ist.',
  ],
  ['Choose who you are on this device.', 'Auf diesem Gerät wählen, wer hier ist.'],
  [
    'That staff member is marked as no longer active on this ward.',
    'Diese Person ist auf dieser Station nicht mehr aktiv.',
  ],
  [
    'The staff list of this ward has nobody with the id "{~id}".',
    'Auf der Personalliste dieser Station hat niemand die Nummer "{id}".',
  ],
  [
    'Choose your name from the list, or ask whoever keeps it to add you.',
    'Namen aus der Liste wählen, oder um Aufnahme bitten.',
  ],
  // times
  [
    "The entry says {a}. The server's clock says {b}; this device's clock said {c}.",
    'Im Eintrag steht {a}. Die Uhr des Servers sagt {b}; die Uhr dieses Geräts sagte {c}.',
  ],
  ["The entry says {a}. The server's clock says {b}.", 'Im Eintrag steht {a}. Die Uhr des Servers sagt {b}.'],
  [
    "Set the device's clock right, or enter the time by the server's clock.",
    'Uhr des Geräts stellen, oder die Zeit nach der Uhr des Servers eingeben.',
  ],
  [
    'Enter when it happened; what is still to come cannot be recorded.',
    'Eingeben, wann es geschah; was erst kommt, lässt sich nicht erfassen.',
  ],
  ['The ward has no clock yet.', 'Die Station hat noch keine Uhr.'],
  ['Send the instant in "occurred.at", in UTC.', 'Zeitpunkt in "occurred.at" senden, in UTC.'],
  ['{~local} is not a date and time of the calendar', '{local} ist kein Datum mit Zeit im Kalender'],
  ['write the date and time like 2026-10-25T01:40', 'Datum und Zeit schreiben wie 2026-10-25T01:40'],
  [
    '{clock} did not happen on {date}: the clocks went forward',
    '{clock} gab es am {date} nicht: die Uhren wurden vorgestellt',
  ],
  [
    'enter the time after the change ({time} is the same moment on the new clock)',
    'Zeit nach der Umstellung eingeben ({time} ist derselbe Moment auf der neuen Uhr)',
  ],
  [
    '{clock} happened twice on {date}: the clocks went back',
    '{clock} gab es am {date} zweimal: die Uhren wurden zurückgestellt',
  ],
  [
    'say which: the first ({~a}) or the second ({~b})',
    'angeben, welche: die erste ({a}) oder die zweite ({b})',
  ],
  // the server and the database
  [
    'The entry could not be handled because of a mistake in this program. Nothing was stored.',
    'Der Eintrag konnte wegen eines Fehlers im Programm nicht verarbeitet werden. Nichts wurde gespeichert.',
  ],
  [
    'Keep the entry on paper and tell whoever runs Footboard; the server log has the particulars.',
    'Eintrag auf Papier festhalten und Bescheid geben, wer Footboard betreibt; das Serverprotokoll hat die Einzelheiten.',
  ],
  ['No ward has the id "{~id}".', 'Keine Station hat die Nummer "{id}".'],
  [
    'Choose one from /api/wards, or set the ward up first.',
    'Eine aus /api/wards wählen, oder die Station erst einrichten.',
  ],
  ['No command is called "{~name}".', 'Keine Eingabe heißt "{name}".'],
  ['The commands are listed in /api/openapi.json.', 'Die Eingaben stehen in /api/openapi.json.'],
  [
    'Look at what is new, then decide again and send it with the version you now see.',
    'Neues ansehen, dann neu entscheiden und mit der jetzigen Version senden.',
  ],
  [
    'Others were writing at the same moment, several times in a row. Nothing was stored.',
    'Andere schrieben mehrmals im selben Moment. Nichts wurde gespeichert.',
  ],
  ['Send again with the same id.', 'Mit derselben Nummer noch einmal senden.'],
  [
    'This was decided looking at version {n}; it is now version {m}. Nothing was stored.',
    'Entschieden wurde nach Version {n}; jetzt ist es Version {m}. Nichts wurde gespeichert.',
  ],
  [
    'This was decided looking at version {n}, and another entry came first. Nothing was stored.',
    'Entschieden wurde nach Version {n}, und ein anderer Eintrag kam zuvor. Nichts wurde gespeichert.',
  ],
  [
    'Another person already sent a command with this id.',
    'Jemand anderes hat schon eine Eingabe mit dieser Nummer gesendet.',
  ],
  [
    'A "{~name}" with this id and another content is already stored.',
    'Eine Eingabe "{name}" mit dieser Nummer und anderem Inhalt ist schon gespeichert.',
  ],
  [
    'Give each entry an id of its own; send the same id again only to repeat the same entry.',
    'Jedem Eintrag eine eigene Nummer geben; dieselbe nur zum Wiederholen desselben Eintrags senden.',
  ],
  [
    'The database cannot be reached; nothing was stored.',
    'Die Datenbank ist nicht erreichbar; nichts wurde gespeichert.',
  ],
  [
    'Keep the entry and send it again with the same id; if it goes on, use paper and tell whoever runs Footboard.',
    'Eintrag behalten und mit derselben Nummer noch einmal senden; dauert es an, Papier nehmen und Bescheid geben, wer Footboard betreibt.',
  ],
  [
    'The connection to the database broke before it answered, so this entry may or may not be stored.',
    'Die Verbindung zur Datenbank brach vor der Antwort ab; der Eintrag ist vielleicht gespeichert, vielleicht nicht.',
  ],
  [
    'Send again with the same id: that is safe, it is stored at most once.',
    'Mit derselben Nummer noch einmal senden: das ist sicher, er wird höchstens einmal gespeichert.',
  ],
  ['The database cannot be reached now.', 'Die Datenbank ist jetzt nicht erreichbar.'],
  ['Try again in a moment.', 'Gleich noch einmal versuchen.'],
  ['The board is still catching up for: {~wards}.', 'Die Tafel holt noch auf für: {wards}.'],
  [
    'Ask again in a few seconds; if it goes on, the server log says why.',
    'In ein paar Sekunden neu fragen; dauert es an, steht der Grund im Serverprotokoll.',
  ],
  [
    'More came from here within a minute than any ward needs. This request changed nothing.',
    'Von hier kam in einer Minute mehr, als eine Station braucht. Diese Anfrage hat nichts geändert.',
  ],
  [
    'Wait {n} s, then send it again. If nobody did this, tell whoever runs Footboard.',
    '{n} s warten, dann noch einmal senden. War das niemand, Bescheid geben, wer Footboard betreibt.',
  ],
  ['No rule says who may use this address.', 'Keine Regel sagt, wer diese Adresse benutzen darf.'],
  ['Tell whoever runs Footboard.', 'Bescheid geben, wer Footboard betreibt.'],
  ['Nothing answers {~what}.', 'Nichts antwortet auf {what}.'],
  ['The addresses are listed in /api/openapi.json.', 'Die Adressen stehen in /api/openapi.json.'],
  ['Ward {~ward} has no stay {~stay}.', 'Station {ward} hat keinen Aufenthalt {stay}.'],
  [
    'Open the stay from the board; a person who changed wards has a new stay there.',
    'Aufenthalt von der Tafel öffnen; nach einem Stationswechsel gibt es dort einen neuen.',
  ],
  ["The ward's log ends at position {n}.", 'Das Protokoll der Station endet bei Stelle {n}.'],
  ['Ask for a position from 1 to {n}.', 'Nach einer Stelle von 1 bis {n} fragen.'],
  ['{what} Nothing was stored.', '{what} Nichts wurde gespeichert.'],
  // what only a program or a proxy gets to read
  [
    'Look at the proxy or the program that sent it; a browser does not send such a thing.',
    'Im Proxy oder im sendenden Programm nachsehen; ein Browser sendet so etwas nicht.',
  ],
  ['Send it again.', 'Noch einmal senden.'],
  ['Send one JSON object in UTF-8.', 'Ein JSON-Objekt in UTF-8 senden.'],
  [
    'Send one entry a command; a check with all its stages is far smaller.',
    'Je Eingabe einen Eintrag senden; eine Prüfung mit allen Stufen ist viel kleiner.',
  ],
  ['Send the body in one piece.', 'Den Inhalt in einem Stück senden.'],
  [
    'Send the command as JSON with the header Content-Type: application/json.',
    'Die Eingabe als JSON mit der Kopfzeile Content-Type: application/json senden.',
  ],
  [
    'The address and the headers together are over 16 kB.',
    'Adresse und Kopfzeilen sind zusammen größer als 16 kB.',
  ],
  [
    'The address has "%00" in it, which stands for no character.',
    'In der Adresse steht "%00", das für kein Zeichen steht.',
  ],
  [
    'The address has a percent sign that stands for no character.',
    'In der Adresse steht ein Prozentzeichen, das für kein Zeichen steht.',
  ],
  ['The body cannot be read as JSON.', 'Der Inhalt ist nicht als JSON lesbar.'],
  ['The body is over {n} kB.', 'Der Inhalt ist größer als {n} kB.'],
  [
    'The parts of the body carry too much beside it.',
    'Die Teile des Inhalts tragen zu viel anderes mit sich.',
  ],
  ['The request did not arrive whole in time.', 'Die Anfrage kam nicht rechtzeitig ganz an.'],
  ['The request has no JSON body.', 'Die Anfrage hat keinen Inhalt in JSON.'],
  [
    'What arrived is not a request by the rules of HTTP.',
    'Was ankam, ist nach den Regeln von HTTP keine Anfrage.',
  ],
  ['Write the address in UTF-8 and escape it once.', 'Adresse in UTF-8 schreiben und einmal maskieren.'],
  [
    'there is a field with a name of {n} characters, which is not known here',
    'es gibt ein Feld, dessen Name {n} Zeichen hat und das hier nicht bekannt ist',
  ],
  // screens that cannot join
  ['this page is older than the server', 'diese Seite ist älter als der Server'],
  ['reload the page', 'Seite neu laden'],
  ['this page is newer than the server', 'diese Seite ist neuer als der Server'],
  ['update or restart the server', 'Server aktualisieren oder neu starten'],
  ['there is no ward "{~id}" here', 'hier gibt es keine Station "{id}"'],
  ['choose a ward from the start page', 'Station auf der Startseite wählen'],
  [
    'what this screen may be shown has just changed',
    'was dieser Bildschirm zeigen darf, hat sich gerade geändert',
  ],
  ['What this screen may be shown has changed.', 'Was dieser Bildschirm zeigen darf, hat sich geändert.'],
  ['It asks again by itself.', 'Er fragt von selbst neu.'],
  ['sign in, or reload the page', 'anmelden oder Seite neu laden'],
  [
    'it cannot be told now who this is; try again',
    'jetzt ist nicht feststellbar, wer das ist; noch einmal versuchen',
  ],
  ['This device was taken off the ward.', 'Dieses Gerät wurde von der Station genommen.'],
  ['Pair it again, or sign in with name and password.', 'Neu koppeln, oder mit Name und Passwort anmelden.'],
];
