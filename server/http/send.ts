import type { Response } from 'express';
import type { Problem } from '@footboard/shared/wire/http';

export function sendProblem(response: Response, problem: Problem): void {
  if (response.headersSent) {
    response.end();
    return;
  }
  response
    .status(problem.status)
    .set('Cache-Control', 'no-store')
    .type('application/problem+json')
    .send(JSON.stringify(problem));
}
