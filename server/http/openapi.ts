/**
 * The API document (OpenAPI 3.1), made from the table of addresses and the very zod schemas that check
 * the requests. It cannot say anything the server does not do.
 */
import { z } from 'zod';
import { commandAccepted, problem } from '@footboard/shared/wire/http';
import type { Route } from '@footboard/shared/wire/route';
import { ROUTES, commandRoutes } from '@footboard/shared/wire/routes';
import { STAFF_HEADER } from '../capabilities/people/author-policy.ts';
import { DEVICE_CLOCK_HEADER } from './commands.controller.ts';

type Json = Record<string, unknown>;

const ref = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });
const json = (schema: Json, type = 'application/json'): Json => ({ content: { [type]: { schema } } });

export function openApiDocument(): Json {
  const schemas: Json = {};
  add(schemas, 'Problem', problem, 'output');
  add(schemas, 'CommandAccepted', commandAccepted, 'output');
  const paths: Record<string, Json> = {};
  for (const route of ROUTES) {
    if (route.answer) add(schemas, route.name, route.answer, 'output');
    if (route.body) add(schemas, bodyName(route), route.body, 'input');
    (paths[route.path] ??= {})[route.method] = operation(route);
  }
  for (const route of commandRoutes) {
    add(schemas, route.name, route.body!, 'input');
    paths[route.path] = { post: commandOperation(route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Footboard',
      version: '0.3.0',
      description:
        'A live ward board for patient mobility. Orders, local policy and the clinician at the bedside come first. ' +
        'Every "no" is a problem document (RFC 9457) that says what to do. A command may be sent again with the ' +
        'same commandId at any time: it is stored at most once.',
      license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
    },
    servers: [{ url: '/' }],
    tags: [{ name: 'commands' }, { name: 'queries' }, { name: 'access' }],
    paths,
    components: { schemas, responses: { Problem: problemResponse } },
  };
}

const problemResponse: Json = {
  description: 'What is wrong, and what to do about it.',
  ...json(ref('Problem'), 'application/problem+json'),
};
const anyProblem: Json = { $ref: '#/components/responses/Problem' };

const bodyName = ({ name }: Route): string => `${name}Request`;

function operation(route: Route): Json {
  const { method, name, says, gives = 200 } = route;
  const answer = route.answer ? json(ref(name)) : {};
  return {
    operationId: `${method}${name}`,
    summary: says,
    tags: [method === 'get' ? 'queries' : 'access'],
    parameters: [...pathParameters(route.path), ...Object.entries(route.asks ?? {}).map(queryParameter)],
    ...(route.body ? { requestBody: { required: true, ...json(ref(bodyName(route))) } } : {}),
    responses: { [gives]: { description: says, ...answer }, default: anyProblem },
  };
}

function commandOperation({ action, path, name, says }: Route): Json {
  return {
    operationId: action,
    summary: says,
    tags: ['commands'],
    parameters: [
      ...pathParameters(path),
      header(
        STAFF_HEADER,
        'Staff id that the entry claims as its author. Believed only where sign-in is off; otherwise whoever ' +
          'is signed in is the author, and a claim alone can at most be kept as unconfirmed.',
      ),
      header(
        DEVICE_CLOCK_HEADER,
        'The device’s clock as the request leaves, in UTC; measures how far it is ahead.',
      ),
    ],
    requestBody: { required: true, ...json(ref(name)) },
    responses: {
      200: {
        description: 'Accepted, now or by an earlier sending of the same commandId.',
        ...json(ref('CommandAccepted')),
      },
      401: { ...problemResponse, description: 'Nobody is signed in, or the sign-in ran out.' },
      403: { ...problemResponse, description: 'Not for this role, or not on this ward.' },
      409: { ...problemResponse, description: 'Something changed since the version in "expect".' },
      413: { ...problemResponse, description: 'The body is too large.' },
      422: { ...problemResponse, description: 'Not valid, or refused by a rule.' },
      429: { ...problemResponse, description: 'Too many requests: wait as long as Retry-After says.' },
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
