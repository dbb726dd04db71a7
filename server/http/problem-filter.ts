import { BadRequestException, Catch, HttpException } from '@nestjs/common';
import type { ArgumentsHost, ExceptionFilter } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { Problem } from '@footboard/shared/wire/http';
import { Answered, broken, problem } from '../commanding/problems.ts';
import { LogUnavailable } from '../log/log.ts';
import { AnswerLost, DatabaseUnreachable } from '../platform/database-errors.ts';
import type { Logger } from '../platform/logging.ts';
import { identityOf } from './allowed.ts';
import { BODY_LIMIT } from './body.ts';
import { sendProblem } from './send.ts';

/** Everything that goes wrong below HTTP leaves as problem details, without a stack or a message of the inside. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly logger: Logger) {}

  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<Request>();
    const answer = problemOf(error, request);
    if (answer.status >= 500 && !databaseAway(error)) {
      this.logger.error({ method: request.method, route: routeOf(request), err: error }, 'request broken');
    }
    // Who was turned away, by ids: what nobody may do, and how often it is tried (OWASP ASVS 5.0, 16.3).
    if (TURNED_AWAY.has(answer.status)) {
      const { person, device } = identityOf(request);
      const who = { staff: person?.staff, device: device?.device };
      const code = answer.type.replace('/problems/', '');
      this.logger.info({ method: request.method, route: routeOf(request), code, ...who }, 'refused');
    }
    const response = http.getResponse<Response>();
    if (error instanceof Answered && error.retryAfter !== undefined && !response.headersSent) {
      response.setHeader('Retry-After', String(error.retryAfter));
    }
    sendProblem(response, answer);
  }
}

/** Not signed in, not theirs, locked, too often. */
const TURNED_AWAY: ReadonlySet<number> = new Set([401, 403, 423, 429]);

/** The route with its parameters' names: an address as it was sent may hold anything. */
const routeOf = ({ route }: Request): string => {
  const { path } = (route ?? {}) as { path?: unknown };
  return typeof path === 'string' ? path : 'none';
};

/** The log says so in its own words, what stands beside it in the database's. */
const databaseAway = (error: unknown): boolean =>
  error instanceof LogUnavailable || error instanceof DatabaseUnreachable || error instanceof AnswerLost;

function problemOf(error: unknown, request: Request): Problem {
  if (error instanceof Answered) return error.answer;
  if (databaseAway(error)) {
    return problem('database-away', 'The database cannot be reached now.', 'Try again in a moment.');
  }
  const status = statusOf(error);
  if (status === 413) {
    return problem(
      'too-large',
      `The body is over ${BODY_LIMIT / 1024} kB.`,
      'Send one entry a command; a check with all its stages is far smaller.',
    );
  }
  if (error instanceof BadRequestException || status === 400) {
    if (!isReadable(request.path)) {
      return problem(
        'malformed-address',
        'The address has a percent sign that stands for no character.',
        'Write the address in UTF-8 and escape it once.',
      );
    }
    return problem('malformed-json', 'The body cannot be read as JSON.', 'Send one JSON object in UTF-8.');
  }
  if (status === 415) return notJson();
  if (status === 404) {
    return problem(
      'no-such-page',
      `Nothing answers ${request.method} ${request.path.slice(0, 200)}.`,
      'The addresses are listed in /api/openapi.json.',
    );
  }
  return broken();
}

export const notJson = (): Problem =>
  problem(
    'not-json',
    'The request has no JSON body.',
    'Send the command as JSON with the header Content-Type: application/json.',
  );

/** The status an error of Nest or of the body parser carries. */
function statusOf(error: unknown): number {
  if (error instanceof HttpException) return error.getStatus();
  const status = (error as { status?: unknown } | null)?.status;
  return typeof status === 'number' ? status : 500;
}

function isReadable(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}
