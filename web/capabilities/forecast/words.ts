/** Words of the forecast of lifts and second pairs of hands. */
import { defineWords } from '../../i18n/words.ts';

export const say = defineWords('forecast', {
  en: {
    title: 'Lifts and hands until {time}',
    heading: 'Lifts and hands',
    of: 'the forecast',
    'none-asked': 'Nobody here needs a lift or a second pair of hands until {time}.',
    enough: 'Until {time} no stretch stands out in which a request is likely to wait over {minutes} minutes.',
    clash: '{from} to {to}: {what} {chance} ({low} to {high}).',
    'waits-lift': 'a request for a lift waits over {minutes} minutes with a chance of',
    'waits-standing-aid': 'a request for a standing aid waits over {minutes} minutes with a chance of',
    'waits-lateral-aid': 'a request for a lateral aid waits over {minutes} minutes with a chance of',
    'waits-hands': 'a move for two people waits over {minutes} minutes for hands with a chance of',
    'short-item': 'There are too few of them.',
    'short-hands': 'People are missing more often than equipment.',
    'who-waits': 'Who would wait',
    'who-waits-about':
      'At least once over {minutes} minutes, likeliest first. Not an order of who comes first.',
    'waits-line': 'Bed {bed}, about {time}: {chance}',
    'would-help': 'What would help',
    'would-help-about':
      'Each tried on the same simulated days: requests that wait over {minutes} minutes until {time}.',
    'help-borrow': 'Borrow {what} until {to}',
    'one-lift': 'a lift',
    'one-standing-aid': 'a standing aid',
    'one-lateral-aid': 'a lateral aid',
    'help-pair-of-aides': 'Two people only for moves, {from} to {to}',
    'help-swap-to-track': 'Swap {who} and {with}: bed {with} has a ceiling track',
    'help-move-visit': 'Bed {who}: the visit at {becomes} in place of {was}',
    'help-move-meal': 'Bed {who}: got up for the meal at about {becomes} in place of {was}',
    'help-effect': '{before} → {after}',
    'no-help': 'Nothing that was tried makes a difference worth saying.',
    'left-out': 'Not counted',
    'left-nothing-fits':
      'Bed {bed}: no piece on the ward’s list fits and can be used; counted with hands only',
    'left-on-hold': 'Bed {bed}: every move is on hold',
    'left-away': 'Bed {bed}: off the ward, not said when back',
    record:
      'Stands on {days} day of this ward’s record ({moves} moves). | Stands on {days} days of this ward’s record ({moves} moves).',
    guess:
      'Little more than a guess: {days} day of this ward’s record, and a flat start. | Little more than a guess: {days} days of this ward’s record, and a flat start.',
    method:
      '{runs} simulated days. In brackets: what nine in ten of the rates give that the record leaves open.',
    'people-named': 'People: as named for today.',
    'people-partly': 'People: as named for today, the usual staffing where nobody is.',
    'people-usual': 'People: the usual staffing, since nobody is named for today.',
    'uses-measured': 'Times of a use: measured here ({n} uses).',
    'uses-rules': 'Times of a use: from the ward’s rules, not measured here.',
    judge:
      'A forecast, not a plan: it may be wrong, and says nothing about who comes first. The clinician at the bedside decides.',
    old: 'The forecast below was made at {time}.',
    'group-lift': 'Lifts',
    'group-standing-aid': 'Standing aids',
    'group-lateral-aid': 'Lateral aids',
    'group-hands': 'Second pairs of hands',
    'about-item':
      'Columns: how many are wanted at once in each quarter hour. Hatched: more than there are for sure.',
    'about-hands':
      'Columns: how many people are wanted at once for moves of two or more. Hatched: more than can be spared.',
    'about-not-listed': 'The ward keeps no list of them: nobody waits for them in this forecast.',
    quarter: 'Quarter hour',
    wanted: 'Wanted at once (mean)',
    tenth: 'One day in ten',
    there: 'There',
    'there-unknown': '{sure}, perhaps {most}',
    late: 'Waits over {minutes} min',
    range: '{chance} ({low} to {high})',
    rare: 'hardly asked',
    'key-within': 'wanted, and there',
    'key-above': 'wanted, more than there is',
    'key-tenth': 'wanted one day in ten',
    'key-sure': 'there',
    'key-most': 'there, if what nobody has spoken of is',
    'key-late': 'chance of waiting over {minutes} minutes, with its range',
    of10: 'about {n} in 10',
    'of10-no': 'below 1 in 20',
    'of10-all': 'above 19 in 20',
  },
  de: {
    title: 'Lifter und Hände bis {time}',
    heading: 'Lifter und Hände',
    of: 'Vorschau',
    'none-asked': 'Bis {time} braucht hier niemand einen Lifter oder eine zweite Person.',
    enough:
      'Bis {time} fällt keine Zeit auf, in der eine Anforderung wahrscheinlich über {minutes} Minuten wartet.',
    clash: '{from} bis {to}: {what} {chance} ({low} bis {high}).',
    'waits-lift': 'Eine Anforderung für einen Lifter wartet über {minutes} Minuten, Wahrscheinlichkeit',
    'waits-standing-aid':
      'Eine Anforderung für eine Aufstehhilfe wartet über {minutes} Minuten, Wahrscheinlichkeit',
    'waits-lateral-aid':
      'Eine Anforderung für eine Umlagerungshilfe wartet über {minutes} Minuten, Wahrscheinlichkeit',
    'waits-hands': 'Ein Transfer zu zweit wartet über {minutes} Minuten auf Personen, Wahrscheinlichkeit',
    'short-item': 'Es gibt davon zu wenige.',
    'short-hands': 'Häufiger fehlen Personen als Hilfsmittel.',
    'who-waits': 'Wer warten würde',
    'who-waits-about':
      'Mindestens einmal über {minutes} Minuten, die wahrscheinlichsten zuerst. Keine Reihenfolge, wer zuerst drankommt.',
    'waits-line': 'Bett {bed}, etwa {time}: {chance}',
    'would-help': 'Was helfen würde',
    'would-help-about':
      'Jedes an denselben simulierten Tagen erprobt: Anforderungen, die bis {time} über {minutes} Minuten warten.',
    'help-borrow': '{what} bis {to} ausleihen',
    'one-lift': 'Einen Lifter',
    'one-standing-aid': 'Eine Aufstehhilfe',
    'one-lateral-aid': 'Eine Umlagerungshilfe',
    'help-pair-of-aides': 'Zwei Personen nur für Transfers, {from} bis {to}',
    'help-swap-to-track': '{who} und {with} tauschen: Bett {with} hat eine Deckenschiene',
    'help-move-visit': 'Bett {who}: der Besuch um {becomes} statt {was}',
    'help-move-meal': 'Bett {who}: zur Mahlzeit etwa um {becomes} auf statt um {was}',
    'help-effect': '{before} → {after}',
    'no-help': 'Nichts von dem, was erprobt wurde, ändert genug.',
    'left-out': 'Nicht gezählt',
    'left-nothing-fits':
      'Bett {bed}: nichts auf der Liste der Station passt und ist nutzbar; nur mit Personen gezählt',
    'left-on-hold': 'Bett {bed}: jede Bewegung ist gestoppt',
    'left-away': 'Bett {bed}: nicht auf der Station, Rückkehr nicht angegeben',
    record:
      'Beruht auf {days} Tag dieser Station ({moves} Bewegungen). | Beruht auf {days} Tagen dieser Station ({moves} Bewegungen).',
    guess:
      'Kaum mehr als eine Schätzung: {days} Tag dieser Station und ein flacher Anfangswert. | Kaum mehr als eine Schätzung: {days} Tage dieser Station und ein flacher Anfangswert.',
    method:
      '{runs} simulierte Tage. In Klammern: was neun von zehn der Häufigkeiten ergeben, die das Erfasste offen lässt.',
    'people-named': 'Personen: wie für heute benannt.',
    'people-partly': 'Personen: wie für heute benannt, sonst die übliche Besetzung.',
    'people-usual': 'Personen: die übliche Besetzung, da für heute niemand benannt ist.',
    'uses-measured': 'Dauer der Nutzung: hier gemessen ({n} Nutzungen).',
    'uses-rules': 'Dauer der Nutzung: aus den Regeln der Station, hier nicht gemessen.',
    judge:
      'Eine Vorschau, kein Plan: Sie kann falsch sein und sagt nichts darüber, wer zuerst drankommt. Es entscheidet, wer am Bett steht.',
    old: 'Die Vorschau unten entstand um {time}.',
    'group-lift': 'Lifter',
    'group-standing-aid': 'Aufstehhilfen',
    'group-lateral-aid': 'Umlagerungshilfen',
    'group-hands': 'Zweite Personen',
    'about-item':
      'Säulen: wie viele in jeder Viertelstunde zugleich gebraucht werden. Schraffiert: mehr, als sicher da sind.',
    'about-hands':
      'Säulen: wie viele Personen zugleich für Bewegungen zu zweit oder mehr gebraucht werden. Schraffiert: mehr, als frei sind.',
    'about-not-listed': 'Die Station führt dafür keine Liste: In dieser Vorschau wartet niemand darauf.',
    quarter: 'Viertelstunde',
    wanted: 'Zugleich gebraucht (Mittel)',
    tenth: 'An einem von zehn Tagen',
    there: 'Vorhanden',
    'there-unknown': '{sure}, vielleicht {most}',
    late: 'Wartet über {minutes} min',
    range: '{chance} ({low} bis {high})',
    rare: 'kaum verlangt',
    'key-within': 'gebraucht und vorhanden',
    'key-above': 'gebraucht, mehr als vorhanden',
    'key-tenth': 'gebraucht an einem von zehn Tagen',
    'key-sure': 'vorhanden',
    'key-most': 'vorhanden, falls auch das Ungesagte da ist',
    'key-late': 'Wahrscheinlichkeit, über {minutes} Minuten zu warten, mit Spanne',
    of10: 'etwa {n} von 10',
    'of10-no': 'unter 1 von 20',
    'of10-all': 'über 19 von 20',
  },
});

/** A chance in words: "about 7 in 10". The exact share is in the table. */
export const inTen = (chance: number): string =>
  chance < 0.05
    ? say('of10-no')
    : chance > 0.95
      ? say('of10-all')
      : say('of10', { n: Math.min(9, Math.max(1, Math.round(chance * 10))) });
export const percent = (share: number): string => `${Math.round(share * 100)} %`;
/** One decimal where it says something: "0.6", "12". */
export const amount = (n: number): string => (n < 9.95 ? n.toFixed(1) : String(Math.round(n)));
