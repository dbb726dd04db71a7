import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { StartRefused } from '../platform/start-refused.ts';
import { readGroups } from './groups.ts';
import { ownPath } from './single-sign-on.ts';

describe('where to go after signing in', () => {
  it.each(['/', '/wards/alder/huddle', '/wards/alder/stays/s1?part=plan', '/apiary'])(
    'given %j, a path of this site, then it is kept',
    (path) => {
      expect(ownPath(path)).toBe(path);
    },
  );

  it.each([
    'https://elsewhere.example/',
    '//elsewhere.example/',
    '/\\elsewhere.example/',
    '/.//elsewhere.example/',
    '/wards/..//elsewhere.example/',
    '/\t/elsewhere.example/',
    'javascript:alert(1)',
    '',
    'wards/alder',
    '/api/sign-on/begin',
    '/API/wards',
    `/${'a'.repeat(600)}`,
  ])('given %j, then it is the start page', (path) => {
    expect(ownPath(path)).toBe('/');
  });
});

describe('the roles file', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'footboard-groups-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const file = (text: string) => {
    const path = join(folder, 'roles.json');
    writeFileSync(path, text);
    return path;
  };

  const refusal = (path: string): string => {
    try {
      readGroups(path);
    } catch (error) {
      if (error instanceof StartRefused) return error.message;
      throw error;
    }
    return 'not refused';
  };

  it('given groups for wards and for the whole server, then each gives what stands there', () => {
    const groups = readGroups(
      file(
        '{"nurses":{"ward":"alder","role":"nurse"},"keepers":{"wide":true},"aides":{"ward":"birch","role":"aide"}}',
      ),
    );
    expect(groups.wards).toEqual(['alder', 'birch']);
    expect(groups.given(new Set(['nurses', 'choir']))).toEqual({
      wide: false,
      roles: new Map([['alder', 'nurse']]),
    });
    expect(groups.given(new Set(['keepers']))).toEqual({ wide: true, roles: new Map() });
    expect(groups.given(new Set())).toEqual({ wide: false, roles: new Map() });
  });

  it.each([
    ['not JSON', '{', /cannot be read as JSON/],
    ['a role that does not exist', '{"nurses":{"ward":"alder","role":"matron"}}', /is not right at "nurses/],
    ['a word too many', '{"nurses":{"ward":"alder","role":"nurse","wide":true}}', /is not right at "nurses/],
    ['no group', '{}', /names no group/],
    ['a list', '[]', /is not right/],
  ])('given %s, then the start is refused in one line that shows a right one', (_what, text, line) => {
    const path = file(text);
    const said = refusal(path);
    expect(said).toMatch(/^OIDC_ROLES_FILE .*: write JSON like \{/);
    expect(said).toMatch(line);
    expect(said).not.toContain('\n');
  });
});
