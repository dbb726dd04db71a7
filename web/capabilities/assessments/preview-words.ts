import { defineWords } from '../../i18n/words.ts';

export const previewWords = defineWords('check-preview', {
  en: {
    title: 'The plan that would follow',
    'tier-now': 'The board says now:',
    'still-check-first': 'It would still read CHECK BEFORE MOVING.',
    'still-re-check': 'It would still read re-check: something else is open.',
    unconfirmed: 'Nobody is signed in: until its author signs it, this check can only ask for more help.',
    'no-tasks': 'No plan of tasks applies: the plan as written does.',
    changed:
      'Nothing changes against the plan now. | {n} task changes against the plan now. | {n} tasks change against the plan now.',
    new: 'new',
    gone: 'No longer: {what}',
    'more-help': 'More help.',
    'less-help': 'Less help.',
    'other-help': 'Other help.',
    words: 'Same help, other words beside it.',
    was: 'Now: {plan}',
    rule: 'Worked out by the rules of the board from all that is recorded; not recorded itself. What others enter meanwhile counts too. Orders, local policy and the clinician at the bedside come first.',
    asking: 'Working out the plan that would follow …',
    'no-answer': 'The plan will be known when the check is sent: the server does not answer now.',
    'nobody-signed-in': 'The plan will be known when the check is sent: it is shown to whoever is signed in.',
    'refused-title': 'As it stands it would not be taken',
  },
  de: {
    title: 'Der Plan, der folgen würde',
    'tier-now': 'Auf der Tafel steht jetzt:',
    'still-check-first': 'Es bliebe bei VOR DEM BEWEGEN PRÜFEN.',
    'still-re-check': 'Es bliebe bei „neu prüfen“: etwas anderes ist offen.',
    unconfirmed: 'Niemand ist angemeldet: Bis zur Unterschrift kann diese Prüfung nur mehr Hilfe verlangen.',
    'no-tasks': 'Ein Plan nach Aufgaben gilt nicht: es gilt der geschriebene Plan.',
    changed:
      'Gegenüber dem jetzigen Plan ändert sich nichts. | {n} Aufgabe ändert sich gegenüber dem jetzigen Plan. | {n} Aufgaben ändern sich gegenüber dem jetzigen Plan.',
    new: 'neu',
    gone: 'Nicht mehr: {what}',
    'more-help': 'Mehr Hilfe.',
    'less-help': 'Weniger Hilfe.',
    'other-help': 'Andere Hilfe.',
    words: 'Gleiche Hilfe, andere Hinweise.',
    was: 'Jetzt: {plan}',
    rule: 'Nach den Regeln der Tafel aus allem, was erfasst ist; selbst nicht erfasst. Was andere inzwischen eintragen, zählt auch. Anordnungen, die Regeln des Hauses und die Fachperson am Bett gehen vor.',
    asking: 'Der folgende Plan wird ermittelt …',
    'no-answer': 'Der Plan ist bekannt, sobald die Prüfung gesendet ist: der Server antwortet gerade nicht.',
    'nobody-signed-in':
      'Der Plan ist bekannt, sobald die Prüfung gesendet ist: er wird nur Angemeldeten gezeigt.',
    'refused-title': 'So würde sie nicht angenommen',
  },
});
