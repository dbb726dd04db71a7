/** Why a rule refused a correction, "on own", a measure or an order, and what to do. */
import type { Phrase } from '../phrase-book.ts';

export const entryRefusalPhrases: readonly Phrase[] = [
  // corrections
  [
    'without that entry as it stands, the plan might ask for less help',
    'ohne diesen Eintrag könnte der Plan weniger Hilfe verlangen',
  ],
  [
    'Ask a nurse or therapist to do it. Anything safer you can enter yourself: a trigger, a hold, a session.',
    'Pflege oder Therapie darum bitten. Sichereres geht selbst: Anlass, Stopp, Mobilisation.',
  ],
  [
    'arrivals, moves and leaving guard the beds and are not rewritten',
    'Ankunft, Umzug und Weggang sichern die Betten und werden nicht umgeschrieben',
  ],
  [
    'Move the person to the right bed or end the stay; say what happened in an addendum.',
    'Person ins richtige Bett umziehen oder Aufenthalt beenden; im Nachtrag sagen, was geschah.',
  ],
  ['Record what you saw yourself as an entry of your own.', 'Selbst Gesehenes als eigenen Eintrag erfassen.'],
  [
    'Ask whoever made the entry, or a nurse, to clarify it.',
    'Wer den Eintrag machte oder die Pflege soll ihn klären.',
  ],
  [
    'Ask whoever made the entry, the charge nurse or the records office to correct it.',
    'Wer den Eintrag machte, Schichtleitung oder Akten sollen ihn korrigieren.',
  ],
  [
    'Ask whoever made the entry, the charge nurse or the records office to withdraw it.',
    'Wer den Eintrag machte, Schichtleitung oder Akten sollen ihn zurücknehmen.',
  ],
  ['the stay runs from {a} to {b}', 'der Aufenthalt dauert von {a} bis {b}'],
  [
    'Give a time within the stay. An entry of another stay is withdrawn here and entered there.',
    'Eine Zeit im Aufenthalt angeben. Ein Eintrag eines anderen Aufenthalts wird hier zurückgenommen und dort eingetragen.',
  ],
  [
    'Give the whole entry as it should read, in the form of a "{~kind}".',
    'Den ganzen Eintrag angeben, wie er lauten soll, in der Form "{kind}".',
  ],
  ['the replacement is not an entry', 'der Ersatz ist kein Eintrag'],
  [
    '"{~key}" points at a text that is not this entry\'s',
    '"{key}" zeigt auf einen Text, der nicht zu diesem Eintrag gehört',
  ],
  [
    'Leave it out: the text stays as it was. Say more in "text", or in an amendment.',
    'Weglassen: der Text bleibt, wie er war. Mehr im Text oder in einer Änderung sagen.',
  ],
  ['the entry is about another {~what}', 'der Eintrag betrifft etwas anderes ({what})'],
  ['Withdraw the entry and enter the right one.', 'Eintrag zurücknehmen und den richtigen eintragen.'],
  [
    'the correction lets the person go alone in more places or at more times',
    'die Korrektur lässt die Person an mehr Orten oder öfter allein gehen',
  ],
  [
    'Set "on own" again: that asks the questions it needs.',
    '"Allein" neu setzen: dabei wird alles Nötige gefragt.',
  ],
  [
    'Only the person it names may confirm it. Enter what you saw yourself.',
    'Nur die genannte Person darf bestätigen. Selbst Gesehenes eintragen.',
  ],
  ['its author had signed in when it was recorded', 'wer ihn machte, war angemeldet'],
  ['Nothing to do. It counts as it stands.', 'Nichts zu tun. Er zählt, wie er ist.'],
  ['you have stood by that entry already', 'dieser Eintrag ist schon bestätigt'],
  [
    'Nothing to do. If it was wrong, correct or withdraw it.',
    'Nichts zu tun. War er falsch, korrigieren oder zurücknehmen.',
  ],
  ["its author is one of the ward's own staff", 'wer ihn machte, gehört zum eigenen Personal'],
  ['that entry is your own', 'das ist ein eigener Eintrag'],
  [
    'Ask another nurse or therapist of the ward to sign it.',
    'Andere aus Pflege oder Therapie der Station sollen unterschreiben.',
  ],
  [
    'your own entries wait for a second signature ({what})',
    'die eigenen Einträge warten auf eine zweite Unterschrift ({what})',
  ],
  ['agency', 'Leihpersonal'],
  ['student', 'in Ausbildung'],
  [
    "Ask a nurse or therapist of the ward's own staff to sign it.",
    'Pflege oder Therapie vom eigenen Personal soll unterschreiben.',
  ],
  ['somebody has signed it already', 'jemand hat schon unterschrieben'],
  ['Nothing to do.', 'Nichts zu tun.'],
  ['an addendum', 'ein Nachtrag'],
  ['an amendment', 'eine Änderung'],
  ['a correction', 'eine Korrektur'],
  ['a retraction', 'eine Rücknahme'],
  ['a confirmation', 'eine Bestätigung'],
  ['a second signature', 'eine zweite Unterschrift'],
  ['this stay has no entry with that id', 'dieser Aufenthalt hat keinen solchen Eintrag'],
  [
    "Open the person's timeline and choose the entry there.",
    'Verlauf der Person öffnen und den Eintrag dort wählen.',
  ],
  ['that entry is itself {what}', 'dieser Eintrag ist selbst {what}'],
  [
    'Speak of the original entry. A wrong correction is withdrawn, or made again.',
    'Den ursprünglichen Eintrag nennen. Eine falsche Korrektur wird zurückgenommen oder neu gemacht.',
  ],
  ['someone else made that entry', 'jemand anderes hat diesen Eintrag gemacht'],
  ['that entry was withdrawn already', 'dieser Eintrag ist schon zurückgenommen'],
  [
    'Nothing to do. If it did happen, enter it again with the time it happened.',
    'Nichts zu tun. Ist es doch geschehen, mit der Zeit neu eintragen.',
  ],
  // on own
  ['walking has not been cleared free ({tier})', 'Gehen ist nicht frei erreicht ({tier})'],
  ['{tier}, secured', '{tier}, gesichert'],
  ['no staged check applies', 'keine Stufenprüfung gilt'],
  [
    'Do the staged check up to the walk, with nothing holding the person; then set it.',
    'Stufenprüfung bis zum Gehen machen, ohne Sicherung; dann setzen.',
  ],
  [
    'Review the hold first: end it, or leave "on own" for later.',
    'Erst den Stopp prüfen: aufheben, oder "allein" später setzen.',
  ],
  ['an order stops it ({order})', 'eine Anordnung stoppt es ({order})'],
  [
    'Ask the prescriber for a new order, or leave "on own" for later.',
    'Neue Anordnung erfragen, oder "allein" später setzen.',
  ],
  ['the plan of today says HOLD: {task}', 'der heutige Plan sagt STOPP: {task}'],
  [
    'Read why in the plan and clear it first, or leave "on own" for later.',
    'Im Plan nachlesen und das erst klären, oder "allein" später setzen.',
  ],
  [
    'Check the person again, answering it; then set "on own".',
    'Person noch einmal prüfen und das klären; dann "allein" setzen.',
  ],
  ['the plan is not current', 'der Plan ist nicht aktuell'],
  [
    'Confirm the plan on an ordinary move, or check again; then set "on own".',
    'Plan bei einem gewöhnlichen Bewegen bestätigen oder neu prüfen; dann "allein" setzen.',
  ],
  ['standing pressure fell {when}', 'der Blutdruck im Stehen fiel {when}'],
  [
    'Do a full check with a pressure set; somebody stays beside the person until it is well.',
    'Volle Prüfung mit Blutdruckreihe machen; bis es gut ist, bleibt jemand dabei.',
  ],
  [
    'nobody has recorded whether the person waits and asks for help',
    'nicht erfasst, ob die Person wartet und um Hilfe bittet',
  ],
  ['"waits and asks for help" is recorded as {how}', '"wartet auf Hilfe" ist erfasst als {how}'],
  [
    'Record it with the next check; somebody stays within reach until it is a clear yes.',
    'Mit der nächsten Prüfung erfassen; bis zu einem klaren Ja bleibt jemand in Reichweite.',
  ],
  // measures
  [
    'Do not take this measure now. Check the person first. What was done all the same is recorded as a session.',
    'Jetzt nicht messen. Erst die Person prüfen. Was trotzdem gemacht wurde, als Mobilisation erfassen.',
  ],
  [
    'no therapist has turned walking measures on for this stay',
    'die Therapie hat Gehmessungen für diesen Aufenthalt nicht eingeschaltet',
  ],
  [
    'Ask a therapist to turn them on; a walk itself is recorded as a session.',
    'Therapie bitten, sie einzuschalten; das Gehen selbst als Mobilisation erfassen.',
  ],
  // orders and holds
  ['the saturation target runs from {a} % to {b} %', 'das Sättigungsziel geht von {a} % bis {b} %'],
  ['Put the lower figure first.', 'Die kleinere Zahl zuerst angeben.'],
  ['the limb bears "{what}" and has a limit', 'Belastung "{what}" und eine Grenze dazu'],
  [
    'Say "limited" with the limit, or leave the limit out; read the order again if unsure.',
    '"Teilbelastung" mit Grenze angeben, oder die Grenze weglassen; im Zweifel Anordnung noch einmal lesen.',
  ],
  ['review {a} is not after {b}', 'Prüfung {a} liegt nicht nach {b}'],
  ['Give a later time for the review.', 'Eine spätere Prüfzeit angeben.'],
  ['this stay already has a hold with that id', 'dieser Aufenthalt hat schon einen Stopp mit dieser Nummer'],
  [
    'Give a new hold a new id, or renew the one that stands.',
    'Neuem Stopp eine neue Nummer geben, oder den geltenden verlängern.',
  ],
  [
    'the owner is not on the staff list, or no longer active',
    'die zuständige Person steht nicht auf der Personalliste oder ist nicht mehr aktiv',
  ],
  [
    'Choose an owner from the staff list, or leave it out to own the hold yourself.',
    'Jemand von der Personalliste wählen, oder weglassen und selbst zuständig sein.',
  ],
  [
    'this stay has no such hold, or it was withdrawn',
    'diesen Stopp gibt es hier nicht, oder er wurde zurückgenommen',
  ],
  [
    'Open the person again and choose one of the holds shown.',
    'Person neu öffnen und einen gezeigten Stopp wählen.',
  ],
  ['the hold has been ended', 'der Stopp ist aufgehoben'],
  [
    'Nothing to do. Place a new hold if it is needed again.',
    'Nichts zu tun. Bei Bedarf einen neuen Stopp setzen.',
  ],
  ['the hold was placed {a}, after {b}', 'der Stopp wurde {a} gesetzt, nach {b}'],
  ['Check the time of the review.', 'Zeit der Prüfung prüfen.'],
  [
    'someone kept the hold {when}, at or after this end',
    'jemand hat den Stopp {when} verlängert, zugleich oder später',
  ],
  [
    'Review it again: end it as of now if it is no longer needed.',
    'Noch einmal prüfen: jetzt aufheben, wenn er nicht mehr nötig ist.',
  ],
];
