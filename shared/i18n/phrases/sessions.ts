/** Sessions, goals, movement debt, stop limits. */
import type { Phrase } from '../phrase-book.ts';

export const sessionPhrases: readonly Phrase[] = [
  // debt
  ['Waking time since last up', 'Wache Zeit seit dem letzten Aufstehen'],
  ['Waking time since arrival, no time up recorded', 'Wache Zeit seit Ankunft, kein Aufstehen erfasst'],
  ['{from}; owed from {n} waking hours on', '{from}; im Rückstand ab {n} wachen Stunden'],
  [
    'Nothing clears it while that stands: ask for its review',
    'Nichts gleicht es aus, solange das gilt: um Prüfung bitten',
  ],
  ['Not owed while the hold on {what} stands', 'Kein Rückstand, solange der Stopp für {what} gilt'],
  ['Not owed while the order is bed', 'Kein Rückstand, solange Bettruhe angeordnet ist'],
  ['One time up clears it', 'Einmal Aufstehen gleicht es aus'],
  [
    "One time up clears it, as far as the clinician's plan allows",
    'Einmal Aufstehen gleicht es aus, soweit der Einzelplan es erlaubt',
  ],
  ['A check first; then one time up clears it', 'Erst prüfen; dann gleicht einmal Aufstehen es aus'],
  [
    'One time up clears it once that is cleared; until then a chair by lift, if a nurse sets it',
    'Einmal Aufstehen gleicht es aus, sobald das erreicht ist; bis dahin mit Lifter in den Stuhl, wenn die Pflege es setzt',
  ],
  [
    "One time up clears it; the times of today's goal are done",
    'Einmal Aufstehen gleicht es aus; das Tagesziel ist erreicht',
  ],
  ['{n} more today meets the goal', 'heute noch {n} bis zum Ziel'],
  ['{n} more today meet the goal', 'heute noch {n} bis zum Ziel'],
  ['none recorded yet', 'noch keine erfasst'],
  // goals
  ['Not cleared now: {what}', 'Jetzt nicht erreicht: {what}'],
  ['The plan holds: {what}', 'Der Plan stoppt: {what}'],
  ['No goal before the first check', 'Kein Ziel vor der ersten Prüfung'],
  ['No daily goal: a comfort plan applies', 'Kein Tagesziel: ein Komfortplan gilt'],
  ["No daily goal: the clinician's own plan applies", 'Kein Tagesziel: der Einzelplan gilt'],
  [
    'Here for part of this ward day: {n} of {m} times asked',
    'Nur einen Teil dieses Stationstags hier: {n} von {m} Malen verlangt',
  ],
  [
    'Arrived in the night: the goal begins with the next ward day',
    'In der Nacht angekommen: das Ziel beginnt mit dem nächsten Stationstag',
  ],
  [
    'Leaves in the night: nothing asked on this ward day',
    'Geht in der Nacht: an diesem Stationstag nichts verlangt',
  ],
  ['Set by a nurse or therapist', 'Von Pflege oder Therapie gesetzt'],
  ['The goal that was set asks for {what}: {why}', 'Das gesetzte Ziel verlangt {what}: {why}'],
  ['Usual way of moving: at most {what} asked', 'Gewohnte Art, sich zu bewegen: höchstens {what} verlangt'],
  [
    'Usual way of moving not recorded: ask for it, the goal starts from there',
    'Gewohnte Art, sich zu bewegen, nicht erfasst: erfragen, das Ziel geht davon aus',
  ],
  ['A wish is recorded: set the goal from it', 'Ein Wunsch ist erfasst: das Ziel danach setzen'],
  ['Proposed from what is cleared: {what}', 'Vorschlag aus dem Erreichten: {what}'],
  [
    'Each chair spell: back to bed after {n} h at the latest',
    'Jede Zeit im Stuhl: nach spätestens {n} Std. zurück ins Bett',
  ],
  ['{n} times walk', '{n}-mal gehen'],
  [
    '{n} times the longest walk done safely ({m} m), at most {c} m ({?source})',
    '{n}-mal die längste sicher gegangene Strecke ({m} m), höchstens {c} m ({source})',
  ],
  [
    '{n} stand-and-turn transfers to the chair, all meals out of bed',
    '{n}-mal aufstehen und in den Stuhl drehen, alle Mahlzeiten außerhalb des Betts',
  ],
  ['{n} stands with the help of the plan', '{n}-mal stehen mit der Hilfe des Plans'],
  [
    '{n} stands with the help of the plan, meals out of bed',
    '{n}-mal stehen mit der Hilfe des Plans, Mahlzeiten außerhalb des Betts',
  ],
  ['{n} spells at the edge of the bed', '{n}-mal an der Bettkante sitzen'],
  [
    '{n} spells at the edge of the bed, or in a chair by lift',
    '{n}-mal an der Bettkante sitzen, oder mit Lifter in den Stuhl',
  ],
  ['{n} upright spells of {m} min', '{n}-mal {m} Min. aufrecht'],
  [
    '{n} spells with the back raised as high as tolerated, building up to {m} min',
    '{n}-mal Oberkörper so hoch wie vertragen, bis {m} Min. steigern',
  ],
  ['or a chair by lift if a nurse sets it', 'oder mit Lifter in den Stuhl, wenn die Pflege es setzt'],
  // progression
  ['Step back and review: {what}', 'Schritt zurück und prüfen: {what}'],
  ['Step up: {what}', 'Schritt weiter: {what}'],
  [
    'more distance, {a} m to {b} m a day (at most {c} m)',
    'mehr Strecke, {a} m auf {b} m am Tag (höchstens {c} m)',
  ],
  ['less distance, {a} m to {b} m a day', 'weniger Strecke, {a} m auf {b} m am Tag'],
  ['one time more, {n} times a day', 'einmal mehr, {n}-mal am Tag'],
  ['one time less, {n} a day', 'einmal weniger, {n}-mal am Tag'],
  ['{what}, {n} times a day', '{what}, {n}-mal am Tag'],
  [
    '{n} sessions at goal in a row, effort {m} of 10 or less, nothing went wrong',
    '{n} Mobilisationen am Ziel in Folge, Anstrengung {m} von 10 oder weniger, ohne Zwischenfall',
  ],
  ['A session was stopped: {what}', 'Eine Mobilisation wurde abgebrochen: {what}'],
  ['Something went wrong in a session: {what}', 'Zwischenfall bei einer Mobilisation: {what}'],
  ['no reason written down', 'kein Grund notiert'],
  [
    '{n} times in a row the person said no or did only part',
    '{n}-mal in Folge sagte die Person nein oder machte nur einen Teil',
  ],
  [
    'A proposal only: a nurse or therapist accepts it or leaves it',
    'Nur ein Vorschlag: Pflege oder Therapie nimmt ihn an oder lässt ihn',
  ],
  // stop limits
  ['Oxygen saturation below {n} %, the own target', 'Sauerstoffsättigung unter {n} %, dem eigenen Ziel'],
  ['Oxygen saturation below {n} %', 'Sauerstoffsättigung unter {n} %'],
  [
    'Oxygen saturation below {n} % with any symptom',
    'Sauerstoffsättigung unter {n} % mit irgendeinem Symptom',
  ],
  [
    'Chest pain, dizzy or faint, new confusion, pale or sweating, unsteady, or the person says stop',
    'Brustschmerz, schwindelig oder ohnmächtig, neue Verwirrtheit, blass oder schwitzend, unsicher, oder die Person sagt stopp',
  ],
  ['Pain {n} of 10 or more', 'Schmerz {n} von 10 oder mehr'],
  ['Effort {n} of 10 or more', 'Anstrengung {n} von 10 oder mehr'],
  ['Heart rate below {n} a minute', 'Puls unter {n} pro Minute'],
  ['Heart rate above {n} a minute', 'Puls über {n} pro Minute'],
  ['Breathing rate {n} a minute or less', 'Atemfrequenz {n} pro Minute oder weniger'],
  ['Breathing rate above {n} a minute', 'Atemfrequenz über {n} pro Minute'],
  ['Systolic pressure below {n} mmHg', 'Systolischer Blutdruck unter {n} mmHg'],
  ['Systolic pressure above {n} mmHg', 'Systolischer Blutdruck über {n} mmHg'],
  [
    'Systolic pressure more than {n} mmHg down with effort',
    'Systolischer Blutdruck bei Anstrengung um mehr als {n} mmHg gefallen',
  ],
  [
    'Systolic pressure {n} mmHg or more down after standing up',
    'Systolischer Blutdruck nach dem Aufstehen um {n} mmHg oder mehr gefallen',
  ],
  ['dizzy: sit or lie down now', 'schwindelig: jetzt hinsetzen oder hinlegen'],
  ['a near-fall: sit down now', 'Beinahe-Sturz: jetzt hinsetzen'],
  [
    'lowered to the floor: do not lift by hand, a nurse looks first',
    'auf den Boden gelassen: nicht von Hand heben, erst sieht die Pflege nach',
  ],
  ['a line was pulled: see to it first', 'an einer Zu- oder Ableitung gezogen: erst danach sehen'],
  ['low oxygen: rest and call the nurse', 'wenig Sauerstoff: ausruhen und Pflege rufen'],
  ['new or worse pain: rest and call the nurse', 'neuer oder stärkerer Schmerz: ausruhen und Pflege rufen'],
  ['distress: rest and call the nurse', 'Not: ausruhen und Pflege rufen'],
  ['the equipment failed: make safe without it', 'Hilfsmittel versagt: ohne es sichern'],
  ['a symptom: rest and call the nurse', 'ein Symptom: ausruhen und Pflege rufen'],
  ['with a symptom, {what}', 'mit Symptom, {what}'],
  [
    'systolic fell by {n} mmHg on rising ({a} to {b}), {limit} or more',
    'systolisch beim Aufstehen um {n} mmHg gefallen ({a} auf {b}), Grenze {limit} oder mehr',
  ],
  [
    'systolic fell by {n} mmHg with effort ({a} to {b}), more than {limit}',
    'systolisch bei Anstrengung um {n} mmHg gefallen ({a} auf {b}), mehr als {limit}',
  ],
];
