import { createRouter, createWebHistory } from 'vue-router';
import { useMeStore } from './people/me-store.ts';
import { homeOfDevice } from './people/ways-back.ts';

/** A page is not kept waiting longer than this to learn who is here: it says itself what the server says. */
const WAIT_MS = 4_000;
/** Pages for whoever is not known here yet. */
const open = { meta: { open: true } } as const;

/** Every screen is its own download, so that a wall does not carry the bedside page. */
export const router = createRouter({
  history: createWebHistory(),
  routes: [
    { path: '/', name: 'home', component: () => import('./boards/HomePage.vue'), ...open },
    { path: '/sign-in', name: 'sign-in', component: () => import('./boards/SignInPage.vue'), ...open },
    { path: '/join', name: 'join', component: () => import('./boards/JoinPage.vue'), ...open },
    { path: '/pair', name: 'pair', component: () => import('./boards/PairPage.vue'), ...open },
    { path: '/parts', name: 'parts', component: () => import('./boards/PartsPage.vue'), ...open },
    { path: '/account', name: 'account', component: () => import('./boards/AccountPage.vue') },
    { path: '/set-up', name: 'set-up', component: () => import('./boards/SetUpPage.vue') },
    {
      path: '/wards/:ward/wall',
      name: 'wall',
      component: () => import('./boards/WallPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/huddle',
      name: 'huddle',
      component: () => import('./boards/HuddlePage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/day',
      name: 'day',
      component: () => import('./boards/DayPage.vue'),
      props: (to) => ({ ward: to.params['ward'], day: to.query['day'] }),
    },
    {
      path: '/wards/:ward/round',
      name: 'round',
      component: () => import('./boards/RoundPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/day-plan',
      name: 'day-plan',
      component: () => import('./boards/DayPlanPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/round/acts',
      name: 'round-acts',
      component: () => import('./boards/RoundActsPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/fairness',
      name: 'fairness',
      component: () => import('./boards/FairnessPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/charge',
      name: 'charge',
      component: () => import('./boards/ChargePage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/bedside/:bed?',
      name: 'bedside',
      component: () => import('./boards/BedsidePage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/paper/:serial?/:bed?',
      name: 'paper',
      component: () => import('./boards/PaperPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/stays/:stay',
      name: 'stay',
      component: () => import('./boards/StayPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/equipment/:item?',
      name: 'equipment',
      component: () => import('./boards/EquipmentPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/coordinator',
      name: 'coordinator',
      component: () => import('./boards/CoordinatorPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/concerns',
      name: 'concerns',
      component: () => import('./boards/ConcernsPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/settings',
      name: 'settings',
      component: () => import('./boards/SettingsPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/accounts',
      name: 'accounts',
      component: () => import('./boards/AccountsPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/devices',
      name: 'devices',
      component: () => import('./boards/DevicesPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/access-log',
      name: 'access-log',
      component: () => import('./boards/AccessLogPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/records',
      name: 'records',
      component: () => import('./boards/RecordsPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/glass',
      name: 'glass',
      component: () => import('./boards/GlassPage.vue'),
      props: true,
    },
    { path: '/:rest(.*)*', name: 'nowhere', component: () => import('./boards/NowherePage.vue'), ...open },
  ],
});

/** The server decides what anybody may read; here only the way is shown. */
router.beforeEach(async (to) => {
  if (to.meta['open'] === true) return true;
  const me = useMeStore();
  await Promise.race([me.ready(), new Promise((done) => setTimeout(done, WAIT_MS))]);
  if (!me.accounts || me.person) return true;
  if (!me.device) return { name: 'sign-in', query: { back: to.fullPath } };
  // A wall is nothing but a wall.
  const home = homeOfDevice(me.device);
  return me.device.kind === 'wall' && to.path !== home ? home : true;
});
