import { createRouter, createWebHistory } from 'vue-router';

/** Every screen is its own download, so that a wall does not carry the bedside page. */
export const router = createRouter({
  history: createWebHistory(),
  routes: [
    { path: '/', name: 'home', component: () => import('./boards/HomePage.vue') },
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
      path: '/wards/:ward/bedside/:bed?',
      name: 'bedside',
      component: () => import('./boards/BedsidePage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/stays/:stay',
      name: 'stay',
      component: () => import('./boards/StayPage.vue'),
      props: true,
    },
    {
      path: '/wards/:ward/settings',
      name: 'settings',
      component: () => import('./boards/SettingsPage.vue'),
      props: true,
    },
    { path: '/:rest(.*)*', name: 'nowhere', component: () => import('./boards/NowherePage.vue') },
  ],
});
