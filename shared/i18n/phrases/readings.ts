/** Names and units of what is measured, as the fields of a check and of a session have them. */
import type { Phrase } from '../phrase-book.ts';

export const readingPhrases: readonly Phrase[] = [
  ['Pressure lying', 'Blutdruck im Liegen'],
  ['Pressure seated', 'Blutdruck im Sitzen'],
  ['Pressure standing', 'Blutdruck im Stehen'],
  ['Pressure standing, {x}', 'Blutdruck im Stehen, {x}'],
  ['Second try, standing {x}', 'Zweiter Versuch, Stehen {x}'],
  ['Pressure before, lying', 'Blutdruck vorher, im Liegen'],
  ['Pressure before, seated', 'Blutdruck vorher, im Sitzen'],
  ['Pressure seated, during or after', 'Blutdruck im Sitzen, dabei oder danach'],
  ['systolic', 'systolisch'],
  ['diastolic', 'diastolisch'],
  ['saturation', 'Sättigung'],
  ['oxygen given', 'Sauerstoffgabe'],
  ['Oxygen', 'Sauerstoff'],
  ['Breathing', 'Atmung'],
  ['Breathing rate', 'Atemfrequenz'],
  ['Oxygen saturation', 'Sauerstoffsättigung'],
  ['Temperature', 'Temperatur'],
  ['Pain', 'Schmerz'],
  ['Systolic pressure', 'Systolischer Blutdruck'],
  ['Pulse', 'Puls'],
  ['per min', 'pro Min.'],
  ['l per min', 'l pro Min.'],
  ['0 to 10', '0 bis 10'],
  ['combative', 'aggressiv'],
  [
    'Type the {x} ({?y}) too, or clear the other figure.',
    'Auch diesen Wert eingeben: {x} ({y}); oder den anderen löschen.',
  ],
  [
    'That is still to come. Type how many minutes ago it was taken.',
    'Das liegt in der Zukunft. Eingeben, vor wie vielen Minuten gemessen wurde.',
  ],
  [
    'Timed before “{x}”. Say fewer minutes here, or more at that one.',
    'Liegt zeitlich vor „{x}“. Hier weniger Minuten angeben oder dort mehr.',
  ],
  [
    'Timed after “{x}”. Say more minutes here, or fewer at that one.',
    'Liegt zeitlich nach „{x}“. Hier mehr Minuten angeben oder dort weniger.',
  ],
  ['by the ward rules', 'nach den Regeln der Station'],
  ['first check of this stay', 'erste Prüfung dieses Aufenthalts'],
  ['first time up since surgery or bed rest', 'erstes Aufstehen nach Operation oder Bettruhe'],
];
