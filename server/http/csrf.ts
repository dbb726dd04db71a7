/**
 * Only a page of this server may make the browser of somebody who is signed in change anything.
 * Cookies are SameSite=Strict already; this holds for browsers and mistakes that get round it.
 *
 * A request that changes something says where it comes from: browsers add `Origin` (Fetch standard)
 * and `Sec-Fetch-Site` (Fetch Metadata), and no page can forge them. A program that is no browser
 * sends neither, and none of our cookies. A body must be JSON, which no form of a foreign page can send.
 */
import type { NextFunction, Request, RequestHandler, Response } from 'express';
import type { IncomingHttpHeaders } from 'node:http';
import { problem } from '../commanding/problems.ts';
import { notJson } from './problem-filter.ts';
import { sendProblem } from './send.ts';

const CHANGES_NOTHING: ReadonlySet<string> = new Set(['GET', 'HEAD', 'OPTIONS']);
const OUR_COOKIE = /(?:^|;)\s*(?:__Host-)?footboard-/;

const one = (value: string | readonly string[] | undefined): string | undefined =>
  typeof value === 'string' ? value : value?.[0];

/** Whether the request comes from a page of this server, or from no browser at all. */
export function fromHere(headers: IncomingHttpHeaders, behindTlsProxy: boolean): boolean {
  const site = one(headers['sec-fetch-site']);
  const { origin } = headers;
  if (site === undefined && origin === undefined) return !OUR_COOKIE.test(headers.cookie ?? '');
  if (site !== undefined && site !== 'same-origin') return false;
  // A page that hides where it came from sends "null"; the browser still vouches for it by Sec-Fetch-Site.
  if (origin === undefined || (origin === 'null' && site !== undefined)) return true;
  if (!URL.canParse(origin)) return false;
  const { host } = new URL(origin);
  return host === headers.host || (behindTlsProxy && host === one(headers['x-forwarded-host']));
}

const hasBody = ({ headers }: Request): boolean =>
  headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;

/** @param behindTlsProxy the asked-for host is in X-Forwarded-Host, which anybody could write otherwise. */
export const sameSiteOnly =
  (behindTlsProxy: boolean): RequestHandler =>
  (request: Request, response: Response, next: NextFunction) => {
    if (CHANGES_NOTHING.has(request.method)) next();
    else if (!fromHere(request.headers, behindTlsProxy)) {
      sendProblem(
        response,
        problem(
          'foreign-page',
          'The request does not come from a page of this server. Nothing was changed.',
          'Open Footboard by its own address and do it there. Behind a proxy: see docs/deploy.md.',
        ),
      );
    } else if (hasBody(request) && !request.is('application/json')) sendProblem(response, notJson());
    else next();
  };
