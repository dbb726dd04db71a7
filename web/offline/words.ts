import { defineWords } from '../i18n/words.ts';

export const say = defineWords('offline', {
  en: {
    'newer-ready': 'A newer version is ready.',
    'newer-take': 'Reload',
    'kept-wards': 'Last known on this device',
    'kept-wards-say':
      'The server does not answer. These boards are from before; each says how old it is. Check at the bedside before you move anyone.',
    'kept-ward': 'known up to {time}',
    'kept-bedside': 'Bedside',
    'kept-wall': 'Whole board',
  },
  de: {
    'newer-ready': 'Eine neuere Version ist bereit.',
    'newer-take': 'Neu laden',
    'kept-wards': 'Zuletzt bekannt auf diesem Gerät',
    'kept-wards-say':
      'Der Server antwortet nicht. Diese Tafeln sind von früher; jede sagt, wie alt sie ist. Vor jedem Bewegen am Bett prüfen.',
    'kept-ward': 'bekannt bis {time}',
    'kept-bedside': 'Am Bett',
    'kept-wall': 'Ganze Tafel',
  },
});
