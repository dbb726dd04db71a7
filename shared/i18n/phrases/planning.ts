/** Who is on the ward, and the day plan. */
import type { Phrase } from '../phrase-book.ts';

export const planningPhrases: readonly Phrase[] = [
  // who is on
  [
    'whoever is named as on the ward is not on the staff list, or no longer active',
    'wer als anwesend genannt ist, steht nicht auf der Personalliste oder ist nicht mehr aktiv',
  ],
  ['somebody is named twice for the same ward day', 'jemand ist für denselben Stationstag zweimal genannt'],
  [
    'Name each person once; a gap in the middle is a break.',
    'Jede Person einmal nennen; eine Lücke dazwischen ist eine Pause.',
  ],
  ['from {from} to {to} is no time on a ward', 'von {from} bis {to} ist keine Zeit auf einer Station'],
  [
    'Give an end after the beginning and at most 16 hours later; the same time twice takes the person off.',
    'Ein Ende nach dem Beginn und höchstens 16 Stunden später angeben; zweimal dieselbe Zeit nimmt die Person heraus.',
  ],
  [
    '{when} is not in the ward day from {from} to {to}',
    '{when} liegt nicht im Stationstag von {from} bis {to}',
  ],
  [
    'Choose the ward day in which the time on the ward begins.',
    'Den Stationstag wählen, in dem die Zeit auf der Station beginnt.',
  ],
  [
    'a break from {from} to {to} does not fit into the time on the ward, or into another break',
    'eine Pause von {from} bis {to} passt nicht in die Zeit auf der Station oder überschneidet eine andere Pause',
  ],
  [
    'Give breaks within the time on the ward, each ending after it begins.',
    'Pausen innerhalb der Zeit auf der Station angeben, jede mit einem Ende nach ihrem Beginn.',
  ],
  // the day plan
  ['Too much is being worked out at once.', 'Zu vieles wird gerade ausgearbeitet.'],
  [
    'the plan is of the ward day of {~day}, and it is the one of {~now} now',
    'der Plan gilt für den Stationstag vom {day}, jetzt ist der vom {now}',
  ],
  ['Make a plan for today.', 'Einen Plan für heute machen.'],
  ['the visit to bed {~label} at {when}: {why}', 'der Besuch an Bett {label} um {when}: {why}'],
  [
    'Move or drop that visit, or make the plan anew from how the ward is now.',
    'Diesen Besuch verschieben oder weglassen, oder den Plan nach dem jetzigen Stand neu machen.',
  ],
  [
    'it is outside the times at which it can be done',
    'es liegt außerhalb der Zeiten, zu denen es möglich ist',
  ],
  ['a hold stops it', 'ein Stopp steht dagegen'],
  ['it is in a meal time', 'es liegt in einer Mahlzeit'],
  ['it is in the rest time of the ward', 'es liegt in der Ruhezeit der Station'],
  ['the person is off the ward then, or leaves', 'die Person ist dann abwesend oder geht'],
  ['somebody is with the person already', 'jemand ist schon bei der Person'],
  ['it is in the night', 'es liegt in der Nacht'],
  ['the person has too little rest before or after it', 'die Person hat davor oder danach zu wenig Ruhe'],
  ['the person has two visits at once', 'die Person hätte zwei Besuche zugleich'],
  ['a check has to come first', 'eine Prüfung muss davor kommen'],
  ['it has the wrong number of people', 'die Zahl der Personen stimmt nicht'],
  ['whoever goes may not do it', 'wer geht, darf es nicht'],
  ['whoever goes is not on the ward then', 'wer geht, ist dann nicht auf der Station'],
  ['whoever goes is on a break', 'wer geht, hat Pause'],
  ['whoever goes has taken something else then', 'wer geht, hat dann anderes übernommen'],
  ['somebody would be in two places at once', 'jemand wäre an zwei Orten zugleich'],
  [
    'the equipment does not fit the person, or some is missing',
    'das Hilfsmittel passt nicht zur Person, oder etwas fehlt',
  ],
  ['the equipment cannot be used then', 'das Hilfsmittel ist dann nicht verwendbar'],
  ['the equipment has to be cleaned first', 'das Hilfsmittel muss erst gereinigt werden'],
  ['the equipment would be in two places at once', 'das Hilfsmittel wäre an zwei Orten zugleich'],
  ['it must stay as it is', 'es muss so bleiben'],
  ['it is not asked for any more', 'es ist nicht mehr gefragt'],
  // the accepted plan on phones
  ['The plan asks for three people or more by now', 'Der Plan verlangt inzwischen drei Personen oder mehr'],
  [
    'Two people are asked for by now, and one is planned',
    'Inzwischen sind zwei Personen gefragt, geplant ist eine',
  ],
  [
    'The plan asks for equipment by now, and none is planned',
    'Der Plan verlangt inzwischen ein Hilfsmittel, geplant ist keines',
  ],
  [
    'Equipment of this visit is not on the ward’s list any more',
    'Ein Hilfsmittel dieses Besuchs steht nicht mehr auf der Liste der Station',
  ],
  ['{~label} is out of service since {when} ({why})', '{label} ist außer Betrieb seit {when} ({why})'],
  ['{~label} was looked for {when} and is not there', '{label} wurde {when} gesucht und ist nicht da'],
  ['{~label} was due for its examination {when}', 'die Prüfung von {label} war fällig {when}'],
  [
    '{~label} is kept for another person since {when}',
    '{label} ist seit {when} für eine andere Person reserviert',
  ],
  ['{~label} is dirty since {when}', '{label} ist schmutzig seit {when}'],
  ['the battery of {~label} is flat since {when}', 'der Akku von {label} ist leer seit {when}'],
  ['it stands in the plan twice', 'es steht zweimal im Plan'],
];
