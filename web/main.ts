import { createPinia } from 'pinia';
import { createApp } from 'vue';
import App from './App.vue';
import { keepLanguage } from './i18n/language.ts';
import { keepPageTitle } from './i18n/page-titles.ts';
import { i18n } from './i18n/words.ts';
import { keepProgram } from './offline/newer.ts';
import { router } from './router.ts';
import './design/font.css';
import './design/tokens.css';
import './design/base.css';

keepLanguage();
createApp(App).use(i18n).use(createPinia()).use(router).mount('#app');
keepPageTitle(router);
// Not part of what a wall waits for: it sends nothing.
void Promise.all([import('./outbox/keep-sending.ts'), import('./capabilities/entry/sent-late.ts')]).then(
  ([{ keepSending }, { useSentLate }]) => {
    // Whichever page is open when they go out: what stands beside them is told at the bedside.
    useSentLate();
    keepSending();
  },
);
// On the device like the rest of the program, so it is there without a network too.
void import('./offline/keep-last-known.ts').then(({ keepLastKnown }) => keepLastKnown());
keepProgram();
