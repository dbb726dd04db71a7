import { defineWords } from '../../i18n/words.ts';

export const entryWords = defineWords('entry', {
  en: {
    'changed-title': 'The person in this bed has changed',
    'changed-began': 'You began this entry for the person who was here before.',
    'changed-now-in': 'They are now in bed {bed}.',
    'changed-gone': 'They are no longer on this board.',
    'changed-stays': 'The entry stays with them; the person now in this bed is not touched.',
    'changed-check': 'Check who is in front of you before you go on.',
    'send-all-the-same': 'Send it for the person I began it for',
    'do-not-send': 'Do not send it',
    'not-sent-title': 'Not sent yet; try again',
    'not-sent-lasting':
      'The entry is kept on this device and goes out by itself when the network is back. Until then it is not on the board. If it matters now, tell the nurse by word of mouth.',
    'not-sent-page':
      'The entry is kept on this page alone, a reload would lose it, and it is not on the board. If it matters now, tell the nurse by word of mouth.',
    'try-again': 'Try again',
    'sign-in-title': 'Kept until you sign in',
    'sign-in-kept':
      'The entry is kept on this device and goes out when you sign in. Until then it is not on the board. If it matters now, tell the nurse by word of mouth.',
    'sign-in': 'Sign in',
    'closed-as-it-is':
      'Closed as it is, the entry waits among those not on the board until somebody has dealt with it.',
    sending: 'Sending…',
    'undo-in': '{what}: recorded in {n} s',
    'undo-said': '{what}: recorded in a few seconds. It can be undone until then.',
    undo: 'Undo',
    'send-now': 'Send now',
    'undo-leaving':
      'Leaving this page sends it. Afterwards it can be corrected or taken back on the stay page.',
    'waits-title': 'Waits for you',
    'waits-confirm': '{n} entry of yours waits for you: confirm | {n} entries of yours wait for you: confirm',
    'waits-cosign': '{n} entry waits for a second signature | {n} entries wait for a second signature',
    'waits-disagree':
      '{n} entry of yours disagrees with another: the safer stands | {n} entries of yours disagree with others: the safer stands',
    'disagree-title': 'Two entries disagree; the safer stands',
    'disagree-do': 'Look at both on the stay page, and speak with each other.',
    'to-stay': 'The stay',
    'look-at-them': 'Look at them',
    back: 'Back',
    bed: 'Bed {bed}:',
    confirm: 'Confirm',
    sign: 'Sign',
    'confirm-of': 'Confirm: {what}',
    'sign-of': 'Sign: {what}',
    'unsent-title': 'Not on the board',
    'unsent-about': 'Kept in this browser until the server has taken them or somebody has closed them.',
    'unsent-wait': '{n} waits for the network | {n} wait for the network',
    'unsent-sign': '{n} needs sign-in | {n} need sign-in',
    'unsent-refused': '{n} refused | {n} refused',
    'unsent-not-lasting':
      'This browser keeps nothing across a reload: leave this page open until they are sent.',
    'show-them': 'Show them',
    'group-refused': 'Refused by the server',
    'group-sign': 'Needs sign-in',
    'group-wait': 'Waits for the network',
    'stands-hold': 'A hold was placed at {time} ({scope}); your entry was kept, the hold stands.',
    'stands-trigger':
      'At {time} something happened ({what}); your entry was kept, the plan asks for a check first.',
    'stands-order': 'An order changed at {time}; your entry was kept, the order stands.',
    'stands-disagrees': 'Your entry was kept, and it disagrees with another: the safer stands. {what}',
    'stands-other-bed':
      'Beds were changed meanwhile: you entered it at bed {from}. It was kept with its person, who is now in bed {bed}.',
    'stands-gone':
      'Your entry was kept with its person, who is no longer on this ward. Whoever is in the bed now is not touched.',
    'sent-late': '{what}, entered at {time}, was sent now.',
    seen: 'Seen',
  },
  de: {
    'changed-title': 'In diesem Bett ist jetzt jemand anderes',
    'changed-began': 'Dieser Eintrag wurde für die Person begonnen, die vorher hier war.',
    'changed-now-in': 'Sie ist jetzt in Bett {bed}.',
    'changed-gone': 'Sie ist nicht mehr auf dieser Tafel.',
    'changed-stays': 'Der Eintrag bleibt bei ihr; für die Person, die jetzt hier ist, ändert sich nichts.',
    'changed-check': 'Vor dem Weitermachen prüfen, wer da ist.',
    'send-all-the-same': 'Für die Person senden, für die er begonnen wurde',
    'do-not-send': 'Nicht senden',
    'not-sent-title': 'Noch nicht gesendet; noch einmal versuchen',
    'not-sent-lasting':
      'Der Eintrag ist auf diesem Gerät gesichert und wird gesendet, sobald das Netz wieder da ist. Bis dahin steht er nicht auf der Tafel. Wenn es jetzt darauf ankommt, der Pflege mündlich sagen.',
    'not-sent-page':
      'Der Eintrag ist nur auf dieser Seite gesichert, neu laden würde ihn löschen, und er steht nicht auf der Tafel. Wenn es jetzt darauf ankommt, der Pflege mündlich sagen.',
    'try-again': 'Noch einmal versuchen',
    'sign-in-title': 'Gesichert bis zur Anmeldung',
    'sign-in-kept':
      'Der Eintrag ist auf diesem Gerät gesichert und wird nach der Anmeldung gesendet. Bis dahin steht er nicht auf der Tafel. Wenn es jetzt darauf ankommt, der Pflege mündlich sagen.',
    'sign-in': 'Anmelden',
    'closed-as-it-is':
      'So geschlossen wartet der Eintrag bei denen, die nicht auf der Tafel stehen, bis sich jemand darum gekümmert hat.',
    sending: 'Wird gesendet…',
    'undo-in': '{what}: erfasst in {n} s',
    'undo-said': '{what}: erfasst in ein paar Sekunden. Bis dahin lässt es sich rückgängig machen.',
    undo: 'Rückgängig',
    'send-now': 'Jetzt senden',
    'undo-leaving':
      'Wer die Seite verlässt, sendet. Danach lässt sich der Eintrag auf der Aufenthaltsseite korrigieren oder zurücknehmen.',
    'waits-title': 'Zu erledigen',
    'waits-confirm': '{n} eigener Eintrag ist zu bestätigen | {n} eigene Einträge sind zu bestätigen',
    'waits-cosign': '{n} Eintrag ist gegenzuzeichnen | {n} Einträge sind gegenzuzeichnen',
    'waits-disagree':
      '{n} eigener Eintrag widerspricht einem anderen: das Sicherere gilt | {n} eigene Einträge widersprechen anderen: das Sicherere gilt',
    'disagree-title': 'Zwei Einträge widersprechen sich; das Sicherere gilt',
    'disagree-do': 'Beide auf der Aufenthaltsseite ansehen und miteinander sprechen.',
    'to-stay': 'Aufenthalt',
    'look-at-them': 'Ansehen',
    back: 'Zurück',
    bed: 'Bett {bed}:',
    confirm: 'Bestätigen',
    sign: 'Unterschreiben',
    'confirm-of': 'Bestätigen: {what}',
    'sign-of': 'Unterschreiben: {what}',
    'unsent-title': 'Nicht auf der Tafel',
    'unsent-about':
      'In diesem Browser gesichert, bis der Server sie genommen oder jemand sie geschlossen hat.',
    'unsent-wait': '{n} wartet auf das Netz | {n} warten auf das Netz',
    'unsent-sign': '{n} braucht Anmeldung | {n} brauchen Anmeldung',
    'unsent-refused': '{n} abgelehnt | {n} abgelehnt',
    'unsent-not-lasting':
      'Dieser Browser behält beim Neuladen nichts: Seite offen lassen, bis alles gesendet ist.',
    'show-them': 'Zeigen',
    'group-refused': 'Vom Server abgelehnt',
    'group-sign': 'Braucht Anmeldung',
    'group-wait': 'Wartet auf das Netz',
    'stands-hold':
      'Um {time} wurde ein Stopp gesetzt ({scope}); der Eintrag ist erfasst, der Stopp gilt weiter.',
    'stands-trigger':
      'Um {time} ist etwas passiert ({what}); der Eintrag ist erfasst, vor dem Bewegen ist zu prüfen.',
    'stands-order': 'Um {time} wurde eine Anordnung geändert; der Eintrag ist erfasst, die Anordnung gilt.',
    'stands-disagrees': 'Der Eintrag ist erfasst und widerspricht einem anderen: das Sicherere gilt. {what}',
    'stands-other-bed':
      'Inzwischen wurden Betten gewechselt: eingegeben an Bett {from}, erfasst bei der Person, die jetzt in Bett {bed} ist.',
    'stands-gone':
      'Der Eintrag ist bei der Person erfasst, die nicht mehr auf dieser Station ist. Für die Person, die jetzt im Bett ist, ändert sich nichts.',
    'sent-late': '{what}, eingegeben um {time}, wurde jetzt gesendet.',
    seen: 'Gesehen',
  },
});
