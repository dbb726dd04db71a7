/** Walking measures: what was done, and how it reads against published tables. */
import type { Phrase } from '../phrase-book.ts';

export const measurePhrases: readonly Phrase[] = [
  ['Walking measures turned on', 'Gehmessungen eingeschaltet'],
  ['Walking measures turned off', 'Gehmessungen ausgeschaltet'],
  ['Walking speed: {n} m in {s} s (usual pace)', 'Gehgeschwindigkeit: {n} m in {s} s (gewohntes Tempo)'],
  ['Walking speed: {n} m in {s} s (fast pace)', 'Gehgeschwindigkeit: {n} m in {s} s (schnelles Tempo)'],
  ['Six-minute walk: {n} m', 'Gehen über sechs Minuten: {n} m'],
  ['Chair stands in 30 s: {n}', 'Aufstehen in 30 s: {n}'],
  ['Chair stands in 30 s: {n}, with arms', 'Aufstehen in 30 s: {n}, mit Armen'],
  ['Five rises from a chair: {how}', 'Fünfmal aufstehen: {how}'],
  ['Up and go over 3 m: {how}', 'Aufstehen und 3 m gehen: {how}'],
  ['not managed', 'nicht geschafft'],
  // against the time before
  [
    'Not compared with the one before: done in another way.',
    'Nicht mit dem vorigen Mal verglichen: anders gemacht.',
  ],
  ['Not managed the time before either.', 'Auch voriges Mal nicht geschafft.'],
  ['Not managed the time before.', 'Voriges Mal nicht geschafft.'],
  ['Managed the time before, not this time.', 'Voriges Mal geschafft, diesmal nicht.'],
  ['The same as the time before.', 'Wie voriges Mal.'],
  ['{n} m more than the time before.', '{n} m mehr als voriges Mal.'],
  ['{n} m less than the time before.', '{n} m weniger als voriges Mal.'],
  ['{n} more than the time before.', '{n} mehr als voriges Mal.'],
  ['{n} fewer than the time before.', '{n} weniger als voriges Mal.'],
  ['{n} s slower than the time before.', '{n} s langsamer als voriges Mal.'],
  ['{n} s quicker than the time before.', '{n} s schneller als voriges Mal.'],
  ['As fast as the time before', 'So schnell wie voriges Mal'],
  ['{n} m/s faster than the time before', '{n} m/s schneller als voriges Mal'],
  ['{n} m/s slower than the time before', '{n} m/s langsamer als voriges Mal'],
  ['a substantial change ({n} or more).', 'eine deutliche Änderung ({n} oder mehr).'],
  ['a small change that counts ({n} or more).', 'eine kleine Änderung, die zählt ({n} oder mehr).'],
  ['less than a change that counts ({n} or more).', 'weniger als eine Änderung, die zählt ({n} oder mehr).'],
  // readings
  ['age and sex not given', 'Alter und Geschlecht nicht angegeben'],
  ['age and sex', 'Alter und Geschlecht'],
  ['height', 'Größe'],
  ['weight', 'Gewicht'],
  ['{what} not given', '{what} nicht angegeben'],
  ['{n} m/s', '{n} m/s'],
  ['{n} to {m} m/s', '{n} bis {m} m/s'],
  ['No norm: {why}.', 'Keine Norm: {why}.'],
  [
    'the table and the cut points are for the usual pace',
    'Tabelle und Grenzen gelten für das gewohnte Tempo',
  ],
  ['walking at home only (under {n} m/s).', 'Gehen nur zu Hause (unter {n} m/s).'],
  ['walking in the community (over {n} m/s).', 'Gehen auch außer Haus (über {n} m/s).'],
  ['limited walking in the community ({range}).', 'begrenztes Gehen außer Haus ({range}).'],
  [
    'Under {n} m/s: reads as higher risk in older people.',
    'Unter {n} m/s: bei Älteren ein Zeichen für höheres Risiko.',
  ],
  ['Not under {n} m/s.', 'Nicht unter {n} m/s.'],
  [
    'Not over {n} m/s: reads as more falls in older people.',
    'Nicht über {n} m/s: bei Älteren ein Zeichen für mehr Stürze.',
  ],
  [
    'Slower than the mean of healthy {who} ({n} m/s).',
    'Langsamer als der Mittelwert gesunder {who} ({n} m/s).',
  ],
  [
    'Not slower than the mean of healthy {who} ({n} m/s).',
    'Nicht langsamer als der Mittelwert gesunder {who} ({n} m/s).',
  ],
  ['men of {a} to {b}', 'Männer von {a} bis {b}'],
  ['women of {a} to {b}', 'Frauen von {a} bis {b}'],
  ['walked with a turn', 'mit Wende gegangen'],
  ['timed from standing', 'aus dem Stand gemessen'],
  ['the table is for ages {a} to {b}', 'die Tabelle gilt für {a} bis {b} Jahre'],
  ['the equation is for ages {a} to {b}', 'die Formel gilt für {a} bis {b} Jahre'],
  [
    'the equation does not fit this height and weight',
    'die Formel passt nicht zu dieser Größe und diesem Gewicht',
  ],
  ['arms were used', 'Arme wurden benutzt'],
  ['Below the lower limit of normal', 'Unter der unteren Normgrenze'],
  [
    'Below the reference, not below the lower limit of normal',
    'Unter dem Bezugswert, nicht unter der unteren Normgrenze',
  ],
  ['Not below the reference', 'Nicht unter dem Bezugswert'],
  [
    '{verdict}: reference {n} m, lower limit {m} m for this age, sex, height and weight.',
    '{verdict}: Bezugswert {n} m, untere Grenze {m} m für Alter, Geschlecht, Größe und Gewicht.',
  ],
  [
    'Arms were used, so it counts as 0 by the published rule.',
    'Arme wurden benutzt, darum zählt es nach der veröffentlichten Regel als 0.',
  ],
  ['Below average for {who} (fewer than {n}).', 'Unter dem Durchschnitt für {who} (weniger als {n}).'],
  ['Not below average for {who} ({n} or more).', 'Nicht unter dem Durchschnitt für {who} ({n} oder mehr).'],
  ['Not managed: reads as slow (over {n} s).', 'Nicht geschafft: gilt als langsam (über {n} s).'],
  ['Slow: over {n} s.', 'Langsam: über {n} s.'],
  ['Slow even with arms: over {n} s.', 'Langsam auch mit Armen: über {n} s.'],
  ['Not slow: not over {n} s.', 'Nicht langsam: nicht über {n} s.'],
  [
    'Not managed: reads as at risk of falling ({n} s or more).',
    'Nicht geschafft: gilt als sturzgefährdet ({n} s oder mehr).',
  ],
  ['At risk of falling: {n} s or more.', 'Sturzgefährdet: {n} s oder mehr.'],
  ['Under the cut point for risk of falling ({n} s).', 'Unter der Grenze für Sturzgefahr ({n} s).'],
  // warnings
  [
    'Not a diagnosis. The published numbers are mostly of people who were not ill in hospital. To be on the good side of a cut point frees nothing and changes no plan: orders, the plan and the clinician at the bedside come first.',
    'Keine Diagnose. Die veröffentlichten Zahlen stammen meist von Menschen, die nicht krank im Krankenhaus lagen. Ein guter Wert gibt nichts frei und ändert keinen Plan: Anordnungen, der Plan und die Fachperson am Bett gehen vor.',
  ],
  [
    'With a turn the speed reads lower than straight ahead.',
    'Mit Wende ist die Geschwindigkeit niedriger als geradeaus.',
  ],
  [
    'Timed from standing the speed reads lower than already walking.',
    'Aus dem Stand gemessen ist die Geschwindigkeit niedriger als im Gehen.',
  ],
  [
    'The authors of the table: not valid over a short course from a word to go, or with a turn.',
    'Laut Tabelle nicht gültig auf kurzer Strecke auf Kommando oder mit Wende.',
  ],
  [
    'The bands {range} were set with people after a stroke (from memory).',
    'Die Bereiche {range} stammen von Menschen nach Schlaganfall (aus dem Gedächtnis).',
  ],
  [
    'Only for six full minutes: a shorter walk is not multiplied up.',
    'Nur für volle sechs Minuten: kürzeres Gehen wird nicht hochgerechnet.',
  ],
  [
    'From a chair about 43 cm high without arms; more than half-way up at 30 s counts as a stand.',
    'Von einem etwa 43 cm hohen Stuhl ohne Arme; mehr als halb aufgestanden bei 30 s zählt.',
  ],
  [
    'The cut point is for rising without arms, from a chair without arms.',
    'Die Grenze gilt für Aufstehen ohne Arme, von einem Stuhl ohne Armlehnen.',
  ],
  [
    'Walked with {what}: compare it only with a walk with the same.',
    'Gegangen mit: {what}. Nur mit einem Gehen mit demselben vergleichen.',
  ],
  ['a stick', 'Gehstock'],
  ['a frame', 'Gehgestell'],
  ['a wheeled frame', 'Rollator'],
  [
    'Entered by someone who does not take this measure: repeat it.',
    'Von jemandem eingetragen, der das nicht misst: wiederholen.',
  ],
  // why not now
  ['{doing} is not cleared; the tier is {tier}', '{doing} ist nicht erreicht; die Stufe ist {tier}'],
  ['none: the staged check does not apply', 'keine: die Stufenprüfung gilt nicht'],
  ['a hold stops {doing}: {why}', 'ein Stopp verbietet {doing}: {why}'],
  [
    'the order allows activity up to {most}, not {doing}',
    'die Anordnung erlaubt Aktivität bis {most}, nicht {doing}',
  ],
  [
    'the order lets a leg bear nothing: rises from a chair say nothing then',
    'laut Anordnung darf ein Bein nicht belastet werden: Aufstehen vom Stuhl sagt dann nichts aus',
  ],
  ['how this person moves now is not known', 'wie sich diese Person jetzt bewegt, ist nicht bekannt'],
  ['the plan says HOLD for {doing}', 'der Plan sagt STOPP für {doing}'],
];
