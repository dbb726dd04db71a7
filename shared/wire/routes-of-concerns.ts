/** Addresses of near misses and strain. Part of the table in routes.ts. */
import { concernCounts, concernList, tellConcern } from './concerns.ts';
import type { Route } from './route.ts';

export const concernRoutes: readonly Route[] = [
  {
    method: 'post',
    path: '/api/wards/{ward}/concerns',
    action: 'tell-concern',
    name: 'TellConcern',
    says: 'A near miss or strain that somebody tells of, apart from the record; without a name unless they choose so.',
    body: tellConcern,
    gives: 204,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/concerns',
    action: 'read-concerns',
    name: 'ConcernList',
    says: 'Near misses and strain of the last year, for the handling coordinator alone.',
    answer: concernList,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/concern-counts',
    action: 'count-concerns',
    name: 'ConcernCounts',
    says: 'How many near misses and strains, by kind and by reasons that stand behind several.',
    answer: concernCounts,
  },
];
