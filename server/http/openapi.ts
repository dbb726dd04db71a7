/**
 * The API document (OpenAPI 3.1), made from the very zod schemas that check the requests: one path a
 * command, one a query. It cannot say anything the server does not do.
 */
import { z } from 'zod';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import {
  healthPage,
  protocolsInForce,
  rulesInForce,
  totalsPage,
  verifyPage,
} from '@footboard/shared/wire/documents';
import {
  boardPage,
  commandAccepted,
  huddlePage,
  problem,
  staffList,
  stayPage,
  wardList,
} from '@footboard/shared/wire/http';
import { STAFF_HEADER } from '../capabilities/people/author-policy.ts';
import { bodyOf } from '../commanding/validate.ts';
import { DEVICE_CLOCK_HEADER } from './commands.controller.ts';

type Json = Record<string, unknown>;

interface QueryRoute {
  readonly path: string;
  readonly name: string;
  readonly says: string;
  readonly answer: z.ZodType;
  /** Query parameters: name and what it asks for. */
  readonly asks?: Readonly<Record<string, string>>;
}

/** Every read there is. A test holds it against the controllers' own routes. */
export const QUERIES: readonly QueryRoute[] = [
  { path: '/api/wards', name: 'WardList', says: 'The wards of this server.', answer: wardList },
  {
    path: '/api/wards/{ward}/board',
    name: 'BoardPage',
    says: 'The board: now, or as of an instant, knowing what was known at a position of the log.',
    answer: boardPage,
    asks: { at: 'Instant in UTC, like 2026-10-25T01:40:00Z.', p: 'Position in the ward’s log, from 1.' },
  },
  {
    path: '/api/wards/{ward}/staff',
    name: 'StaffList',
    says: 'The staff list of the ward.',
    answer: staffList,
  },
  {
    path: '/api/wards/{ward}/stays/{stay}',
    name: 'StayPage',
    says: 'One stay: the person, the row of the board, and every entry in plain words.',
    answer: stayPage,
  },
  {
    path: '/api/wards/{ward}/huddle',
    name: 'HuddlePage',
    says: 'The ward in the order of the morning review.',
    answer: huddlePage,
  },
  {
    path: '/api/wards/{ward}/totals',
    name: 'TotalsPage',
    says: 'What each stay did on one ward day. Not recorded is a gap, never a zero.',
    answer: totalsPage,
    asks: { day: 'Date the ward day began on, like 2026-10-25; today if left out.' },
  },
  {
    path: '/api/wards/{ward}/rules',
    name: 'RulesInForce',
    says: 'Limits and validities in force, each with source, owner and review date.',
    answer: rulesInForce,
  },
  {
    path: '/api/wards/{ward}/protocols',
    name: 'ProtocolsInForce',
    says: 'Protocol versions an assessment may name, and the one in force.',
    answer: protocolsInForce,
  },
  {
    path: '/api/verify/{ward}',
    name: 'VerifyPage',
    says: 'Checks the ward’s whole log: chain, order and payloads, and an earlier anchor if given.',
    answer: verifyPage,
    asks: { position: 'Position of an anchor exported earlier.', chain: 'Chain hash of that anchor.' },
  },
  { path: '/health/live', name: 'Live', says: 'The process answers.', answer: healthPage },
  { path: '/health/ready', name: 'Ready', says: 'Screens can be served.', answer: healthPage },
];

const ref = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });
const json = (schema: Json, type = 'application/json'): Json => ({ content: { [type]: { schema } } });

/** "record-session" -> "RecordSession" */
const schemaName = (command: string): string =>
  command
    .split('-')
    .map((word) => word[0]!.toUpperCase() + word.slice(1))
    .join('');

