/** Words of the label sheet, in the ward's language. */
import type { ItemKind } from '@footboard/shared/capabilities/aids/values';
import type { Language } from '@footboard/shared/capabilities/wards/values';

const EN = {
  title: 'Labels of the equipment',
  page: 'page {n} of {all}',
  'how-to':
    'Cut out and stick on. A phone that scans the code opens the piece. The plate of the maker counts, not this label.',
  load: 'bears at most {load}',
  'load-unknown': 'load: see the maker’s plate',
  'floor-lift': 'lift on wheels',
  'ceiling-lift': 'ceiling lift',
  'standing-aid': 'standing aid',
  sling: 'sling',
  'lateral-aid': 'lateral transfer aid',
  'walking-aid': 'walking aid',
} as const satisfies Record<ItemKind | 'title' | 'page' | 'how-to' | 'load' | 'load-unknown', string>;
export type LabelWord = keyof typeof EN;

const DE: Readonly<Record<LabelWord, string>> = {
  title: 'Etiketten der Hilfsmittel',
  page: 'Seite {n} von {all}',
  'how-to':
    'Ausschneiden und aufkleben. Ein Telefon, das den Code scannt, öffnet das Stück. Es gilt das Schild des Herstellers, nicht dieses Etikett.',
  load: 'trägt höchstens {load}',
  'load-unknown': 'Traglast: siehe Schild des Herstellers',
  'floor-lift': 'Lifter, fahrbar',
  'ceiling-lift': 'Lifter an der Decke',
  'standing-aid': 'Aufstehhilfe',
  sling: 'Hebetuch',
  'lateral-aid': 'Umlagerungshilfe',
  'walking-aid': 'Gehhilfe',
};

export const labelWords =
  (language: Language) =>
  (word: LabelWord, values: Readonly<Record<string, string | number>> = {}): string =>
    (language === 'de' ? DE : EN)[word].replace(/\{(\w+)\}/g, (_, name: string) =>
      String(values[name] ?? ''),
    );
