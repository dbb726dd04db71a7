import type { ArgumentsHost } from '@nestjs/common';
import { pino } from 'pino';
import { describe, expect, it } from 'vitest';
import { Answered, problem } from '../commanding/problems.ts';
import { LogUnavailable } from '../log/log.ts';
import { AnswerLost, DatabaseUnreachable } from '../platform/database-errors.ts';
import { ProblemFilter } from './problem-filter.ts';

/** What a request that ended in this error is answered, and what the server's log says of it. */
function caught(error: unknown): { answer: Record<string, unknown>; logged: string } {
  let logged = '';
  let sent = '';
  const response = {
    headersSent: false,
    status: () => response,
    set: () => response,
    type: () => response,
    send: (text: string) => (sent = text),
  };
  const request = { method: 'GET', path: '/api/me', route: { path: '/api/me' } };
  const http = { getRequest: () => request, getResponse: () => response };
  const logger = pino({ level: 'info' }, { write: (line: string) => void (logged += line) });
  new ProblemFilter(logger).catch(error, { switchToHttp: () => http } as unknown as ArgumentsHost);
  return { answer: JSON.parse(sent), logged };
}

describe('a request that went wrong', () => {
  it.each([
    new LogUnavailable(new Error('refused')),
    new DatabaseUnreachable(new Error('refused')),
    new AnswerLost(new Error('reset')),
  ])('given the database is away (%s), it may be tried again and is no mistake of the program', (error) => {
    const { answer, logged } = caught(error);
    expect(answer).toMatchObject({ status: 503, type: '/problems/database-away' });
    expect(logged).toBe('');
  });

  it('given somebody was turned away, the log says from what and for which code, and nothing they sent', () => {
    const refused = problem('not-allowed', 'inkwell is not for an aide', 'Ask.');
    const { answer, logged } = caught(new Answered(refused));
    expect(answer).toMatchObject({ status: 403 });
    expect(JSON.parse(logged)).toMatchObject({ msg: 'refused', route: '/api/me', code: 'not-allowed' });
    expect(logged).not.toContain('inkwell');
  });

  it('given a field that is not right, the log is silent', () => {
    expect(caught(new Answered(problem('invalid-request', 'no', 'Mend it.'))).logged).toBe('');
  });

  it('given a mistake of the program, the answer shows nothing of the inside and the log has it', () => {
    const { answer, logged } = caught(new Error('inkwell'));
    expect(answer).toMatchObject({ status: 500, type: '/problems/broken' });
    expect(JSON.stringify(answer)).not.toContain('inkwell');
    expect(logged).toContain('request broken');
  });
});
