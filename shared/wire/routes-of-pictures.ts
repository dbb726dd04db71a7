/** Addresses that pictures are drawn from; part of the table in routes.ts. */
import { stayCourse, wardHours } from './pictures.ts';
import type { Route } from './route.ts';

export const pictureRoutes: readonly Route[] = [
  {
    method: 'get',
    path: '/api/wards/{ward}/stays/{stay}/course',
    action: 'read-stay',
    name: 'StayCourse',
    says: 'How one stay went: tier, trust and holds over time, sessions and triggers, and the days with nothing recorded.',
    answer: stayCourse,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/hours',
    action: 'read-totals',
    name: 'WardHours',
    says: 'One ward day by the hour: what was done, what was not and why, and of how many nothing is recorded.',
    answer: wardHours,
    asks: { day: 'Date the ward day began on, like 2026-10-25; today if left out.' },
  },
];
