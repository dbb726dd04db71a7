/** Words of the form for the ward's screens. */
import { defineWords } from '../../i18n/words.ts';

export const sayScreens = defineWords('ward-screens', {
  en: {
    title: 'Screens',
    inches: 'Panel of the wall, corner to corner',
    inch: 'inches',
    distance: 'To be read from',
    capitals:
      'Read from {distance}, capitals must be {mm24} mm high with up to 24 beds ({px24} pixels of 1080, {px24at4k} of 2160) and {mm36} mm with up to 36 ({px36} of 1080, {px36at4k} of 2160).',
    weights: 'Weights in',
    lengths: 'Distances in',
    kg: 'Kilograms',
    lb: 'Pounds',
    m: 'Metres',
    ft: 'Feet',
    language: 'Language of the screens',
    note: 'Everything is kept in kilograms and metres, whatever the screens show. On their own device everybody may choose another language.',
    save: 'Save the screens',
    saving: 'Saving',
    saved: 'Saved.',
  },
  de: {
    title: 'Bildschirme',
    inches: 'Bildschirm der Wandtafel, von Ecke zu Ecke',
    inch: 'Zoll',
    distance: 'Lesbar aus',
    capitals:
      'Aus {distance} gelesen müssen Großbuchstaben mit bis zu 24 Betten {mm24} mm hoch sein ({px24} von 1080 Bildpunkten, {px24at4k} von 2160), mit bis zu 36 Betten {mm36} mm ({px36} von 1080, {px36at4k} von 2160).',
    weights: 'Gewichte in',
    lengths: 'Strecken in',
    kg: 'Kilogramm',
    lb: 'Pfund (englische)',
    m: 'Meter',
    ft: 'Fuß',
    language: 'Sprache der Bildschirme',
    note: 'Gespeichert wird alles in Kilogramm und Metern, was auch immer die Bildschirme zeigen. Auf dem eigenen Gerät ist eine andere Sprache möglich.',
    save: 'Bildschirme sichern',
    saving: 'Wird gesichert',
    saved: 'Gesichert.',
  },
});
