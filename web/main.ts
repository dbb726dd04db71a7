import { createPinia } from 'pinia';
import { createApp } from 'vue';
import App from './App.vue';
import { keepLanguage } from './i18n/language.ts';
import { keepPageTitle } from './i18n/page-titles.ts';
import { i18n } from './i18n/words.ts';
import { keepLastKnown } from './offline/keep-last-known.ts';
import { keepProgram } from './offline/newer.ts';
import { keepSending } from './outbox/keep-sending.ts';
import { router } from './router.ts';
import './design/tokens.css';
import './design/base.css';

keepLanguage();
createApp(App).use(i18n).use(createPinia()).use(router).mount('#app');
keepPageTitle(router);
keepSending();
keepLastKnown();
keepProgram();
