/** Why a rule refused an entry about people, sessions, places and the ward itself, and what to do. */
import type { Phrase } from '../phrase-book.ts';

export const wardRefusalPhrases: readonly Phrase[] = [
  // people
  ['the staff list already has the id {~id}', 'die Personalliste hat schon die Nummer {id}'],
  ['Change that entry, or use another id.', 'Diesen Eintrag ändern oder eine andere Nummer nehmen.'],
  ['nobody on the staff list has the id {~id}', 'niemand auf der Personalliste hat die Nummer {id}'],
  [
    'Choose someone from the staff list, or add them first.',
    'Jemand von der Personalliste wählen oder erst hinzufügen.',
  ],
  ['the entry already says this', 'der Eintrag sagt das schon'],
  ['Change a name, a role, the standing or active.', 'Name, Rolle, Zugehörigkeit oder aktiv ändern.'],
  [
    'nobody else who is active may keep the staff list of {~ward}',
    'niemand sonst, der aktiv ist, darf die Personalliste von {ward} führen',
  ],
  [
    'Add or choose someone to keep it first: an administrator, the manager or a charge nurse.',
    'Erst jemand dafür bestimmen: Verwaltung, Leitung oder Schichtleitung.',
  ],
  [
    'your own role is changed by somebody else who keeps the staff list',
    'die eigene Rolle ändert jemand anderes, der die Personalliste führt',
  ],
  [
    'Ask another administrator, manager or charge nurse.',
    'Andere Verwaltung, Leitung oder Schichtleitung fragen.',
  ],
  ['the policy says nothing about who may {~what}', 'die Regel sagt nichts dazu, wer das darf: {what}'],
  ['"{~what}" is not for the role {role}', '"{what}" ist nicht für die Rolle {role}'],
  ['"{~what}" is not for {role}.', '"{what}" ist nicht für {role}.'],
  ['Ask the charge nurse.', 'Schichtleitung fragen.'],
  [
    'this ward has no name, clock or beds yet',
    'diese Station hat noch keinen Namen, keine Uhr und keine Betten',
  ],
  ['Set the ward up first, on the set-up page.', 'Erst die Station einrichten.'],
  // the round
  ['there is another visit {from} to {until}', 'es gibt einen anderen Besuch {from} bis {until}'],
  [
    'Choose another time or another person, or give the other visit back first.',
    'Eine andere Zeit oder eine andere Person wählen, oder erst den anderen Besuch zurückgeben.',
  ],
  [
    'that is who has the visit; the second person is somebody else',
    'diese Person hat den Besuch; die zweite Person ist jemand anderes',
  ],
  ['Choose somebody else as the second person.', 'Jemand anderen als zweite Person wählen.'],
  ['another second person is named for it', 'eine andere zweite Person ist dafür benannt'],
  [
    'Nothing to do: somebody goes along. Ask whoever has the visit if you should go instead.',
    'Nichts zu tun: jemand geht mit. Fragen, wer den Besuch hat, ob du stattdessen gehen sollst.',
  ],
  ['nobody is named to go along', 'niemand ist benannt, der mitgeht'],
  [
    'Nothing to do: a second person is looked for already.',
    'Nichts zu tun: eine zweite Person wird schon gesucht.',
  ],
  ['Choose somebody from the list.', 'Jemand von der Liste wählen.'],
  ['No list was kept for that entry.', 'Zu diesem Eintrag wurde keine Liste aufgehoben.'],
  [
    'Choose one from the list of what was done by the round.',
    'Eine aus der Liste wählen, was nach der Runde getan wurde.',
  ],
  [
    'Ask the charge nurse, a therapist or the handling coordinator.',
    'Schichtleitung, Therapie oder Transfer-Koordination fragen.',
  ],
  ['Ask the charge nurse, a therapist or the manager.', 'Schichtleitung, Therapie oder Leitung fragen.'],
  // who does it instead
  [
    'Ask an administrator, the manager or the charge nurse.',
    'Verwaltung, Leitung oder Schichtleitung fragen.',
  ],
  [
    'Ask a nurse, or whoever keeps the bed list, to enter it.',
    'Pflege oder wer die Bettenliste führt soll es eintragen.',
  ],
  ['Ask whoever was at the bedside to enter it.', 'Wer am Bett war, soll es eintragen.'],
  [
    'Ask a nurse or therapist to review the hold; it stays on until then.',
    'Pflege oder Therapie soll den Stopp prüfen; bis dahin gilt er.',
  ],
  [
    'Ask somebody of the ward, or open it for an emergency with a reason.',
    'Jemand von der Station fragen, oder im Notfall mit Grund öffnen.',
  ],
  [
    'Record the trigger "attachment change" and ask a nurse to take it off the list.',
    'Anlass "Zu- oder Ableitung geändert" erfassen und Pflege bitten, sie von der Liste zu nehmen.',
  ],
  [
    'Record a trigger, or place a hold, and ask a nurse.',
    'Anlass erfassen oder Stopp setzen, und Pflege fragen.',
  ],
  [
    'Record what you saw as a session, or record a trigger, and ask a nurse to check.',
    'Gesehenes als Mobilisation oder Anlass erfassen und Pflege um Prüfung bitten.',
  ],
  [
    'Record the move as a session; a nurse or therapist confirms the plan.',
    'Bewegen als Mobilisation erfassen; Pflege oder Therapie bestätigt den Plan.',
  ],
  [
    'A nurse who saw it records it; until then the plan asks for a check first.',
    'Die Pflege, die es sah, erfasst es; bis dahin verlangt der Plan erst eine Prüfung.',
  ],
  ['Ask a nurse or therapist to enter them.', 'Pflege oder Therapie soll sie eintragen.'],
  [
    'Place a hold if it is safer, and ask a nurse to enter the order.',
    'Wenn es sicherer ist, Stopp setzen, und Pflege bitten, die Anordnung einzutragen.',
  ],
  [
    'Ask a nurse or therapist; until then somebody goes along.',
    'Pflege oder Therapie fragen; bis dahin geht jemand mit.',
  ],
  ['Say it to a nurse or therapist, who sets the goal.', 'Pflege oder Therapie sagen, die das Ziel setzt.'],
  [
    'Ask a therapist; a walk itself is recorded as a session.',
    'Therapie fragen; das Gehen selbst als Mobilisation erfassen.',
  ],
  [
    'Record the walk as a session; a nurse or therapist measures.',
    'Gehen als Mobilisation erfassen; Pflege oder Therapie misst.',
  ],
  [
    'Ask a nurse or therapist who saw it, or can answer for it.',
    'Pflege oder Therapie fragen, die es sah oder dafür einsteht.',
  ],
  ['Tell a nurse what the person wishes.', 'Der Pflege sagen, was die Person wünscht.'],
  [
    'Ask a nurse: infection steps are set and ended by a nurse.',
    'Pflege fragen: sie setzt und beendet Hygienemaßnahmen.',
  ],
  [
    'Tell a nurse or therapist what whoever comes next should know.',
    'Pflege oder Therapie sagen, was die Nächsten wissen sollen.',
  ],
  ['Ask whoever goes to see the person.', 'Fragen, wer zu der Person geht.'],
  ['Ask the records role.', 'Akten fragen.'],
  ['Ask whoever keeps the records (the privacy officer).', 'Fragen, wer die Akten führt (Datenschutz).'],
  ['Ask the charge nurse, the manager or the records role.', 'Schichtleitung, Leitung oder Akten fragen.'],
  // sessions and goals
  ['the session ends {a}; it is {b}', 'die Mobilisation endet {a}; es ist {b}'],
  ['the session starts {a}; it is {b}', 'die Mobilisation beginnt {a}; es ist {b}'],
  [
    'Enter a session once it is over; check the clock of this device.',
    'Mobilisation erst danach eintragen; Uhr dieses Geräts prüfen.',
  ],
  ['the person arrived {a}, the session started {b}', 'die Person kam {a} an, die Mobilisation begann {b}'],
  [
    'Check the time. What happened before belongs to the earlier stay.',
    'Zeit prüfen. Was davor geschah, gehört zum früheren Aufenthalt.',
  ],
  ['the stay ended {a}, the session started {b}', 'der Aufenthalt endete {a}, die Mobilisation begann {b}'],
  ['Check the time, and that this is the right person.', 'Zeit prüfen, und ob es die richtige Person ist.'],
  [
    'back to bed by {a} is not after the start {b}',
    'zurück ins Bett bis {a} liegt nicht nach dem Beginn {b}',
  ],
  ['Give a later time, or leave it out.', 'Eine spätere Zeit angeben oder weglassen.'],
  ['{what} is timed {when}; {outside}', '{what} hat die Zeit {when}; {outside}'],
  [
    'the stage that "{what}" needs is not cleared; the tier is {tier}',
    'die Stufe für "{what}" ist nicht erreicht; die Stufe ist {tier}',
  ],
  [
    'Choose an activity within what is cleared, or check the person again first.',
    'Eine Aktivität im Erreichten wählen, oder erst neu prüfen.',
  ],
  [
    'the proposal that stands now asks for something else, or stands on other sessions',
    'der jetzige Vorschlag verlangt etwas anderes oder stützt sich auf andere Mobilisationen',
  ],
  ['no step of the goal is proposed any more', 'für das Ziel wird kein Schritt mehr vorgeschlagen'],
  [
    'Look at the goal and its proposal again; accept what stands there now, or set the goal yourself.',
    'Ziel und Vorschlag noch einmal ansehen; annehmen, was jetzt dasteht, oder das Ziel selbst setzen.',
  ],
  // stays and places
  ['the person has been off the ward since {when}', 'die Person ist abwesend seit {when}'],
  [
    'Enter the return first, or correct the earlier entry.',
    'Erst die Rückkehr eintragen oder den früheren Eintrag korrigieren.',
  ],
  ['due back {a} is not after leaving {b}', 'zurück bis {a} liegt nicht nach dem Weggehen {b}'],
  ['the board has the person on the ward', 'auf der Tafel ist die Person auf der Station'],
  [
    'Nothing to enter. If they came back from theatre or dialysis, record that as a trigger.',
    'Nichts einzutragen. Rückkehr aus OP oder Dialyse als Anlass erfassen.',
  ],
  [
    'this attachment is already recorded for this stay',
    'diese Zu- oder Ableitung ist für diesen Aufenthalt schon erfasst',
  ],
  [
    'Give a new attachment a new id; correct the entry if it was wrong.',
    'Neuer Zu- oder Ableitung eine neue Nummer geben; falschen Eintrag korrigieren.',
  ],
  ['the person had no such attachment at that time', 'die Person hatte diese Zu- oder Ableitung da nicht'],
  [
    'Choose one of the attachments shown on the stay page; check the time.',
    'Eine von der Aufenthaltsseite wählen; Zeit prüfen.',
  ],
  [
    'A person who has left is not moved. If they are back, begin a new stay.',
    'Wer weg ist, wird nicht umgezogen. Bei Rückkehr neuen Aufenthalt beginnen.',
  ],
  ['the person is in bed {~a}, not in bed {~b}', 'die Person ist in Bett {a}, nicht in Bett {b}'],
  [
    'Look at the board again: the person was moved. Nothing was changed.',
    'Tafel noch einmal ansehen: die Person ist umgezogen. Nichts wurde geändert.',
  ],
  ['the person came into bed {~bed} {a}, after {b}', 'die Person kam {a} in Bett {bed}, nach {b}'],
  [
    'Check the time: enter moves in the order in which they happened.',
    'Zeit prüfen: Umzüge in ihrer Reihenfolge eintragen.',
  ],
  ['there is already a stay with the id {~id}', 'es gibt schon einen Aufenthalt mit der Nummer {id}'],
  ['Give the new stay a new id.', 'Neuem Aufenthalt eine neue Nummer geben.'],
  [
    'an estimated weight chooses the lift, so a nurse or therapist estimates it',
    'ein geschätztes Gewicht bestimmt den Lifter, darum schätzt Pflege oder Therapie',
  ],
  ['Weigh the person, or ask a nurse for the estimate.', 'Wiegen, oder Pflege um die Schätzung bitten.'],
  ['the person is already in bed {~bed}', 'die Person ist schon in Bett {bed}'],
  ['Choose another bed.', 'Anderes Bett wählen.'],
  ['a swap is between two people in two beds', 'getauscht wird zwischen zwei Personen in zwei Betten'],
  [
    'Choose the other person, or move this one to an empty bed.',
    'Andere Person wählen, oder diese in ein leeres Bett umziehen.',
  ],
  ['the person is already on that ward', 'die Person ist schon auf dieser Station'],
  [
    'Move the person to another bed of this ward instead.',
    'Stattdessen in ein anderes Bett dieser Station umziehen.',
  ],
  ['this board has no ward with the id {~id}', 'diese Tafel hat keine Station mit der Nummer {id}'],
  [
    'Choose a ward of this board; for any other, end the stay.',
    'Station dieser Tafel wählen; sonst Aufenthalt beenden.',
  ],
  ['this ward has no stay with the id {~id}', 'diese Station hat keinen Aufenthalt mit der Nummer {id}'],
  [
    'Open the person from the board again, and enter it there.',
    'Person von der Tafel neu öffnen und dort eintragen.',
  ],
  [
    'the person arrived {a}, this is said to have happened {b}',
    'die Person kam {a} an, das soll {b} geschehen sein',
  ],
  [
    'Nothing was put on the next person in that bed. If it happened before the end, enter it again with that time.',
    'Nichts kam auf die nächste Person in diesem Bett. Geschah es vor dem Ende, mit dieser Zeit neu eintragen.',
  ],
  // wards and beds
  ['{~ward} has no bed with the id {~id}', '{ward} hat kein Bett mit der Nummer {id}'],
  [
    'Choose a bed from the board; add it on the set-up page if it is new.',
    'Bett von der Tafel wählen; neues Bett beim Einrichten hinzufügen.',
  ],
  ['someone is in bed {~bed}', 'in Bett {bed} ist jemand'],
  [
    'Choose an empty bed, swap the two people, or end the stay of whoever left.',
    'Leeres Bett wählen, tauschen, oder den Aufenthalt beenden, wenn jemand weg ist.',
  ],
  [
    'bed {~bed} was taken off the list of {~ward} a moment ago',
    'Bett {bed} wurde gerade von der Liste von {ward} genommen',
  ],
  [
    'bed {~bed} was freed {a}; at {b} someone else was in it',
    'Bett {bed} wurde {a} frei; {b} war jemand anderes darin',
  ],
  ['bed {~bed} was freed {a}; at {b} someone was in it', 'Bett {bed} wurde {a} frei; {b} war jemand darin'],
  [
    'Check the time, or choose the bed the person was really in.',
    'Zeit prüfen, oder das Bett wählen, in dem die Person wirklich war.',
  ],
  ['there is already a bed labelled {~label}', 'ein Bett heißt schon {label}'],
  [
    'Give each bed its own label, as it is written over the bed.',
    'Jedem Bett seinen eigenen Namen geben, wie er am Bett steht.',
  ],
  ['this ward is already set up as {~name}', 'diese Station ist schon eingerichtet als {name}'],
  [
    'Change the ward instead, or choose another id for a new one.',
    'Stattdessen die Station ändern, oder andere Nummer wählen.',
  ],
  ['two beds have the id {~id}', 'zwei Betten haben die Nummer {id}'],
  ['Give each bed its own id.', 'Jedem Bett eine eigene Nummer geben.'],
  ['the ward already says this', 'das steht schon so bei der Station'],
  ['Change the name or one of the times.', 'Name oder eine der Zeiten ändern.'],
  ['the id {~id} is or was a bed of this ward', 'die Nummer {id} ist oder war ein Bett dieser Station'],
  [
    'Give a new bed a new id: history stays with the old one.',
    'Neuem Bett eine neue Nummer geben: der Verlauf bleibt beim alten.',
  ],
  ['bed {~label} already says this', 'bei Bett {label} steht das schon'],
  ['Change its label, bay or ceiling track.', 'Namen, Zimmer oder Deckenschiene ändern.'],
  [
    'Move the person or end the stay first; then close the bed.',
    'Erst umziehen oder Aufenthalt beenden; dann das Bett schließen.',
  ],
  [
    'Check the time: a bed is closed once it is empty.',
    'Zeit prüfen: ein Bett wird geschlossen, wenn es leer ist.',
  ],
  [
    'the next version of {what} is {n}, this one says {m}',
    'die nächste Version von {what} ist {n}, hier steht {m}',
  ],
  ['the protocol {~id}', 'Protokoll {id}'],
  ["the ward's rules", 'Regeln der Station'],
  [
    'Base it on the version in force and write version {n}.',
    'Von der geltenden Version ausgehen und Version {n} schreiben.',
  ],
  [
    'Correct the document and publish it again. Nothing was changed.',
    'Dokument korrigieren und neu veröffentlichen. Nichts wurde geändert.',
  ],
  // who is expected
  ['nobody was ever expected here under that id', 'unter dieser Nummer wurde hier nie jemand erwartet'],
  [
    'Choose one of those who are expected, or record the arrival without.',
    'Jemand von den Erwarteten wählen oder die Ankunft ohne das eintragen.',
  ],
];
