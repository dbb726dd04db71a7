/** The invented equipment of both wards. No name, model or number is of a real maker. */
import type { ItemDescription } from '@footboard/shared/capabilities/aids/values';

type Piece = { readonly item: string; readonly is: Partial<ItemDescription> };
const piece = (item: string, is: Partial<ItemDescription>): Piece => ({ item, is });

const lift = (item: string, label: string, is: Partial<ItemDescription>) =>
  piece(item, {
    label,
    kind: 'floor-lift',
    powered: true,
    attachment: 'loops',
    home: 'Equipment room',
    ...is,
  });
const track = (item: string, bay: string, is: Partial<ItemDescription>) =>
  piece(item, {
    label: `Track ${bay}`,
    kind: 'ceiling-lift',
    model: 'Demo track 25',
    powered: true,
    safeLoadKg: 250,
    attachment: 'loops',
    covers: [bay],
    home: bay,
    ...is,
  });
/** Listed with the models it may hang on: its own size letter would say nothing. */
const sling = (item: string, n: number, from: number, to: number, is: Partial<ItemDescription> = {}) =>
  piece(item, {
    label: `Sling ${n}`,
    kind: 'sling',
    model: 'Demo sling LB',
    safeLoadKg: 250,
    attachment: 'loops',
    style: 'whole-body',
    fitsFromKg: from,
    fitsToKg: to,
    worksWithModels: ['Demo lift 20', 'Demo track 25'],
    inspectionDue: '2027-03-12',
    home: 'Linen room, hook row',
    ...is,
  });
const wide: Partial<ItemDescription> = {
  model: 'Demo sling CW',
  attachment: 'clips',
  safeLoadKg: 320,
  worksWithModels: ['Demo lift 32'],
};

export const LARKFIELD_ITEMS: readonly Piece[] = [
  lift('it-heron', 'Heron', { model: 'Demo lift 20', safeLoadKg: 200, inspectionDue: '2027-02-14' }),
  // Its bar bears less than the mast: the weakest part counts.
  lift('it-bittern', 'Bittern', {
    model: 'Demo lift 32',
    safeLoadKg: 320,
    barLoadKg: 300,
    attachment: 'clips',
    inspectionDue: '2027-01-20',
  }),
  track('it-track-alder', 'Alder', { inspectionDue: '2027-02-14' }),
  track('it-track-birch', 'Birch', { inspectionDue: '2027-02-14' }),
  // Runs out of date in the week that is played.
  track('it-track-elm', 'Elm', { inspectionDue: '2026-10-24' }),
  piece('it-plover', {
    label: 'Plover',
    kind: 'standing-aid',
    model: 'Demo stander 18',
    powered: true,
    safeLoadKg: 180,
    inspectionDue: '2027-01-20',
    home: 'Equipment room',
  }),
  piece('it-wagtail', {
    label: 'Wagtail',
    kind: 'standing-aid',
    model: 'Demo stander H',
    safeLoadKg: 150,
    inspectionDue: '2027-01-20',
    home: 'Birch',
  }),
  sling('it-sling-1', 1, 40, 80),
  sling('it-sling-2', 2, 60, 110),
  sling('it-sling-3', 3, 60, 110),
  sling('it-sling-4', 4, 45, 90, { style: 'toileting' }),
  sling('it-sling-5', 5, 100, 200, wide),
  sling('it-sling-6', 6, 100, 200, { ...wide, inspectionDue: '2026-11-02' }),
  sling('it-sling-7', 7, 40, 80),
  piece('it-board', {
    label: 'Transfer board',
    kind: 'lateral-aid',
    model: 'Demo board',
    safeLoadKg: 180,
    inspectionDue: '2027-03-12',
    home: 'Equipment room',
  }),
  piece('it-air', {
    label: 'Air mattress',
    kind: 'lateral-aid',
    model: 'Demo air 40',
    powered: true,
    safeLoadKg: 400,
    inspectionDue: '2027-03-12',
    home: 'Equipment room',
  }),
  ...[1, 2, 3].map((n) =>
    piece(`it-frame-${n}`, {
      label: `Frame ${n}`,
      kind: 'walking-aid',
      model: n === 3 ? 'Demo frame, wheels' : 'Demo frame',
      home: 'Cedar',
    }),
  ),
];

export const MILLBROOK_ITEMS: readonly Piece[] = [
  lift('it-mb-curlew', 'Curlew', { model: 'Demo lift 20', safeLoadKg: 200, inspectionDue: '2027-02-14' }),
  track('it-mb-track', 'Fern', { inspectionDue: '2027-02-14' }),
  sling('it-mb-sling-1', 11, 40, 80),
  sling('it-mb-sling-2', 12, 60, 110),
];
