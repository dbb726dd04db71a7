/** Tier, next check, may we start, pressure on rising. */
import type { Phrase } from '../phrase-book.ts';

export const assessmentPhrases: readonly Phrase[] = [
  // tier
  ['{stage} cleared with all before it', '{stage} erreicht, mit allem davor'],
  ['{stage} cleared with all before it ({how})', '{stage} erreicht, mit allem davor ({how})'],
  [
    '{stage} cleared with all before it, standing on the {side} leg',
    '{stage} erreicht, mit allem davor, im Stehen auf dem Bein {side}',
  ],
  [
    '{stage} cleared with all before it ({how}), standing on the {side} leg',
    '{stage} erreicht, mit allem davor ({how}), im Stehen auf dem Bein {side}',
  ],
  ['{stage} not cleared yet', '{stage} noch nicht erreicht'],
  ['{stage} not met', '{stage} nicht erfüllt'],
  ['{stage} not met: {why}', '{stage} nicht erfüllt: {why}'],
  ['systolic {n} at {x} (limit {m})', 'systolisch {n}, {x} (Grenze {m})'],
  ['{stage} not met at the last check', '{stage} bei der letzten Prüfung nicht erfüllt'],
  ['{stage} not tested at the last check', '{stage} bei der letzten Prüfung nicht geprüft'],
  ['{stage}: not met at the last check', '{stage}: bei der letzten Prüfung nicht erfüllt'],
  ['{stage} was not tested yet: the check goes on', '{stage} noch nicht geprüft: die Prüfung geht weiter'],
  ['{stage} was not met', '{stage} war nicht erfüllt'],
  ['{stage} was not met since', '{stage} war seither nicht erfüllt'],
  ['{stage} is on one leg since', '{stage} ist seither auf einem Bein'],
  ['{stage} taken back: {why}', '{stage} zurückgenommen: {why}'],
  ['to be cleared again: {why}', 'neu zu prüfen: {why}'],
  ['On one leg {stage} is cleared only by a therapist', 'Auf einem Bein gibt nur die Therapie {stage} frei'],
  [
    '{stage} counts as secured: no leg that bears was seen to push against resistance',
    '{stage} zählt als gesichert: kein tragendes Bein hat gegen Widerstand gedrückt',
  ],
  ['not tested: {what}', 'nicht geprüft: {what}'],
  ['{part}: there is no leg it applies to', '{part}: kein Bein, für das es gilt'],
  ['a symptom during it', 'ein Symptom dabei'],
  ['the order lets the {side} leg bear nothing', 'die Anordnung erlaubt keine Belastung des Beins {side}'],
  [
    'the order lets the {side} leg bear nothing: use the one-leg route',
    'die Anordnung erlaubt keine Belastung des Beins {side}: auf einem Bein prüfen',
  ],
  [
    'on one leg both arms must push, and they do not',
    'auf einem Bein müssen beide Arme drücken, und sie tun es nicht',
  ],
  ['both arms pushing, which one leg needs', 'Drücken mit beiden Armen, das auf einem Bein nötig ist'],
  ['Assessed; no stage cleared', 'Geprüft; keine Stufe erreicht'],
  ['Not assessed on this ward', 'Auf dieser Station nicht geprüft'],
  ['Comfort plan: no tier', 'Komfortplan: keine Stufe'],
  [
    "Clinician's plan only: the staged check does not apply",
    'Nur nach Einzelplan: die Stufenprüfung gilt nicht',
  ],
  [
    'A check by someone who may only make it safer: what it cleared does not count',
    'Prüfung von jemandem, der nur sicherer machen darf: was sie freigab, zählt nicht',
  ],
  [
    'Protocol {~id} version {n} is not known here: {what}',
    'Protokoll {id} Version {n} ist hier nicht bekannt: {what}',
  ],
  [
    'it has a stage not met, so nothing stays cleared',
    'eine Stufe war nicht erfüllt, darum gilt nichts als erreicht',
  ],
  [
    'what was found in it stands against moving, so nothing stays cleared',
    'was darin gefunden wurde, spricht gegen das Bewegen, darum gilt nichts als erreicht',
  ],
  ['the check does not count', 'die Prüfung zählt nicht'],
  [
    'Two checks of the same time disagree on {stage}: not met stands until it is checked again',
    'Zwei Prüfungen zur selben Zeit widersprechen sich bei {stage}: nicht erfüllt gilt bis zur neuen Prüfung',
  ],
  // next check
  ['The first check of the stay: with the pressure set', 'Erste Prüfung des Aufenthalts: mit Blutdruckreihe'],
  ['Begins again at {stage}', 'Beginnt wieder bei {stage}'],
  ['begins again at {stage}', 'beginnt wieder bei {stage}'],
  [
    'Nothing changed and nothing open: a nurse watches one ordinary move',
    'Nichts verändert und nichts offen: die Pflege beobachtet ein gewöhnliches Bewegen',
  ],
  [
    'The first time up since surgery or bed rest is still ahead',
    'Das erste Aufstehen nach Operation oder Bettruhe steht noch aus',
  ],
  [
    'First time up since surgery or bed rest is still ahead',
    'Das erste Aufstehen nach Operation oder Bettruhe steht noch aus',
  ],
  [
    'The first time up since surgery or bed rest is to be repeated, held safe',
    'Das erste Aufstehen nach Operation oder Bettruhe ist gesichert zu wiederholen',
  ],
  ['watching one ordinary move answers it too', 'ein gewöhnliches Bewegen zu beobachten genügt auch'],
  ['A symptom at the last check', 'Ein Symptom bei der letzten Prüfung'],
  ['A symptom at the start of the last check', 'Ein Symptom zu Beginn der letzten Prüfung'],
  [
    'The ward works by another protocol since the last check',
    'Die Station arbeitet seit der letzten Prüfung nach einem anderen Protokoll',
  ],
  ['With the pressure set: {why}', 'Mit Blutdruckreihe: {why}'],
  [
    'pressure fell on rising, and no whole set since shows that it is over',
    'der Blutdruck fiel beim Aufstehen, und keine vollständige Reihe zeigt seither, dass es vorbei ist',
  ],
  [
    'stood here, and no whole set was ever measured in this stay',
    'hier gestanden, und in diesem Aufenthalt wurde nie eine vollständige Reihe gemessen',
  ],
  [
    'What was cleared is {n} h old or more: begins again at {stage}',
    'Was erreicht war, ist {n} Std. alt oder älter: beginnt wieder bei {stage}',
  ],
  ['No stage is cleared: begins at {stage}', 'Keine Stufe ist erreicht: beginnt bei {stage}'],
  [
    'Begins at {stage}: cleared with all before it, each less than {n} h ago',
    'Beginnt bei {stage}: erreicht mit allem davor, jeweils vor weniger als {n} Std.',
  ],
  // may we start
  ['Ask first: {why}', 'Erst fragen: {why}'],
  ['to take first: {what}', 'zuerst zu messen: {what}'],
  ['older than {n} h', 'älter als {n} Std.'],
  ['again, by a nurse or therapist', 'noch einmal, durch Pflege oder Therapie'],
  ['systolic {n} mmHg is below {limit}', 'systolisch {n} mmHg liegt unter {limit}'],
  ['low on standing: {what}; take it again at rest', 'niedrig im Stehen: {what}; in Ruhe noch einmal messen'],
  ['systolic {n} mmHg is above {limit}', 'systolisch {n} mmHg liegt über {limit}'],
  ['heart rate {n} a minute', 'Puls {n} pro Minute'],
  ['heart rate {n} is below {limit}', 'Puls {n} liegt unter {limit}'],
  ['heart rate {n} is above {limit}', 'Puls {n} liegt über {limit}'],
  ['heart rate {n} is {limit} or more', 'Puls {n}, Grenze {limit} oder mehr'],
  ['oxygen saturation {n} %', 'Sauerstoffsättigung {n} %'],
  ['oxygen saturation {n} % is below {limit} %', 'Sauerstoffsättigung {n} % liegt unter {limit} %'],
  ['oxygen saturation {n} % is below {limit}', 'Sauerstoffsättigung {n} % liegt unter {limit}'],
  [
    'oxygen saturation {n} % is below the own target of {limit} %',
    'Sauerstoffsättigung {n} % liegt unter dem eigenen Ziel von {limit} %',
  ],
  [
    'oxygen saturation {n} % is below the own target of {limit}',
    'Sauerstoffsättigung {n} % liegt unter dem eigenen Ziel von {limit}',
  ],
  ["the person's own target, by order", 'das eigene Ziel der Person, laut Anordnung'],
  ['breathing rate {n} a minute', 'Atemfrequenz {n} pro Minute'],
  ['breathing rate {n} is {limit} or less', 'Atemfrequenz {n}, Grenze {limit} oder weniger'],
  ['breathing rate {n} is above {limit}', 'Atemfrequenz {n} liegt über {limit}'],
  ['temperature {n} °C is {limit} or more', 'Temperatur {n} °C, Grenze {limit} oder mehr'],
  ['pain {n} of 10: relief first', 'Schmerz {n} von 10: erst lindern'],
  [
    'pain {n} of 10: offer relief, come back when it works',
    'Schmerz {n} von 10: Linderung anbieten, wiederkommen, wenn sie wirkt',
  ],
  ['pain {n} of 10 is {limit} or more', 'Schmerz {n} von 10, Grenze {limit} oder mehr'],
  ['effort {n} of 10 is {limit} or more', 'Anstrengung {n} von 10, Grenze {limit} oder mehr'],
  [
    'on {n} litres of oxygen a minute; the flow before is not known',
    'bekommt {n} Liter Sauerstoff pro Minute; der Fluss davor ist nicht bekannt',
  ],
  [
    'more oxygen than at the last check ({a} to {b} litres a minute)',
    'mehr Sauerstoff als bei der letzten Prüfung ({a} auf {b} Liter pro Minute)',
  ],
  ['does not wait for help: never alone', 'wartet nicht auf Hilfe: nie allein lassen'],
  ['waits for help only sometimes: never alone', 'wartet nur manchmal auf Hilfe: nie allein lassen'],
  [
    'does not follow instructions: ask who should be there and how to ask',
    'folgt Anweisungen nicht: fragen, wer dabei sein soll und wie man es sagt',
  ],
  [
    'not known whether the person waits for help: never alone',
    'nicht bekannt, ob die Person auf Hilfe wartet: nie allein lassen',
  ],
  ['not known whether the person follows instructions', 'nicht bekannt, ob die Person Anweisungen folgt'],
  [
    '{what}: not seen for {n} h or more, ask again',
    '{what}: seit {n} Std. oder länger nicht gesehen, noch einmal fragen',
  ],
  ['waits for help', 'wartet auf Hilfe'],
  [
    'symptoms on rising at the last check ({what})',
    'Symptome beim Aufstehen bei der letzten Prüfung ({what})',
  ],
  [
    'standing systolic {n} mmHg at the last check is below {limit}',
    'systolisch im Stehen {n} mmHg bei der letzten Prüfung, unter {limit}',
  ],
  ['Stand not cleared since', 'Stehen seither nicht erreicht'],
  ['{trigger}; not looked at since', '{trigger}; seither nicht nachgesehen'],
  ['early-warning score {n} is {limit} or more', 'Frühwarnwert {n}, Grenze {limit} oder mehr'],
  ['early-warning score {n} with one parameter at 3', 'Frühwarnwert {n}, ein Messwert mit 3'],
  [
    'early-warning score {n} is {limit} or more with one parameter at 3',
    'Frühwarnwert {n}, Grenze {limit} oder mehr, ein Messwert mit 3',
  ],
  ['early-warning score {n}', 'Frühwarnwert {n}'],
  // pressure on rising
  ['PRESSURE DROP', 'BLUTDRUCKABFALL'],
  ['PRESSURE DROP: one more person on rising', 'BLUTDRUCKABFALL: eine Person mehr beim Aufstehen'],
  ['PRESSURE DROP on rising: one more person', 'BLUTDRUCKABFALL beim Aufstehen: eine Person mehr'],
  [
    'PRESSURE DROP on rising: rise in steps, sit first, one more person; prescriber told',
    'BLUTDRUCKABFALL beim Aufstehen: schrittweise aufstehen, erst sitzen, eine Person mehr; ärztlicher Dienst informiert',
  ],
  ['Pressure on rising INCOMPLETE: {what} missing', 'Blutdruck beim Aufstehen UNVOLLSTÄNDIG: {what} fehlt'],
  [
    'Make safe: sit or lie the person down. No further standing now',
    'Sichern: hinsetzen oder hinlegen. Jetzt nicht weiter stehen',
  ],
  ['Standing is not cleared: {why}', 'Stehen ist nicht erreicht: {why}'],
  [
    'Take the whole set again, and ask about symptoms, before standing counts',
    'Die ganze Reihe neu messen und nach Symptomen fragen, bevor Stehen zählt',
  ],
  ['Tell the prescriber', 'Ärztlichen Dienst informieren'],
  [
    'A fall without symptoms: sit for {n} min, then stand and measure once more',
    'Abfall ohne Symptome: {n} Min. sitzen, dann aufstehen und noch einmal messen',
  ],
  ['Until then standing counts with the caution. {what}', 'Bis dahin zählt Stehen mit Vorsicht. {what}'],
  ['Tried once more after sitting. {what}', 'Nach dem Sitzen noch einmal versucht. {what}'],
  [
    'No pressure was taken at rest and standing: nothing is said for or against it',
    'Kein Blutdruck in Ruhe und im Stehen gemessen: nichts spricht dafür oder dagegen',
  ],
  ['symptoms on rising ({what})', 'Symptome beim Aufstehen ({what})'],
  ['symptoms on rising were not asked', 'nach Symptomen beim Aufstehen wurde nicht gefragt'],
  ['the pressure set is incomplete: {what} missing', 'die Blutdruckreihe ist unvollständig: {what} fehlt'],
  ['heart rate rose {by}, to {n} at {at}', 'Puls um {by} gestiegen, auf {n} bei {at}'],
  ['systolic rose {by} on standing, to {n}', 'systolisch um {by} gestiegen im Stehen, auf {n}'],
  ['systolic rose {by} on standing, to {n}, high', 'systolisch um {by} gestiegen im Stehen, auf {n}, hoch'],
  [
    'lying systolic is high ({n}): by the limit of {limit} this is a fall',
    'systolisch im Liegen hoch ({n}): nach der Grenze von {limit} ist das ein Abfall',
  ],
  [
    'lying systolic is high ({n}): by the limit of {limit} this is not a fall',
    'systolisch im Liegen hoch ({n}): nach der Grenze von {limit} ist das kein Abfall',
  ],
  [
    'systolic fell {n}: from {~a} {b} to {~c} at {d} (limit {m})',
    'systolisch um {n} gefallen: von {a} ({b}) auf {c} bei {d} (Grenze {m})',
  ],
  [
    'diastolic fell {n}: from {~a} {b} to {~c} at {d} (limit {m})',
    'diastolisch um {n} gefallen: von {a} ({b}) auf {c} bei {d} (Grenze {m})',
  ],
  [
    'initial systolic fell {n}: from {~a} {b} to {~c} at {d} (limit {m})',
    'systolisch anfangs um {n} gefallen: von {a} ({b}) auf {c} bei {d} (Grenze {m})',
  ],
  [
    'initial diastolic fell {n}: from {~a} {b} to {~c} at {d} (limit {m})',
    'diastolisch anfangs um {n} gefallen: von {a} ({b}) auf {c} bei {d} (Grenze {m})',
  ],
  [
    'the fall was gone at {at}; a fall at any reading counts here (CDC 2017), the 2011 consensus asks for one that lasts',
    'bei {at} war der Abfall vorbei; hier zählt ein Abfall bei jeder Messung (CDC 2017), der Konsens von 2011 verlangt einen anhaltenden',
  ],
  ['15 s standing', '15 s im Stehen'],
  // early warning as charted
  ['one parameter at 3', 'ein Messwert mit 3'],
  ['which oxygen scale', 'welche Sauerstoffskala'],
  ['on air or on oxygen', 'Raumluft oder Sauerstoff'],
  ['systolic pressure', 'systolischer Blutdruck'],
  ['new confusion', 'neue Verwirrtheit'],
  ['answers to voice only', 'reagiert nur auf Ansprache'],
  ['answers to pain only', 'reagiert nur auf Schmerz'],
  ['does not answer', 'reagiert nicht'],
  ['alert', 'wach'],
  ['observe at least every 12 hours', 'mindestens alle 12 Stunden beobachten'],
  [
    'a nurse decides how often to observe, at least every 4 to 6 hours',
    'die Pflege entscheidet, wie oft beobachtet wird, mindestens alle 4 bis 6 Stunden',
  ],
  [
    'a clinician of the ward looks urgently; observe at least every hour',
    'eine Fachperson der Station sieht dringend nach; mindestens stündlich beobachten',
  ],
  [
    'urgent review by a clinician within 1 hour; observe at least every hour',
    'dringende Prüfung durch eine Fachperson binnen 1 Stunde; mindestens stündlich beobachten',
  ],
  [
    'emergency review within 30 minutes; observe all the time',
    'Notfallprüfung binnen 30 Minuten; ständig beobachten',
  ],
  ['Not for people under 16 or in pregnancy.', 'Nicht für Personen unter 16 oder in der Schwangerschaft.'],
  [
    'Scale 2 only where a competent clinician has written down a target of 88-92 %.',
    'Skala 2 nur, wenn eine befugte Fachperson ein Ziel von 88-92 % festgelegt hat.',
  ],
  [
    'Not a substitute for clinical judgement: whoever is worried asks, whatever the number.',
    'Kein Ersatz für klinisches Urteil: wer sich sorgt, fragt, egal welche Zahl.',
  ],
];
