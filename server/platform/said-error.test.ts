import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { saidError } from './said-error.ts';

const NAME = 'Violetta Quisquilia';
const thrown = (what: () => unknown): unknown => {
  try {
    what();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
};

describe('SAID-1 an error in the server’s log', () => {
  it.each([
    ['a text that is no JSON', () => JSON.parse(NAME)],
    [
      'a field that does not fit',
      () => z.strictObject({ [NAME]: z.number() }).parse({ [NAME]: NAME, more: 1 }),
    ],
    ['a zone that does not exist', () => new Intl.DateTimeFormat('en', { timeZone: NAME })],
    ['an argument Node refuses', () => Buffer.from('x').write(NAME as string, NAME as BufferEncoding)],
    ['an address that is none', () => new URL(NAME)],
    ['a percent sign that stands for nothing', () => decodeURIComponent(`%${NAME}`)],
    [
      'a message of our own that quotes',
      () => {
        throw new Error(`the text "${NAME}" does not fit`);
      },
    ],
    [
      'a message that opens a quote and does not close it',
      () => {
        throw new Error(`unexpected "${NAME}`);
      },
    ],
    [
      'something thrown that is no error',
      () => {
        // oxlint-disable-next-line typescript/only-throw-error -- that is the case
        throw NAME;
      },
    ],
    [
      'a cause below',
      () => {
        throw new Error('broken', { cause: thrown(() => JSON.parse(NAME)) });
      },
    ],
  ])('given %s, when it is said, then no word of a person stands in it', (_case, what) => {
    const said = JSON.stringify(saidError(thrown(what)));
    expect(said).not.toContain('Violetta');
    expect(said).not.toContain('Quisquilia');
  });

  it('given a refusal of the database, when it is said, then SQLSTATE and constraint stand there, its words and values do not', () => {
    const refusal = Object.assign(new Error(`duplicate key (${NAME})`), {
      severity: 'ERROR',
      code: '23505',
      constraint: 'account_staff_key',
      detail: `Key (name)=(${NAME}) already exists.`,
      params: [NAME],
      query: `insert into x values ('${NAME}')`,
    });
    const said = saidError(refusal);
    expect(said).toMatchObject({ code: '23505', constraint: 'account_staff_key' });
    expect(JSON.stringify(said)).not.toContain('Violetta');
  });

  it('given an error of our own, when it is said, then its words and where it was thrown stay readable', () => {
    const said = saidError(new TypeError('ward of the stay is not read'));
    expect(said).toMatchObject({ type: 'TypeError', message: 'ward of the stay is not read' });
    expect(said.stack).toMatch(/said-error\.test\.ts:\d+/);
    expect(said.stack).not.toContain('ward of the stay');
  });
});
