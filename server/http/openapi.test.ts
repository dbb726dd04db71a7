import { describe, expect, it } from 'vitest';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { QUERIES, openApiDocument } from './openapi.ts';

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

  it.each(QUERIES.map((query) => query.path))('has query %s', (path) => {
    expect(document.paths[path]?.['get']).toMatchObject({ responses: { 200: expect.anything() } });
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
