/** The default protocol's own texts. A ward's own protocol says its own words, which stay as they are. */
import type { Phrase } from '../phrase-book.ts';

export const protocolPhrases: readonly Phrase[] = [
  [
    'Footboard staged check for adults on general wards',
    'Footboard-Stufenprüfung für Erwachsene auf Normalstationen',
  ],
  [
    'built from public measures; the order of stages is common practice, no source',
    'aus öffentlichen Messverfahren gebaut; die Reihenfolge der Stufen ist übliche Praxis, keine Quelle',
  ],
  ['ward clinician (to sign)', 'Fachperson der Station (zu unterschreiben)'],
  ['common practice, no source', 'übliche Praxis, keine Quelle'],
  ['ours, practice', 'eigene Regel, Praxis'],
  [
    'no published source, to be signed by the ward',
    'keine veröffentlichte Quelle, von der Station zu unterschreiben',
  ],
  [
    'May we start? Orders, holds, signs and alertness; whether the person waits for help and follows instructions, asked in their language or by gesture.',
    'Ist ein Start möglich? Anordnungen, Stopps, Messwerte und Wachheit; ob die Person auf Hilfe wartet und Anweisungen folgt, in ihrer Sprache oder mit Gesten gefragt.',
  ],
  ['Orders and holds allow it', 'Anordnungen und Stopps erlauben es'],
  ['Signs are within the ward limits', 'Messwerte liegen in den Grenzen der Station'],
  ['Wakes to voice and stays awake', 'Wacht auf Ansprache auf und bleibt wach'],
  ['No new chest pain', 'Kein neuer Brustschmerz'],
  ['No new confusion', 'Keine neue Verwirrtheit'],
  ['No active bleeding', 'Keine aktive Blutung'],
  [
    'Back raised in steps, then 3 minutes. Meanwhile, lying and on each side: heel, sole and grip.',
    'Oberkörper schrittweise hoch, dann 3 Minuten. Währenddessen, im Liegen und auf jeder Seite: Ferse, Sohle und Griff.',
  ],
  ['Sits with the back raised for 3 minutes', 'Sitzt 3 Minuten mit hohem Oberkörper'],
  ['Heel held 5 cm off the mattress for 5 seconds', 'Ferse 5 Sekunden 5 cm über der Matratze gehalten'],
  ["Sole pushes down on the examiner's hand", 'Sohle drückt gegen die prüfende Hand'],
  ["Grips the examiner's hand and lets go when asked", 'Greift die prüfende Hand und lässt auf Bitte los'],
  ['Pushes down hard on the mattress with the arm', 'Drückt mit dem Arm kräftig auf die Matratze'],
  [
    'Comes to the side of the bed, sits 30 seconds hands free, looks behind each way, picks up a cloth beside each hip.',
    'Kommt an die Bettkante, sitzt 30 Sekunden mit freien Händen, schaut nach beiden Seiten hinter sich, nimmt neben jeder Hüfte ein Tuch auf.',
  ],
  ['Comes to the side of the bed', 'Kommt an die Bettkante'],
  ['Sits 30 seconds, hands free', 'Sitzt 30 Sekunden mit freien Händen'],
  ['Looks behind over the shoulder', 'Schaut über die Schulter nach hinten'],
  ['Picks up a cloth beside the hip', 'Nimmt ein Tuch neben der Hüfte auf'],
  [
    'Sit to stand, then weight through both legs for 1 minute.',
    'Aus dem Sitzen aufstehen, dann 1 Minute beide Beine belasten.',
  ],
  ['Rises from sitting', 'Steht aus dem Sitzen auf'],
  ['Leg bears weight for 1 minute', 'Bein trägt 1 Minute Gewicht'],
  [
    'Quarter turn and two side-steps to a chair, controlled sit.',
    'Vierteldrehung und zwei Seitschritte zum Stuhl, kontrolliert hinsetzen.',
  ],
  ['Quarter turn on the feet', 'Vierteldrehung auf den Füßen'],
  ['Two side-steps to a chair', 'Zwei Seitschritte zum Stuhl'],
  ['Sits down with control', 'Setzt sich kontrolliert'],
  [
    'Walks 3 m, turns, walks back, controlled sit. A stick or frame is still walking.',
    'Geht 3 m, dreht um, geht zurück, setzt sich kontrolliert. Mit Gehstock oder Gehgestell ist auch gehen.',
  ],
  ['Walks 3 m', 'Geht 3 m'],
  ['Turns round without holding on to furniture', 'Dreht um, ohne sich an Möbeln zu halten'],
  ['Walks back and sits down with control', 'Geht zurück und setzt sich kontrolliert'],
  [
    'Medical Research Council muscle grades (from memory): 3 moves against gravity, 4 against some resistance',
    'Muskelgrade des Medical Research Council (aus dem Gedächtnis): 3 gegen die Schwerkraft, 4 gegen etwas Widerstand',
  ],
];
