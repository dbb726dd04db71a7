/** Why a rule refused an entry, and what to do. */
import type { Phrase } from '../phrase-book.ts';

export const refusalPhrases: readonly Phrase[] = [
  // staged check
  [
    'The record names protocol {~a} version {n}; this is {~b} version {m}.',
    'Der Eintrag nennt Protokoll {a} Version {n}; hier gilt {b} Version {m}.',
  ],
  [
    'Open the check again to load the protocol that applies, and record under it.',
    'Prüfung neu öffnen, damit das geltende Protokoll geladen wird, und danach erfassen.',
  ],
  ['Stage "{~a}" is not in protocol {~b}.', 'Stufe "{a}" steht nicht im Protokoll {b}.'],
  ['Use one of: {~list}.', 'Eines davon wählen: {list}.'],
  [
    'Stage "{~a}" stands at place {n}; the protocol has "{~b}" there.',
    'Stufe "{a}" steht an Stelle {n}; im Protokoll steht dort "{b}".',
  ],
  [
    'Record the stages once each in the order {~list}, from the first; one that was left out is "not tested" with its reason.',
    'Stufen je einmal in der Reihenfolge {list} erfassen, von der ersten an; eine ausgelassene ist "nicht geprüft" mit Grund.',
  ],
  [
    '"{~a}" is recorded after "{~b}" was not met: the check stops there.',
    '"{a}" ist nach nicht erfülltem "{b}" erfasst: dort endet die Prüfung.',
  ],
  [
    'Leave the later stages out, or record them as not tested.',
    'Spätere Stufen weglassen oder als nicht geprüft erfassen.',
  ],
  ['"{~a}" is timed before "{~b}".', '"{a}" liegt zeitlich vor "{b}".'],
  ['Check the two times; stages follow one another.', 'Beide Zeiten prüfen; Stufen folgen aufeinander.'],
  ['"{~a}" cannot be secured with {how}.', '"{a}" kann so nicht gesichert werden: {how}.'],
  [
    'Say what held the person: {~list}; or record it as free.',
    'Angeben, was gesichert hat: {list}; oder als frei erfassen.',
  ],
  [
    'Record it as free: nothing holds the person at this stage.',
    'Als frei erfassen: auf dieser Stufe sichert nichts.',
  ],
  ['"{~a}" has no one-leg route.', '"{a}" gibt es nicht auf einem Bein.'],
  ['Leave "one leg" out here; it belongs to standing.', '"Ein Bein" hier weglassen; es gehört zum Stehen.'],
  ['"{~a}" is not a part of {~b}.', '"{a}" ist kein Teil von {b}.'],
  [
    '"{~a}" is tested on each side, and this finding has none.',
    '"{a}" wird auf jeder Seite geprüft, dieser Befund hat keine.',
  ],
  ['Say left or right, one finding a side.', 'Links oder rechts angeben, ein Befund je Seite.'],
  ['"{~a}" has no sides.', '"{a}" hat keine Seiten.'],
  ['Leave the side out.', 'Seite weglassen.'],
  ['"{~a}" {side} is there twice.', '"{a}" {side} steht zweimal da.'],
  ['"{~a}" is there twice.', '"{a}" steht zweimal da.'],
  ['Keep the one that is right.', 'Den richtigen behalten.'],
  ['"{~a}" is no reason for {result}.', '"{a}" ist kein Grund für {result}.'],
  [
    '{~a} is recorded as met, and "{~b}" applies to no leg.',
    '{a} ist als erfüllt erfasst, und "{b}" gilt für kein Bein.',
  ],
  [
    'Record {~a} as not met. A leg with its prosthesis on is tested, not left out.',
    '{a} als nicht erfüllt erfassen. Ein Bein mit Prothese wird geprüft, nicht ausgelassen.',
  ],
  [
    '{~a} is recorded as met, and {~b} has no finding.',
    '{a} ist als erfüllt erfasst, und {b} hat keinen Befund.',
  ],
  [
    'Add the finding; if it was not tested, the stage is not met or not tested.',
    'Befund ergänzen; wurde nicht geprüft, ist die Stufe nicht erfüllt oder nicht geprüft.',
  ],
  ['{~a} is recorded as met, and {~b} was {result}.', '{a} ist als erfüllt erfasst, und {b} war {result}.'],
  [
    'Record {~a} as {result}, or correct the finding.',
    '{a} als {result} erfassen oder den Befund korrigieren.',
  ],
  [
    'Standing on one leg needs both arms pushing, and that is not among the findings.',
    'Stehen auf einem Bein braucht beide Arme zum Drücken, und das fehlt bei den Befunden.',
  ],
  [
    'Add {~a} left and right as met, or record standing as not met.',
    '{a} links und rechts als erfüllt ergänzen oder Stehen als nicht erfüllt erfassen.',
  ],
  [
    '{~a} is recorded as met with symptoms on rising.',
    '{a} ist trotz Symptomen beim Aufstehen als erfüllt erfasst.',
  ],
  [
    'Make safe first; record {~a} as not met and tell a nurse or the prescriber.',
    'Erst sichern; {a} als nicht erfüllt erfassen und Pflege oder ärztlichen Dienst informieren.',
  ],
  [
    'A full check with pressure set has {~a} as met, and these pressures are missing: {what}.',
    'Eine volle Prüfung mit Blutdruckreihe hat {a} als erfüllt, und diese Werte fehlen: {what}.',
  ],
  [
    'Add the readings, or record {~a} as not met. A missing reading is not a normal one.',
    'Messwerte ergänzen oder {a} als nicht erfüllt erfassen. Ein fehlender Wert ist kein normaler.',
  ],
  [
    'A full check with pressure set asks about symptoms on rising, and there is no answer.',
    'Eine volle Prüfung mit Blutdruckreihe fragt nach Symptomen beim Aufstehen, und es gibt keine Antwort.',
  ],
  [
    'Ask about dizziness, faintness, blurred sight and nausea; an empty list means asked and none.',
    'Nach Schwindel, Ohnmacht, verschwommenem Sehen und Übelkeit fragen; eine leere Liste heißt gefragt und keine.',
  ],
  ['this ward has no protocol {~id} version {n}', 'diese Station hat kein Protokoll {id} Version {n}'],
  ['Load the page again and use {~id} version {n}.', 'Seite neu laden und {id} Version {n} benutzen.'],
  ['it is {when}', 'es ist {when}'],
  ['the person arrived {when}', 'die Person kam {when} an'],
  ['the stay ended {when}', 'der Aufenthalt endete {when}'],
  ['{~what} is timed {when}; {outside}', '{what} hat die Zeit {when}; {outside}'],
  ['Correct the time; check the clock of this device.', 'Zeit korrigieren; Uhr dieses Geräts prüfen.'],
  ['a comfort plan stands: no staged check is done', 'ein Komfortplan gilt: keine Stufenprüfung'],
  ["the clinician's own plan stands ({why})", 'der Einzelplan gilt ({why})'],
  [
    'Follow the plan as written. If it no longer applies, a nurse or therapist sets "the staged check applies" first.',
    'Dem Plan folgen, wie er geschrieben ist. Gilt er nicht mehr, setzt erst Pflege oder Therapie "die Stufenprüfung gilt".',
  ],
  [
    'the entry answered is not a trigger of this stay',
    'der genannte Eintrag ist kein Anlass dieses Aufenthalts',
  ],
  [
    'Choose from the triggers shown as open on the stay page.',
    'Aus den offenen Anlässen der Aufenthaltsseite wählen.',
  ],
  ['the trigger came {when}, after this check', 'der Anlass kam {when}, nach dieser Prüfung'],
  [
    'Leave it out: the trigger stays open until a check after it.',
    'Weglassen: der Anlass bleibt bis zu einer späteren Prüfung offen.',
  ],
  [
    'no staged check of this stay stands behind a plan',
    'hinter dem Plan steht keine Stufenprüfung dieses Aufenthalts',
  ],
  [
    'Do a staged check; until then the plan asks for a check before moving.',
    'Stufenprüfung machen; bis dahin verlangt der Plan eine Prüfung vor dem Bewegen.',
  ],
  [
    '{trigger} ({when}) is not answered by watching one move',
    '{trigger} ({when}) wird durch Beobachten eines Bewegens nicht geklärt',
  ],
  ['Do a staged check that answers it.', 'Eine Stufenprüfung machen, die ihn klärt.'],
  ['the plan says hold for this move ({task})', 'der Plan stoppt dieses Bewegen ({task})'],
  [
    'Review the hold first. If the person was moved all the same, record it as a session.',
    'Erst den Stopp prüfen. Wurde trotzdem bewegt, als Mobilisation erfassen.',
  ],
  ['the person arrived {when}, more than {n} h before', 'die Person kam {when} an, mehr als {n} Std. davor'],
  ['Do a staged check now.', 'Jetzt eine Stufenprüfung machen.'],
  [
    'a staged check was recorded {when}; it decides the plan',
    'eine Stufenprüfung wurde {when} erfasst; sie bestimmt den Plan',
  ],
  ['Confirm its plan, or check again.', 'Ihren Plan bestätigen oder noch einmal prüfen.'],
  ['{trigger} ({when}) has not been looked at', 'bei {trigger} ({when}) wurde nicht nachgesehen'],
  ['there is a hold on {what}', 'es gilt ein Stopp für {what}'],
  ['there is a hold on {what} since {when}', 'es gilt ein Stopp für {what} seit {when}'],
  ['Review the hold first.', 'Erst den Stopp prüfen.'],
  [
    'Check the number and whether one parameter scored 3 on the chart, or work it out from its parts.',
    'Zahl prüfen und ob ein Messwert 3 ergab, oder aus den Teilen ausrechnen.',
  ],
  [
    'one parameter at 3 makes a score of at least 3, not {n}',
    'ein Messwert mit 3 ergibt mindestens 3, nicht {n}',
  ],
  [
    'a score of {n} cannot be without one parameter at 3: without one it reaches {a} of {b} at most',
    'ein Wert von {n} ist ohne einen Messwert mit 3 nicht möglich: ohne ihn höchstens {a} von {b}',
  ],
  [
    'this ward has not turned the critical-care limits on',
    'diese Station hat die Intensivgrenzen nicht eingeschaltet',
  ],
  [
    "Publish ward rules with criticalCare.on set, signed by the ward's clinician; or record the readings with a check.",
    'Regeln der Station mit criticalCare.on veröffentlichen, von einer Fachperson unterschrieben; oder die Messwerte mit einer Prüfung erfassen.',
  ],
];
