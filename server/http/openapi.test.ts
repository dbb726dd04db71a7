import 'reflect-metadata';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { RequestMethod } from '@nestjs/common';
import { METHOD_METADATA, PATH_METADATA } from '@nestjs/common/constants.js';
import { describe, expect, it } from 'vitest';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { WITHOUT_A_WARD, policyRow } from '@footboard/shared/capabilities/people/policy/document';
import type { Route } from '@footboard/shared/wire/route';
import { COMMAND_PATH, ROUTES, commandRoutes } from '@footboard/shared/wire/routes';
import { ACTION } from './allowed.ts';
import { openApiDocument } from './openapi.ts';

interface Document {
  openapi: string;
  info: { title: string; version: string };
  paths: Record<string, Record<string, Record<string, unknown>>>;
  components: { schemas: Record<string, unknown> };
}
const document = JSON.parse(JSON.stringify(openApiDocument())) as Document;

function refsOf(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    key === '$ref' && typeof value === 'string' ? [value] : refsOf(value),
  );
}
const resolve = (reference: string): unknown =>
  reference
    .slice(2)
    .split('/')
    .reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], document);

/** Shape from the OpenAPI Specification 3.1.0, sections 4.8.1 to 4.8.10. */
describe('the API document', () => {
  it('is OpenAPI 3.1 with a title and a version', () => {
    expect(document.openapi).toBe('3.1.0');
    expect(document.info).toMatchObject({ title: 'Footboard', version: expect.any(String) });
  });

  it.each([...COMMAND_TYPES.keys()])('has command %s with a body and problem answers', (name) => {
    const post = document.paths[`/api/wards/{ward}/commands/${name}`]?.['post'];
    expect(post).toMatchObject({
      operationId: name,
      requestBody: { required: true },
      responses: {
        200: { description: expect.any(String) },
        422: { content: { 'application/problem+json': expect.anything() } },
      },
    });
  });

  it.each(ROUTES.map(({ method, path }) => [method, path] as const))('has %s %s', (method, path) => {
    const { body, answer, gives = 200 } = ROUTES.find((r) => r.method === method && r.path === path)!;
    const operation = document.paths[path]![method]!;
    const responses = operation['responses'] as Record<string, { content?: unknown }>;
    expect(Object.keys(responses)).toEqual([String(gives), 'default']);
    expect(responses[gives]!.content !== undefined).toBe(answer !== undefined);
    expect(operation['requestBody'] !== undefined).toBe(body !== undefined);
  });

  it('declares every path parameter', () => {
    for (const [path, operations] of Object.entries(document.paths)) {
      const named = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      for (const operation of Object.values(operations)) {
        const declared = (
          operation['parameters'] as { name: string; in: string; required: boolean }[]
        ).filter((parameter) => parameter.in === 'path');
        expect(declared.map((parameter) => parameter.name)).toEqual(named);
        expect(declared.every((parameter) => parameter.required)).toBe(true);
      }
    }
  });

  it('names no schema that is not there, and no operation twice', () => {
    const refs = refsOf(document);
    expect(refs.length).toBeGreaterThan(COMMAND_TYPES.size);
    expect(refs.filter((reference) => !reference.startsWith('#/components/'))).toEqual([]);
    expect(refs.filter((reference) => resolve(reference) === undefined)).toEqual([]);
    const ids = Object.values(document.paths).flatMap((operations) =>
      Object.values(operations).map((operation) => operation['operationId']),
    );
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('asks for the fields of a session as its schema does', () => {
    const body = document.components.schemas['RecordSession'] as {
      required: string[];
      properties: { data: { required: string[] } };
    };
    expect(body.required).toEqual(expect.arrayContaining(['commandId', 'occurred', 'entered', 'data']));
    expect(body.required).not.toContain('fromOutbox');
    expect(body.properties.data.required).toEqual(['stay', 'session']);
  });
});

/** What the controllers really answer, read from what Nest itself reads. */
async function served(): Promise<Pick<Route, 'method' | 'path' | 'action'>[]> {
  const found: Pick<Route, 'method' | 'path' | 'action'>[] = [];
  const folder = import.meta.dirname;
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.controller.ts'))) {
    const exported: Record<string, unknown> = await import(join(folder, file));
    for (const controller of Object.values(exported)) {
      if (typeof controller !== 'function') continue;
      const root: unknown = Reflect.getMetadata(PATH_METADATA, controller);
      if (typeof root !== 'string') continue;
      const prototype = controller.prototype as Record<string, unknown>;
      for (const name of Object.getOwnPropertyNames(prototype)) {
        const handler = Object.getOwnPropertyDescriptor(prototype, name)!.value as object;
        const method = Reflect.getMetadata(METHOD_METADATA, handler) as RequestMethod | undefined;
        if (method === undefined) continue;
        const tail = String(Reflect.getMetadata(PATH_METADATA, handler)).replace(/^\/$/, '');
        found.push({
          method: RequestMethod[method].toLowerCase() as Route['method'],
          path: `/${root}${tail === '' ? '' : `/${tail}`}`.replaceAll(/:(\w+)/g, '{$1}'),
          action: String(Reflect.getMetadata(ACTION, handler)),
        });
      }
    }
  }
  return found;
}

const line = ({ method, path, action }: Pick<Route, 'method' | 'path' | 'action'>) =>
  `${method} ${path} ${action}`;

describe('the table of addresses', () => {
  const command: Pick<Route, 'method' | 'path' | 'action'> = {
    method: 'post',
    path: COMMAND_PATH,
    action: 'command',
  };

  it('is what the controllers serve: method, path and action', async () => {
    expect([...ROUTES, command].map(line).toSorted()).toEqual((await served()).map(line).toSorted());
  });

  it('names each operation and each address once', () => {
    const all = [...ROUTES, ...commandRoutes];
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
    expect(new Set(all.map(({ method, path }) => `${method} ${path}`)).size).toBe(all.length);
  });

  it('names only actions that the policy document has', () => {
    const unknown = [...ROUTES, ...commandRoutes].filter(
      ({ action }) => policyRow(action) === undefined && !Object.hasOwn(WITHOUT_A_WARD, action),
    );
    expect(unknown).toEqual([]);
  });

  it('has a body for every POST but those that need none', () => {
    const without = ROUTES.filter(({ method, body }) => method === 'post' && !body);
    expect(without.map(({ name }) => name)).toEqual(['InviteAnyAgain', 'InviteAgain']);
    expect(ROUTES.filter(({ method, body }) => method !== 'post' && body)).toEqual([]);
  });
});
