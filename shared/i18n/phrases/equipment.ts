/** Equipment, visits, carers and the actions of the huddle: entries, refusals, and what to do. */
import type { Phrase } from '../phrase-book.ts';

export const equipmentPhrases: readonly Phrase[] = [
  // entries
  ['Equipment added: {~label} ({what}, {~model})', 'Hilfsmittel aufgenommen: {label} ({what}, {model})'],
  [
    'Equipment described anew: {~label} ({what}, {~model})',
    'Hilfsmittel neu beschrieben: {label} ({what}, {model})',
  ],
  ['Equipment taken off the ward’s list', 'Hilfsmittel von der Liste der Station genommen'],
  ['Taken for a person', 'Für eine Person genommen'],
  ['Taken', 'Genommen'],
  ['Back', 'Zurück'],
  ['Back at {~place}', 'Zurück: {place}'],
  ['Seen at {~place}', 'Gesehen: {place}'],
  ['Looked for, not there', 'Gesucht, nicht da'],
  ['Cleaned', 'Gereinigt'],
  ['Dirty', 'Schmutzig'],
  ['Equipment lent to {~ward}', 'Hilfsmittel verliehen an {ward}'],
  ['Equipment lent to {~ward} until {when}', 'Hilfsmittel verliehen an {ward} bis {when}'],
  ['Equipment borrowed: {~label} ({what}, {~model})', 'Hilfsmittel geliehen: {label} ({what}, {model})'],
  [
    'Equipment borrowed: {~label} ({what}, {~model}), until {when}',
    'Hilfsmittel geliehen: {label} ({what}, {model}), bis {when}',
  ],
  ['Borrowed equipment given back', 'Geliehenes Hilfsmittel zurückgegeben'],
  ['Went to {~ward}', 'Ging an {ward}'],
  ['Came from {~ward}', 'Kam von {ward}'],
  ['Out of service ({why})', 'Außer Betrieb ({why})'],
  ['brake or wheel', 'Bremse oder Rad'],
  ['Returned to service', 'Wieder in Betrieb'],
  ['Kept for nobody any more', 'Für niemanden mehr reserviert'],
  ['Kept for one person', 'Für eine Person reserviert'],
  // titles
  ['A bed stands twice in the list', 'Ein Bett steht zweimal in der Liste'],
  ['Whoever is named as the nurse is no nurse', 'Als Pflege genannt, aber keine Pflege'],
  ['That id is already used for a piece of equipment', 'Diese Nummer hat schon ein Hilfsmittel'],
  ['There is no such piece of equipment on this ward', 'Dieses Hilfsmittel gibt es auf der Station nicht'],
  ['Another piece of equipment has that name', 'Ein anderes Hilfsmittel heißt schon so'],
  ['Somebody has it', 'Jemand hat es'],
  ['It is out of service', 'Es ist außer Betrieb'],
  ['It is not out of service', 'Es ist nicht außer Betrieb'],
  ['Only a sling is kept for one person', 'Nur ein Hebetuch wird für eine Person reserviert'],
  ['It is kept for one person', 'Es ist für eine Person reserviert'],
  ['It is lent to another ward', 'Es ist an eine andere Station verliehen'],
  ['It belongs to another ward', 'Es gehört einer anderen Station'],
  ['It is not lent', 'Es ist nicht verliehen'],
  ['A ceiling track cannot be lent', 'Eine Deckenschiene wird nicht verliehen'],
  ['It is on that ward already', 'Es ist schon auf dieser Station'],
  ['The time it is lent until is not ahead', 'Die Zeit der Rückgabe liegt nicht voraus'],
  ['It is kept for another person', 'Es ist für eine andere Person reserviert'],
  // why not
  [
    'an expected arrival with that id was entered before',
    'eine erwartete Ankunft mit dieser Nummer wurde schon eingetragen',
  ],
  ['bed {~bed} stands twice in the list', 'Bett {bed} steht zweimal in der Liste'],
  [
    'leaving {when} is not after {~now}, when this is said',
    'die Entlassung {when} liegt nicht nach {now}, der Zeit dieses Eintrags',
  ],
  [
    'nobody has it now: it ended, or was given back',
    'niemand hat es jetzt: Es ist zu Ende oder wurde zurückgegeben',
  ],
  [
    'nobody is expected under that id, or it is closed',
    'unter dieser Nummer wird niemand erwartet, oder sie ist geschlossen',
  ],
  ['nothing was agreed here under that id', 'unter dieser Nummer wurde hier nichts vereinbart'],
  ['out of service since {when}', 'außer Betrieb seit {when}'],
  ['somebody has closed this action already', 'diese Aufgabe ist schon geschlossen'],
  ['somebody took it {when}', 'genommen {when}'],
  [
    'the id {~id} is or was a piece of equipment of this ward',
    'die Nummer {id} ist oder war ein Hilfsmittel dieser Station',
  ],
  [
    'the visit would be over: it ends {~end}, it is {~now}',
    'der Besuch wäre vorbei: Ende {end}, jetzt {now}',
  ],
  ['there is already equipment called {~label}', 'ein Hilfsmittel heißt schon {label}'],
  [
    'this action was closed, so it gets no new owner or time',
    'diese Aufgabe ist geschlossen und bekommt weder neue Zuständige noch neue Zeit',
  ],
  ['this sling is kept for another person', 'dieses Hebetuch ist für eine andere Person reserviert'],
  [
    'this stay already has a visit with that id',
    'dieser Aufenthalt hat schon einen Besuch mit dieser Nummer',
  ],
  [
    'ward {~ward} has no stay with the id {~stay}',
    'Station {ward} hat keinen Aufenthalt mit der Nummer {stay}',
  ],
  [
    'whoever is named as the nurse of bed {~bed} is no nurse on the staff list',
    'als Pflege für Bett {bed} genannt, aber keine Pflege auf der Personalliste',
  ],
  [
    'you go yourself; the second person is somebody else',
    'die zweite Person ist jemand anderes als die erste',
  ],
  ['{~ward} has no such piece of equipment', '{ward} hat kein solches Hilfsmittel'],
  ['{~label} is in service', '{label} ist in Betrieb'],
  ['{~label} is not a sling', '{label} ist kein Hebetuch'],
  ['{~then} is not after {~now}', '{then} liegt nicht nach {now}'],
  [
    '{~who} is not on the staff list, or no longer active',
    '{who} steht nicht auf der Personalliste oder ist nicht mehr aktiv',
  ],
  ['{~label} is lent to {~ward} since {when}', '{label} ist seit {when} an {ward} verliehen'],
  [
    '{~label} belongs to {~ward}: only its own ward lends it',
    '{label} gehört zu {ward}: Nur die eigene Station verleiht es',
  ],
  [
    '{~label} belongs to {~ward}: its own ward describes it',
    '{label} gehört zu {ward}: Die eigene Station beschreibt es',
  ],
  ['{~label} is on this ward', '{label} ist auf dieser Station'],
  ['{~label} hangs on a track of this ward', '{label} hängt an einer Schiene dieser Station'],
  ['{~label} belongs to this ward and is on it', '{label} gehört zu dieser Station und ist auf ihr'],
  [
    'the id {~id} is or was another piece of equipment on {~ward}',
    'die Nummer {id} ist oder war ein anderes Hilfsmittel auf {ward}',
  ],
  ['this sling is kept for one person', 'dieses Hebetuch ist für eine Person reserviert'],
  // what to do
  [
    'Ask its ward to change it there; the change comes here by itself.',
    'Die eigene Station bitten, es dort zu ändern; die Änderung kommt von selbst hierher.',
  ],
  [
    'Say it on that ward. If it is here again, say first that it is back.',
    'Dort melden. Ist es wieder hier, erst melden, dass es zurück ist.',
  ],
  [
    'Give it back first, and ask its ward to lend it on.',
    'Erst zurückgeben und die eigene Station bitten, es weiterzuverleihen.',
  ],
  ['Choose the ward that it goes to.', 'Station wählen, an die es geht.'],
  [
    'Choose a ward of this board. For any other, say where it is, or take it off the list.',
    'Station dieser Tafel wählen. Für jede andere melden, wo es ist, oder es von der Liste nehmen.',
  ],
  [
    'Lend a lift on wheels, or move the person to a bed under the track.',
    'Fahrbaren Lifter verleihen oder die Person in ein Bett unter der Schiene verlegen.',
  ],
  [
    'Take it off the list here and add it again: it then has a new id.',
    'Hier von der Liste nehmen und neu aufnehmen: Dann hat es eine neue Nummer.',
  ],
  [
    'Lend another one. Only the handling coordinator returns it to service.',
    'Ein anderes verleihen. Wieder in Betrieb nimmt es nur die Transfer-Koordination.',
  ],
  [
    'Lend another sling, or ask a nurse to free it and have it washed.',
    'Anderes Hebetuch verleihen oder Pflege bitten, es freizugeben und waschen zu lassen.',
  ],
  [
    'Ask a nurse to free it and have it washed, then give it back.',
    'Pflege bitten, es freizugeben und waschen zu lassen, dann zurückgeben.',
  ],
  [
    'Give the time by which it is to be back, or none.',
    'Zeit angeben, bis zu der es zurück sein soll, oder keine.',
  ],
  ['Ask a nurse or the handling coordinator.', 'Pflege oder Transfer-Koordination fragen.'],
  ['Agree a new action if it is needed again.', 'Neue Aufgabe vereinbaren, falls wieder nötig.'],
  [
    'Nothing to do. Agree a new action if it is needed again.',
    'Nichts zu tun. Neue Aufgabe vereinbaren, falls wieder nötig.',
  ],
  [
    'Ask them to hand it over, or ask the charge nurse.',
    'Um Übergabe bitten oder die Schichtleitung fragen.',
  ],
  ['Change the name or one of the settings.', 'Namen oder eine der Einstellungen ändern.'],
  ['Choose a sling.', 'Hebetuch wählen.'],
  [
    'Choose one from the equipment page; the handling coordinator adds new ones.',
    'Auf der Seite der Hilfsmittel eines wählen; neue nimmt die Transfer-Koordination auf.',
  ],
  [
    'Choose somebody else as the second person, or leave it out.',
    'Jemand anderes als zweite Person wählen oder weglassen.',
  ],
  [
    'Choose somebody from the list who goes to the bedside.',
    'Von der Liste jemand wählen, der ans Bett geht.',
  ],
  [
    'Choose the next person on the list, or ask them to hand it over to you.',
    'Nächste Person der Liste wählen oder um Übergabe bitten.',
  ],
  [
    'Choose the person from the board of the ward they come from, or leave it out.',
    'Person auf der Tafel der Station wählen, von der sie kommt, oder weglassen.',
  ],
  ['Free it first, and have it washed.', 'Erst freigeben und waschen lassen.'],
  [
    'Give a later time. If the person has left, end the stay.',
    'Spätere Zeit angeben. Ist die Person gegangen, Aufenthalt beenden.',
  ],
  [
    'Give a new piece a new id: history stays with the old one.',
    'Neuem Hilfsmittel eine neue Nummer geben: Der Verlauf bleibt beim alten.',
  ],
  ['Give a new visit a new id.', 'Neuem Besuch eine neue Nummer geben.'],
  [
    'Give each piece its own name, as it is written on it.',
    'Jedem Hilfsmittel einen eigenen Namen geben, wie er darauf steht.',
  ],
  [
    'Give it a new id; close the earlier one if it does not hold any more.',
    'Neue Nummer geben; die frühere schließen, falls sie nicht mehr gilt.',
  ],
  ['If it is standing there, say first that it is back.', 'Steht es da, erst melden, dass es zurück ist.'],
  ['Look at the list again; take it if you go.', 'Noch einmal auf die Liste sehen; übernehmen, wer geht.'],
  [
    'Name a nurse, or name this person as the aide.',
    'Pflege nennen oder diese Person als Pflegehilfe nennen.',
  ],
  [
    'Name each bed once, with its nurse and its aide together.',
    'Jedes Bett einmal nennen, Pflege und Pflegehilfe zusammen.',
  ],
  [
    'Nothing to do: nobody is to be visited. Choose the next person from the list.',
    'Nichts zu tun: kein Besuch nötig. Nächste Person der Liste wählen.',
  ],
  [
    'Nothing to enter. Look at the equipment page again.',
    'Nichts einzutragen. Noch einmal auf die Seite der Hilfsmittel sehen.',
  ],
  [
    'Open the huddle again and choose one of the actions shown.',
    'Kurzbesprechung neu öffnen und eine der gezeigten Aufgaben wählen.',
  ],
  [
    'Open the page again and choose one of those who are expected.',
    'Seite neu öffnen und eine der erwarteten Personen wählen.',
  ],
  [
    'Pair it again with initials if the ward wants them there.',
    'Neu koppeln, mit Initialen, falls die Station sie dort will.',
  ],
  [
    'This screen was paired to show beds without initials.',
    'Dieser Bildschirm wurde für Betten ohne Initialen gekoppelt.',
  ],
  [
    'Take another one. Only the handling coordinator returns it to service.',
    'Ein anderes nehmen. Wieder in Betrieb nimmt es nur die Transfer-Koordination.',
  ],
  [
    'Take another sling, or ask a nurse to free it and have it washed.',
    'Anderes Hebetuch nehmen oder Pflege bitten, es freizugeben und waschen zu lassen.',
  ],
  ['Take it again if you still go.', 'Wieder übernehmen, falls der Besuch noch stattfindet.'],
  // why a piece cannot be used now
  ['out of service ({why})', 'außer Betrieb ({why})'],
  ['does not run', 'läuft nicht'],
  ['strap or stitching', 'Band oder Naht'],
  ['label not readable', 'Etikett nicht lesbar'],
  ['inspection', 'Prüfung'],
  ['not there when looked for', 'gesucht, nicht da'],
  ['examination was due {when}', 'Prüfung war fällig {when}'],
  ['battery flat', 'Akku leer'],
  ['nobody has said where it is', 'niemand hat gesagt, wo es ist'],
  ['nobody has said that it is clean', 'niemand hat gesagt, dass es sauber ist'],
  ['battery not read', 'Akku nicht abgelesen'],
  ['no date of its next examination', 'kein Datum der nächsten Prüfung'],
  ['taken long ago, not said to be back', 'vor langem genommen, nicht zurückgemeldet'],
  // which piece fits whom, and why not
  ['bears {n} kg', 'trägt {n} kg'],
  ['bears {n} kg, the person counts as {m} kg', 'trägt {n} kg, die Person zählt als {m} kg'],
  ['its safe working load is not known', 'Traglast nicht bekannt'],
  ['the weight is not known, and another bears more', 'Gewicht nicht bekannt, und ein anderes trägt mehr'],
  ['the weight is not known: weigh or estimate', 'Gewicht nicht bekannt: wiegen oder schätzen'],
  ['its track does not reach {~bay}', 'die Schiene reicht nicht bis {bay}'],
  ['nobody has entered what it is made for', 'nicht eingetragen, wofür es gemacht ist'],
  ['made for whole body', 'für den ganzen Körper gemacht'],
  ['made for toileting', 'nur für die Toilette gemacht'],
  ['made for standing', 'zum Stehen gemacht'],
  ['made for walking', 'zum Gehen gemacht'],
  ['made for turning', 'zum Drehen gemacht'],
  ['the body weight it is made for is not known', 'Körpergewicht, für das es gemacht ist, nicht bekannt'],
  ['made for {n} kg to {m} kg', 'gemacht für {n} bis {m} kg'],
  [
    'made for {n} kg to {m} kg, the person weighs {o} kg',
    'gemacht für {n} bis {m} kg, die Person wiegt {o} kg',
  ],
  [
    'made for {n} kg to {m} kg, the person counts as {o} kg',
    'gemacht für {n} bis {m} kg, die Person zählt als {o} kg',
  ],
  ['kept for another person', 'für eine andere Person reserviert'],
  ['kept for this person', 'für diese Person reserviert'],
  ["not on the maker's list for {~lift}", 'nicht auf der Liste des Herstellers für {lift}'],
  ['hangs by {a}, {~lift} takes {b}', 'hängt mit {a}, {lift} nimmt {b}'],
  ['works with {~lift}', 'passt zu {lift}'],
  ['loops', 'Schlaufen'],
  ['clips', 'Clips'],
  ['fixed', 'fest verbunden'],
  [
    'Weight not known: weigh or estimate before a lift is chosen',
    'Gewicht nicht bekannt: wiegen oder schätzen, bevor ein Lifter gewählt wird',
  ],
  [
    'Weight not known: weigh or estimate before a walking aid is chosen',
    'Gewicht nicht bekannt: wiegen oder schätzen, bevor eine Gehhilfe gewählt wird',
  ],
  ['Weight estimated: counted as {n} kg', 'Gewicht geschätzt: zählt als {n} kg'],
  ['Weight estimated: counted as {n} lb', 'Gewicht geschätzt: zählt als {n} lb'],
  [
    'Infection steps: what goes into the room is cleaned before it leaves',
    'Hygienemaßnahmen: Was ins Zimmer kommt, wird vor dem Verlassen gereinigt',
  ],
  [
    'Nothing on the ward’s list fits: ask the handling coordinator',
    'Nichts auf der Liste der Station passt: Transfer-Koordination fragen',
  ],
  ['a safe working load is {n} to {m} kg', 'eine Traglast ist {n} bis {m} kg'],
  ['a safe working load is {n} to {m} lb', 'eine Traglast ist {n} bis {m} lb'],
  // near misses and strain
  [
    'Nobody has signed in here, so there is no name to put to it.',
    'Hier ist niemand angemeldet, also gibt es keinen Namen dazuzusetzen.',
  ],
  ['Tell it without a name, or sign in first.', 'Ohne Namen melden oder erst anmelden.'],
  // titles of printed sheets stand in both languages
  ['Labels of the equipment', 'Etiketten der Hilfsmittel'],
  ['Etiketten der Hilfsmittel', 'Etiketten der Hilfsmittel'],
  ['How to move each person: paper sheet', 'So wird bewegt: Papierbogen'],
  ['So wird bewegt: Papierbogen', 'So wird bewegt: Papierbogen'],
];
