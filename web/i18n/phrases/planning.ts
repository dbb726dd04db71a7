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
];
