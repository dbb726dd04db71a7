/** Addresses of the day plan; part of the table in routes.ts. */
import {
  dayPlanPage,
  peopleOnPage,
  planChecked,
  planToCheck,
  proposeDay,
  proposedDay,
  whatIfAsked,
  whatIfPage,
} from './planning.ts';
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
  {
    method: 'get',
    path: '/api/wards/{ward}/day-plan',
    action: 'read-day-plan',
    name: 'DayPlanPage',
    says: 'What the rest of the ward day asks for, with whom and what, and the plan that was accepted.',
    answer: dayPlanPage,
  },
  {
    method: 'post',
    path: '/api/wards/{ward}/day-plan',
    action: 'propose-day-plan',
    name: 'ProposedDay',
    says: 'Makes a plan of the rest of the ward day. A proposal: nothing is written. Ends when the request is closed.',
    body: proposeDay,
    answer: proposedDay,
  },
  {
    method: 'post',
    path: '/api/wards/{ward}/day-plan/check',
    action: 'propose-day-plan',
    name: 'PlanChecked',
    says: 'Which rules a plan that is being changed by hand breaks, each in words, as accepting it would. Nothing is written.',
    body: planToCheck,
    answer: planChecked,
  },
  {
    method: 'post',
    path: '/api/wards/{ward}/day-plan/what-if',
    action: 'propose-day-plan',
    name: 'WhatIf',
    says: 'The plan with one person, one piece of equipment or one bed less free, and who would go unmoved. Nothing is written.',
    body: whatIfAsked,
    answer: whatIfPage,
  },
];
