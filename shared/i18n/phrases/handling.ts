/** How to move the person: capability, plan, cautions. */
import type { Phrase } from '../phrase-book.ts';

export const handlingPhrases: readonly Phrase[] = [
  // the plan
  [
    'A nurse saw the person walk steadily on arrival: stand by for {n} h',
    'Die Pflege sah die Person bei Ankunft sicher gehen: {n} Std. in Reichweite',
  ],
  ['CHECK BEFORE MOVING: {why}', 'VOR DEM BEWEGEN PRÜFEN: {why}'],
  ['not known here. If it cannot wait: {what}', 'hier nicht bekannt. Wenn es nicht warten kann: {what}'],
  ['two people and a sling lift', 'zwei Personen und Lifter mit Hebetuch'],
  ['no standing or walking', 'kein Stehen oder Gehen'],
  [
    'Not known here: no standing or walking before a check',
    'Hier nicht bekannt: kein Stehen oder Gehen vor einer Prüfung',
  ],
  [
    'Stand by unless a nurse or therapist sets "on own"',
    'In Reichweite, solange Pflege oder Therapie nicht "allein" setzt',
  ],
  [
    'Re-check: the last plan is kept until then, never less',
    'Neu prüfen: bis dahin gilt der letzte Plan, nie weniger',
  ],
  [
    'Two rules ask for aids that cannot be combined ({a}): ask',
    'Zwei Regeln verlangen Hilfsmittel, die nicht zusammen gehen ({a}): fragen',
  ],
  ['Aids that cannot be combined ({a}): ask', 'Hilfsmittel, die nicht zusammen gehen ({a}): fragen'],
  [
    'Night, within {n} h of a sedative: one more person',
    'Nacht, binnen {n} Std. nach Sedierung: eine Person mehr',
  ],
  ['Night: at least stand by to the toilet', 'Nacht: zur Toilette mindestens in Reichweite'],
  ['On own set: {where}, {when}', 'Allein gesetzt: {where}, {when}'],
  ['On own does not count while a hold is on', 'Allein zählt nicht, solange ein Stopp gilt'],
  [
    'On own does not count while standing or walking is stopped',
    'Allein zählt nicht, solange Stehen oder Gehen gestoppt ist',
  ],
  // triggers
  [
    '{what}: stay put until a nurse has looked; what cannot wait needs one more person',
    '{what}: liegen oder sitzen lassen, bis die Pflege nachgesehen hat; was nicht warten kann, braucht eine Person mehr',
  ],
  [
    '{what}: re-check before moving, one more person until then',
    '{what}: vor dem Bewegen neu prüfen, bis dahin eine Person mehr',
  ],
  [
    'Nerve block on: no standing or walking until a nurse has looked, one more person',
    'Nervenblockade an: kein Stehen oder Gehen, bis die Pflege nachgesehen hat, eine Person mehr',
  ],
  ['Clot suspected', 'Verdacht auf Thrombose'],
  // cautions
  [
    'Waits for help: {how}. Never alone, one person within reach day and night',
    'Wartet auf Hilfe: {how}. Nie allein lassen, Tag und Nacht eine Person in Reichweite',
  ],
  [
    'First time up since surgery or bed rest was done free: to be repeated, held safe',
    'Das erste Aufstehen nach Operation oder Bettruhe war frei: gesichert wiederholen',
  ],
  [
    'First time up since surgery or bed rest: pressure set, two people whatever the tier',
    'Erstes Aufstehen nach Operation oder Bettruhe: Blutdruckreihe, zwei Personen bei jeder Stufe',
  ],
  [
    'Up free at the first time since surgery or bed rest: two people until it is repeated',
    'Beim ersten Mal nach Operation oder Bettruhe frei auf: zwei Personen, bis es wiederholt ist',
  ],
  ['Chair behind, shoes on, bed low, brakes on', 'Stuhl dahinter, Schuhe an, Bett tief, Bremsen fest'],
  ['Sedative given: one more person at night', 'Sedierung gegeben: nachts eine Person mehr'],
  ['Weight unknown: weigh or estimate', 'Gewicht nicht bekannt: wiegen oder schätzen'],
  [
    'An ordinary toilet carries about {n} kg: use a commode rated for the weight',
    'Eine gewöhnliche Toilette trägt etwa {n} kg: einen Toilettenstuhl für dieses Gewicht nehmen',
  ],
  ['Weight is an estimate: counts with the margin added', 'Gewicht ist geschätzt: zählt mit Zuschlag'],
  [
    "Weight unknown: only the ward's highest-rated lift; weigh or estimate",
    'Gewicht nicht bekannt: nur der Lifter mit der höchsten Traglast; wiegen oder schätzen',
  ],
  [
    'Weight unknown, or from the bariatric weight up: nobody pushes alone, two people',
    'Gewicht nicht bekannt oder ab dem Schwerlastgewicht: niemand schiebt allein, zwei Personen',
  ],
  [
    'Weight read by someone who may not free: "unknown" still counts until a nurse records it',
    'Gewicht von jemandem, der nicht freigeben darf: "nicht bekannt" gilt, bis die Pflege es erfasst',
  ],
  [
    'Weight read by someone who may not free: the heavier one before it still counts until a nurse records it',
    'Gewicht von jemandem, der nicht freigeben darf: das höhere davor gilt, bis die Pflege es erfasst',
  ],
  ['From {n} kg: {what}', 'Ab {n} kg: {what}'],
  ['{n} kg is {m} kg or more: {what}', '{n} kg, ab {m} kg: {what}'],
  ['Weight unknown: {what}', 'Gewicht nicht bekannt: {what}'],
  ['bariatric lift, at least three', 'Schwerlastlifter, mindestens drei'],
  ['aid rated for the weight, at least two', 'Hilfsmittel mit passender Traglast, mindestens zwei'],
  ['{n} attachments: one more person', '{n} Zu- und Ableitungen: eine Person mehr'],
  ['{what}: one more person', '{what}: eine Person mehr'],
  ['{what} needs a person to itself', '{what} braucht eine eigene Person'],
  ['needs a person to itself', 'braucht eine eigene Person'],
  ['nobody disconnects it', 'niemand trennt ab'],
  ['a nurse disconnects it', 'die Pflege trennt ab'],
  ['nurse disconnects it', 'die Pflege trennt ab'],
  ['anyone trained disconnects it', 'wer eingewiesen ist, trennt ab'],
  [
    '{what} said to be removed, by someone who may not free: still counted',
    '{what} als entfernt gemeldet, von jemandem, der nicht freigeben darf: zählt weiter',
  ],
  ['Own walking support: {what}', 'Eigene Gehhilfe: {what}'],
  // what was seen
  [
    'Comes to the edge of the bed alone: assists fully in bed',
    'Kommt allein an die Bettkante: hilft im Bett voll mit',
  ],
  [
    'Sits upright in bed but was not seen to come to the edge alone: assists partly',
    'Sitzt aufrecht im Bett, kam aber nicht allein an die Bettkante: hilft teilweise mit',
  ],
  [
    'Not seen upright in bed: counts as not able to assist',
    'Nicht aufrecht im Bett gesehen: gilt als nicht mithelfend',
  ],
  [
    'Sitting unheld was not met at the last check: counts as no sitting balance',
    'Freies Sitzen wurde bei der letzten Prüfung nicht erfüllt: gilt als ohne Sitzbalance',
  ],
  [
    'Held safe at the edge of the bed: counts as no sitting balance',
    'An der Bettkante gesichert: gilt als ohne Sitzbalance',
  ],
  [
    'Following instructions was not seen: counts as not able to assist',
    'Anweisungen zu folgen wurde nicht gesehen: gilt als nicht mithelfend',
  ],
  [
    'Seen standing: left leg {left}, right leg {right}; as a whole {all}',
    'Stehend gesehen: linkes Bein {left}, rechtes Bein {right}; insgesamt {all}',
  ],
  [
    'Not seen standing here, so counts as bearing no weight',
    'Hier nicht stehend gesehen, gilt als ohne Belastung',
  ],
  [
    'Whether the person waits for help and follows instructions is not recorded',
    'Ob die Person auf Hilfe wartet und Anweisungen folgt, ist nicht erfasst',
  ],
  [
    'Waits for help: {waits}; follows instructions: {follows} (the worst of the last {n} h decides)',
    'Wartet auf Hilfe: {waits}; folgt Anweisungen: {follows} (das Schlechteste der letzten {n} Std. zählt)',
  ],
  // why more help
  [
    'No leg may bear weight, or none was seen to: no standing',
    'Kein Bein darf tragen oder wurde tragend gesehen: kein Stehen',
  ],
  [
    'No leg may bear weight, or none was seen to: no walking',
    'Kein Bein darf tragen oder wurde tragend gesehen: kein Gehen',
  ],
  [
    'A leg bears in part or not at all: one person and the walking support',
    'Ein Bein trägt teilweise oder nicht: eine Person und die Gehhilfe',
  ],
  [
    'A leg bears in part or not at all, and no arm may push or was seen to: ask',
    'Ein Bein trägt teilweise oder nicht, und kein Arm darf drücken oder tat es: fragen',
  ],
  ['{what}; two while no arm was seen to push', '{what}; zwei, solange kein Arm drückte'],
  ['Only one arm pushes: ask which walking support', 'Nur ein Arm drückt: fragen, welche Gehhilfe'],
  [
    'Order: {limbs} bears nothing, and the {support} needs it: ask',
    'Anordnung: {limbs} ohne Belastung, und die Gehhilfe ({support}) braucht sie: fragen',
  ],
  [
    'Not known to follow instructions and wait for help: one person within reach',
    'Nicht bekannt, ob Anweisungen gefolgt und auf Hilfe gewartet wird: eine Person in Reichweite',
  ],
  [
    'A standing aid needs sitting balance, a leg that bears, instructions followed, grip and arms that may pull',
    'Eine Aufstehhilfe braucht Sitzbalance, ein tragendes Bein, Folgen von Anweisungen, Griff und Arme, die ziehen dürfen',
  ],
  [
    'a standing aid needs sitting balance, a leg that bears, instructions followed, grip and arms that may pull: sling lift instead',
    'eine Aufstehhilfe braucht Sitzbalance, ein tragendes Bein, Folgen von Anweisungen, Griff und Arme, die ziehen dürfen: stattdessen Lifter',
  ],
  [
    'a belt needs sitting balance, a leg that bears, instructions followed, grip and arms that may pull: sling lift instead',
    'ein Haltegurt braucht Sitzbalance, ein tragendes Bein, Folgen von Anweisungen, Griff und Arme, die ziehen dürfen: stattdessen Lifter',
  ],
  [
    'Standing only in a staged check or with a therapist',
    'Stehen nur in einer Stufenprüfung oder mit der Therapie',
  ],
  ['As many people as at the check', 'So viele Personen wie bei der Prüfung'],
  [
    "Order: left leg bears nothing, and walking on one leg was not cleared by a therapist: walking only in a therapist's session",
    'Anordnung: linkes Bein ohne Belastung, und das Gehen auf einem Bein hat die Therapie nicht freigegeben: Gehen nur in der Therapie',
  ],
  [
    "Order: right leg bears nothing, and walking on one leg was not cleared by a therapist: walking only in a therapist's session",
    'Anordnung: rechtes Bein ohne Belastung, und das Gehen auf einem Bein hat die Therapie nicht freigegeben: Gehen nur in der Therapie',
  ],
  ["Walking only in a therapist's session", 'Gehen nur in der Therapie'],
  ['the first walk with two and a chair following', 'das erste Gehen mit zweien, ein Stuhl folgt'],
  ['Stood {how}, not free: the plan keeps that', 'Gestanden {how}, nicht frei: der Plan behält das'],
  ['Walked {how}, not free: the plan keeps that', 'Gegangen {how}, nicht frei: der Plan behält das'],
  [
    'The first walk here: two people and a chair following',
    'Das erste Gehen hier: zwei Personen, ein Stuhl folgt',
  ],
  [
    'Sitting at the edge was tried and not met: {people}',
    'Sitzen an der Bettkante wurde versucht und nicht erfüllt: {people}',
  ],
  [
    'Sitting at the edge was held safe, not free: the plan keeps that',
    'Sitzen an der Bettkante war gesichert, nicht frei: der Plan behält das',
  ],
  ['Standing was tried and not met: {people}', 'Stehen wurde versucht und nicht erfüllt: {people}'],
  ['Turning was tried and not met: {people}', 'Drehen wurde versucht und nicht erfüllt: {people}'],
  [
    'Standing was held safe, not free: the plan keeps that',
    'Stehen war gesichert, nicht frei: der Plan behält das',
  ],
  [
    'Turning was held safe, not free: the plan keeps that',
    'Drehen war gesichert, nicht frei: der Plan behält das',
  ],
  [
    'Standing was helped by {people}: the plan keeps that',
    'Stehen gelang mit Hilfe ({people}): der Plan behält das',
  ],
  [
    'Turning was helped by {people}: the plan keeps that',
    'Drehen gelang mit Hilfe ({people}): der Plan behält das',
  ],
  [
    'Bears full weight but is not known to follow instructions and wait for help: taken as partial and not cooperating',
    'Volle Belastung, aber nicht bekannt, ob Anweisungen gefolgt und auf Hilfe gewartet wird: gilt als teilweise und nicht mitmachend',
  ],
  [
    'Bears full weight but was not seen to stand and turn free: taken as partial (ours, practice)',
    'Volle Belastung, aber nicht frei stehend und drehend gesehen: gilt als teilweise (eigene Regel, Praxis)',
  ],
  ['{why}; taken as partial (ours, practice)', '{why}; gilt als teilweise (eigene Regel, Praxis)'],
  [
    'A seated transfer needs sitting balance cleared today and grip: as if the arms did not push',
    'Ein Transfer im Sitzen braucht heute geprüfte Sitzbalance und Griff: als ob die Arme nicht drückten',
  ],
  [
    'A seated aid needs sitting balance cleared today: sling lift instead',
    'Eine Hilfe im Sitzen braucht heute geprüfte Sitzbalance: stattdessen Lifter',
  ],
  [
    'Did not come to the edge of the bed free and alone: does not get up alone',
    'Kam nicht frei und allein an die Bettkante: steht nicht allein auf',
  ],
  ['From a chair: HOLD as bed to chair, ask', 'Vom Stuhl: STOPP wie vom Bett zum Stuhl, fragen'],
  ['From a chair: as bed to chair: {people}, {aid}', 'Vom Stuhl: wie vom Bett zum Stuhl: {people}, {aid}'],
  ['From a chair: as bed to chair: {people}', 'Vom Stuhl: wie vom Bett zum Stuhl: {people}'],
  ['From a chair: sling lift, two', 'Vom Stuhl: Lifter mit Hebetuch, zwei'],
  ['From a chair: {what}', 'Vom Stuhl: {what}'],
  // manual load
  [
    'Leg: a limb sling; too heavy for two people, or weight unknown',
    'Bein: Beinschlinge; zu schwer für zwei Personen, oder Gewicht nicht bekannt',
  ],
  ['Leg: two people or a limb sling', 'Bein: zwei Personen oder Beinschlinge'],
  ['Holding a leg up: two people or a limb sling', 'Bein hochhalten: zwei Personen oder Beinschlinge'],
  [
    'A leg is up to {n} % of the body ({?source}); one carer may lift {m} kg ({?limit})',
    'Ein Bein wiegt bis {n} % des Körpers ({source}); eine Person darf {m} kg heben ({limit})',
  ],
  [
    'A leg is up to {n} % of the body ({?source}); one carer may hold up {m} kg ({?limit})',
    'Ein Bein wiegt bis {n} % des Körpers ({source}); eine Person darf {m} kg hochhalten ({limit})',
  ],
];
