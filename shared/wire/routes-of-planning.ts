/** Addresses of the day plan; part of the table in routes.ts. */
import { peopleOnPage } from './planning.ts';
import type { Route } from './route.ts';

export const planningRoutes: readonly Route[] = [
  {
    method: 'get',
    path: '/api/wards/{ward}/people-on',
    action: 'read-people-on',
    name: 'PeopleOnPage',
    says: 'Who is on the ward on one ward day, and by quarter hours how many; the usual staffing where nobody was named.',
    answer: peopleOnPage,
    asks: { day: 'Date the ward day began on, like 2026-10-25; today if left out.' },
  },
];
