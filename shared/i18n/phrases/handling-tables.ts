/** Rows of the handling tables. Where a row comes from stays as it is cited. */
import type { Phrase } from '../phrase-book.ts';

export const handlingTablePhrases: readonly Phrase[] = [
  ['{what} (OSHA 3182 (2003, rev. 2009), figure {n})', '{what} (OSHA 3182 (2003, rev. 2009), Abbildung {n})'],
  [
    '{what} (OSHA 3182 (2003, rev. 2009), figure {n}, from memory)',
    '{what} (OSHA 3182 (2003, rev. 2009), Abbildung {n}, aus dem Gedächtnis)',
  ],
  [
    '{what} (VA bariatric tables (rev. 2007), restated)',
    '{what} (VA-Tabellen für Schwerlast (rev. 2007), wiedergegeben)',
  ],
  ['do not lift', 'nicht heben'],
  ['severe injury: emergency response, do not lift', 'schwere Verletzung: Notruf, nicht heben'],
  [
    'moderate injury: medical evaluation first, then sling lift, two or more',
    'mittlere Verletzung: erst ärztlich ansehen, dann Lifter, zwei oder mehr',
  ],
  [
    'no or minor injury and gets up alone: stand by',
    'keine oder leichte Verletzung, steht allein auf: in Reichweite',
  ],
  [
    'no or minor injury, does not get up alone: sling lift, two or more',
    'keine oder leichte Verletzung, steht nicht allein auf: Lifter, zwei oder mehr',
  ],
  [
    'Look for injury first. Moderate: medical evaluation before lifting. Severe: emergency response, do not lift.',
    'Erst nach Verletzungen sehen. Mittlere: vor dem Heben ärztlich ansehen. Schwere: Notruf, nicht heben.',
  ],
  ['assists fully: stand by', 'hilft voll mit: in Reichweite'],
  [
    'assists partly, both arms push: the person lifts, one helper pushes the knees back',
    'hilft teilweise mit, beide Arme drücken: die Person hebt sich, eine Hilfe schiebt die Knie zurück',
  ],
  [
    'assists partly, arms do not push: two with a seated transfer aid',
    'hilft teilweise mit, Arme drücken nicht: zwei mit Transferhilfe im Sitzen',
  ],
  [
    'not able to assist, the chair reclines: back down, friction-reducing sheet, two',
    'hilft nicht mit, Stuhl lässt sich neigen: Lehne zurück, Gleitmatte, zwei',
  ],
  [
    'not able to assist, cooperates: sling lift or standing aid without power, one to two',
    'hilft nicht mit, macht mit: Lifter oder Aufstehhilfe ohne Motor, eine bis zwei',
  ],
  [
    'not able to assist, does not cooperate: sling lift, two or more',
    'hilft nicht mit, macht nicht mit: Lifter, zwei oder mehr',
  ],
  [
    'The person lifts with the arms; the helper pushes the knees back',
    'Die Person hebt sich mit den Armen; die Hilfe schiebt die Knie zurück',
  ],
  [
    'For a chair that does not recline. If it does, ask: back down, friction-reducing sheet, two people (figure 5)',
    'Für einen Stuhl, der sich nicht neigen lässt. Sonst fragen: Lehne zurück, Gleitmatte, zwei Personen (Abbildung 5)',
  ],
  ['under 100 lb (45.4 kg): lateral sliding aid, two', 'unter 45,4 kg: Umlagerungshilfe zum Gleiten, zwei'],
  [
    '100 to 200 lb (45.4 to 90.7 kg): lateral sliding aid or friction-reducing sheet, two',
    '45,4 bis 90,7 kg: Umlagerungshilfe zum Gleiten oder Gleitmatte, zwei',
  ],
  [
    'from 200 lb (90.7 kg): lateral sliding aid with three, or a friction-reducing sheet or mechanical device with two',
    'ab 90,7 kg: Umlagerungshilfe zum Gleiten mit dreien, oder Gleitmatte oder mechanische Hilfe mit zweien',
  ],
  ['assists fully: stand by with at least two', 'hilft voll mit: mindestens zwei in Reichweite'],
  [
    'partly or not able: mechanical or air-assisted lateral device or ceiling lift, at least three',
    'hilft teilweise oder nicht mit: mechanische oder luftgestützte Umlagerungshilfe oder Deckenlifter, mindestens drei',
  ],
  [
    'assists fully: no help needed, a positioning aid may be used',
    'hilft voll mit: keine Hilfe nötig, eine Lagerungshilfe ist möglich',
  ],
  [
    'assists partly, from 200 lb (90.7 kg): friction-reducing sheet, at least three',
    'hilft teilweise mit, ab 90,7 kg: Gleitmatte, mindestens drei',
  ],
  [
    'assists partly, under 200 lb (90.7 kg): friction-reducing sheet, two to three; encourage to help',
    'hilft teilweise mit, unter 90,7 kg: Gleitmatte, zwei bis drei; zum Mithelfen ermuntern',
  ],
  [
    'not able to assist: friction-reducing sheet or sling lift, two or more',
    'hilft nicht mit: Gleitmatte oder Lifter, zwei oder mehr',
  ],
  ['comes to the edge alone: stand by', 'kommt allein an die Bettkante: in Reichweite'],
  ['comes to the edge with help: slide sheet, two', 'kommt mit Hilfe an die Bettkante: Gleitmatte, zwei'],
  ['does not come to the edge: sling lift, two', 'kommt nicht an die Bettkante: Lifter, zwei'],
  ['seen to stand free and steady: stand by', 'frei und sicher stehend gesehen: in Reichweite'],
  [
    'not seen to stand free and steady: standing aid, two',
    'nicht frei und sicher stehend gesehen: Aufstehhilfe, zwei',
  ],
  [
    "standing not cleared: only in a staged check or a therapist's session",
    'Stehen nicht erreicht: nur in einer Stufenprüfung oder in der Therapie',
  ],
  ['walked free with nobody helping: stand by', 'frei und ohne Hilfe gegangen: in Reichweite'],
  ['walked free with someone helping: one', 'frei und mit Hilfe gegangen: eine'],
  ['walked held safe: two with a chair following', 'gesichert gegangen: zwei, ein Stuhl folgt'],
  ["walking not cleared: only in a therapist's session", 'Gehen nicht erreicht: nur in der Therapie'],
  ['bears full weight: stand by for safety', 'volle Belastung: zur Sicherheit in Reichweite'],
  ['bears full weight: stand by', 'volle Belastung: in Reichweite'],
  [
    'bears full weight: stand by, if the height of the trolley allows',
    'volle Belastung: in Reichweite, wenn die Höhe der Liege es erlaubt',
  ],
  [
    'bears part of the weight and cooperates: standing aid, or belt with stand and turn',
    'Teilbelastung und macht mit: Aufstehhilfe, oder Haltegurt mit Aufstehen und Drehen',
  ],
  [
    'bears part of the weight and cooperates: standing aid, two',
    'Teilbelastung und macht mit: Aufstehhilfe, zwei',
  ],
  [
    'bears part of the weight and does not cooperate: sling lift',
    'Teilbelastung und macht nicht mit: Lifter',
  ],
  [
    'bears no weight, cooperates, both arms push: seated transfer aid',
    'keine Belastung, macht mit, beide Arme drücken: Transferhilfe im Sitzen',
  ],
  ['bears no weight: sling lift', 'keine Belastung: Lifter'],
  [
    'does not fully cooperate: bariatric lift, at least three',
    'macht nicht ganz mit: Schwerlastlifter, mindestens drei',
  ],
  [
    'cooperates and both arms push: rated seated transfer aid, at least two',
    'macht mit und beide Arme drücken: Transferhilfe im Sitzen mit passender Traglast, mindestens zwei',
  ],
  [
    'cooperates without arm strength: rated standing aid, or bariatric lift',
    'macht mit, ohne Kraft in den Armen: Aufstehhilfe mit passender Traglast, oder Schwerlastlifter',
  ],
  ['sling lift, three people if very heavy', 'Lifter, drei Personen bei sehr hohem Gewicht'],
];