export function openApiDocument(): Json {
  const schemas: Json = {};
  add(schemas, 'Problem', problem, 'output');
  add(schemas, 'CommandAccepted', commandAccepted, 'output');
  for (const type of COMMAND_TYPES.values()) add(schemas, schemaName(type.name), bodyOf(type), 'input');
  for (const query of QUERIES) add(schemas, query.name, query.answer, 'output');

  const paths: Json = {};
  for (const query of QUERIES) paths[query.path] = { get: queryOperation(query) };
  for (const type of COMMAND_TYPES.values()) {
    paths[`/api/wards/{ward}/commands/${type.name}`] = { post: commandOperation(type.name, type.says) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Footboard',
      version: '0.2.0',
      description:
        'A live ward board for patient mobility. Orders, local policy and the clinician at the bedside come first. ' +
        'Every "no" is a problem document (RFC 9457) that says what to do. A command may be sent again with the ' +
        'same commandId at any time: it is stored at most once.',
      license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
    },
    servers: [{ url: '/' }],
    tags: [{ name: 'commands' }, { name: 'queries' }],
    paths,
    components: { schemas, responses: { Problem: problemResponse } },
  };
}

const problemResponse: Json = {
  description: 'What is wrong, and what to do about it.',
  ...json(ref('Problem'), 'application/problem+json'),
};
const anyProblem: Json = { $ref: '#/components/responses/Problem' };

function queryOperation(query: QueryRoute): Json {
  return {
    operationId: `get${query.name}`,
    summary: query.says,
    tags: ['queries'],
    parameters: [...pathParameters(query.path), ...Object.entries(query.asks ?? {}).map(queryParameter)],
    responses: {
      200: { description: query.says, ...json(ref(query.name)) },
      default: anyProblem,
    },
  };
}

function commandOperation(name: string, says: string): Json {
  return {
    operationId: name,
    summary: says,
    tags: ['commands'],
    parameters: [
      ...pathParameters('{ward}'),
      header(
        STAFF_HEADER,
        'Staff id of whoever makes the entry. Only the first set-up of a ward goes without.',
      ),
      header(
        DEVICE_CLOCK_HEADER,
        'The device’s clock as the request leaves, in UTC; measures how far it is ahead.',
      ),
    ],
    requestBody: { required: true, ...json(ref(schemaName(name))) },
    responses: {
      200: {
        description: 'Accepted, now or by an earlier sending of the same commandId.',
        ...json(ref('CommandAccepted')),
      },
      409: { ...problemResponse, description: 'Something changed since the version in "expect".' },
      413: { ...problemResponse, description: 'The body is too large.' },
      422: { ...problemResponse, description: 'Not valid, or refused by a rule.' },
      503: {
        ...problemResponse,
        description: 'Not stored, or not known: send again with the same commandId.',
      },
      default: anyProblem,
    },
  };
}

const pathParameters = (path: string): Json[] =>
  [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
const queryParameter = ([name, description]: [string, string]): Json => ({
  name,
  in: 'query',
  required: false,
  description,
  schema: { type: 'string' },
});
const header = (name: string, description: string): Json => ({
  name,
  in: 'header',
  required: false,
  description,
  schema: { type: 'string' },
});

/** Puts a schema among the components; what it defines for itself goes beside it under a name of its own. */
function add(schemas: Json, name: string, schema: z.ZodType, io: 'input' | 'output'): void {
  const {
    $schema: _dialect,
    $defs = {},
    ...own
  } = z.toJSONSchema(schema, { io, unrepresentable: 'any' }) as Json;
  const renamed = (node: unknown): unknown => {
    if (Array.isArray(node)) return node.map(renamed);
    if (typeof node !== 'object' || node === null) return node;
    return Object.fromEntries(
      Object.entries(node).map(([key, value]) =>
        key === '$ref' && typeof value === 'string' ? [key, place(name, value)] : [key, renamed(value)],
      ),
    );
  };
  schemas[name] = renamed(own);
  for (const [inner, definition] of Object.entries($defs as Json)) {
    schemas[`${name}.${inner}`] = renamed(definition);
  }
}

const place = (name: string, reference: string): string =>
  reference === '#'
    ? `#/components/schemas/${name}`
    : reference.replace(/^#\/\$defs\//, `#/components/schemas/${name}.`);
