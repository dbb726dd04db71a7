import { createPinia } from 'pinia';
import { createApp } from 'vue';
import App from './App.vue';
import { keepSending } from './outbox/keep-sending.ts';
import { router } from './router.ts';
import './design/tokens.css';
import './design/base.css';

createApp(App).use(createPinia()).use(router).mount('#app');
keepSending();
