/** Malformed requests for every address of the table: a request that fits, broken in one of many ways. */
import * as fc from 'fast-check';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/default-rules';
import type { Route } from '@footboard/shared/wire/route';
import { ROUTES, commandRoutes } from '@footboard/shared/wire/routes';
import { HOSTILE_WORDS, SPOILED, broken, breaks, textOf } from './break-json.ts';
import { fitting } from './from-schema.ts';
import type { Named } from './from-schema.ts';
import type { Request } from './wire.ts';

export interface Input extends Request {
  /** In words: the address, who asks, and how it was broken. */
  readonly what: string;
  /** Who sends it: a key of the world's voices. */
  readonly voice: string;
  /** Broken as HTTP: Node's own parser may refuse it before the program sees it. */
  readonly unframed: boolean;
}

/** Ids that are there, so that what is sent gets as far as the rules. */
const NAMED: Readonly<Record<string, readonly unknown[]>> = {
  ward: ['alder'],
  stay: ['stay-1', 'stay-1', 'stay-1', 'gone', 'nobody'],
  bed: ['bed-1A', 'bed-2A', 'bed-9Z'],
  // Never the staff who send: a role changed here would silence a voice.
  staff: ['spare', 'nobody-here'],
  zone: ['Europe/Lisbon', 'Asia/Kathmandu', 'Mars/Base'],
  document: [DEFAULT_RULES, DEFAULT_PROTOCOL],
  protocol: [{ id: 'footboard-default', version: 1 }],
  device: ['no-such-device'],
};
/** Stands for the address the server listens on. */
export const HERE = '{here}';
/** These would end what the fuzzer itself stands on. */
const SPENT: Readonly<Record<string, readonly unknown[]>> = { ...NAMED, stay: ['gone', 'nobody'] };
const ENDS_A_STAY = new Set(['end-stay', 'transfer-stay', 'erase-stay', 'swap-stays', 'move-stay']);

const namedFor =
  ({ action }: Route): Named =>
  (field) => {
    const values = (ENDS_A_STAY.has(action) ? SPENT : NAMED)[field];
    return values && fc.constantFrom(...values);
  };

const bodies = new Map<Route, fc.Arbitrary<unknown>>();
function bodyFor(route: Route): fc.Arbitrary<unknown> {
  let body = bodies.get(route);
  if (!body) {
    body = route.body ? fitting(route.body, namedFor(route)) : fc.constant(null);
    bodies.set(route, body);
  }
  return body;
}

const PLACES: Readonly<Record<string, string>> = {
  ward: 'alder',
  stay: 'gone',
  code: 'conflict',
  account: 'no-such-account',
  device: 'no-such-device',
  glass: 'no-such-glass',
};
const addressOf = (path: string): string =>
  path.replaceAll(/\{(\w+)\}/g, (_, name: string) => PLACES[name] ?? 'x');

/** Half of a surrogate pair cannot be written in an address or a header. */
const whole = (text: string): string => text.replaceAll(/\p{Surrogate}/gu, '\uFFFD');
const percent = (text: string): string => encodeURIComponent(whole(text));
/** A whole number of bytes that is a request line's: spaces and line ends would make another request of it. */
const inLine = (text: string): string =>
  whole(text)
    .replaceAll(/[\0-\x20\x7f]/g, '%00')
    .slice(0, 9_000);
const inHeader = (text: string): string =>
  whole(text)
    .replaceAll(/[\0\r\n]/g, ' ')
    .slice(0, 9_000);
const word = fc.oneof(
  fc.constantFrom(...HOSTILE_WORDS),
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.constantFrom(
    '%',
    '%zz',
    '%c0%af',
    '%00',
    '..',
    '%2e%2e%2f',
    '/',
    '//',
    ';a=b',
    '*',
    '%25%32%35',
    'a'.repeat(7_000),
  ),
);

type Change = (request: Request) => Request;
const json = (body: Request['body']): Pick<Request, 'body'> => ({ body });
const setHeader =
  (name: string, value: string): Change =>
  (request) => ({
    ...request,
    headers: [
      ...request.headers.filter(([known]) => known.toLowerCase() !== name.toLowerCase()),
      [name, value],
    ],
  });
const addHeader =
  (name: string, value: string): Change =>
  (request) => ({ ...request, headers: [...request.headers, [name, value]] });
const withoutHeader =
  (name: string): Change =>
  (request) => ({ ...request, headers: request.headers.filter(([known]) => known.toLowerCase() !== name) });

const TYPES = [
  'text/plain',
  'application/x-www-form-urlencoded',
  'multipart/form-data; boundary=x',
  'application/json; charset=klingon',
  'application/json; charset=utf-16',
  'application/json;',
  'application/problem+json',
  'json',
  '',
  ', , ,',
  'a'.repeat(3_000),
] as const;
const METHODS = [
  'PUT',
  'PATCH',
  'DELETE',
  'HEAD',
  'OPTIONS',
  'TRACE',
  'PROPFIND',
  'M-SEARCH',
  'GET',
  'POST',
  'get',
];
const HEADERS = [
  'x-footboard-staff',
  'x-footboard-device-clock',
  'cookie',
  'origin',
  'sec-fetch-site',
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'forwarded',
  'accept',
  'accept-encoding',
  'accept-language',
  'authorization',
  'content-encoding',
  'content-type',
  'if-none-match',
  'if-modified-since',
  'range',
  'referer',
  'x-http-method-override',
] as const;
const COOKIES = [
  'footboard-session',
  '__Host-footboard-session',
  'footboard-device',
  'footboard-signing',
  'footboard-sign-on',
];

const spoiled: fc.Arbitrary<[string, Change]> = fc
  .constantFrom(...Object.keys(SPOILED))
  .map((name) => [
    `body ${name}`,
    (request) => ({ ...request, ...json(SPOILED[name]!(String(request.body ?? '{}'))) }),
  ]);

const typed: fc.Arbitrary<[string, Change]> = fc.oneof(
  fc
    .constantFrom(...TYPES)
    .map((type): [string, Change] => [`type ${type.slice(0, 40)}`, setHeader('Content-Type', type)]),
  fc.constant<[string, Change]>(['no type', withoutHeader('content-type')]),
  fc.constant<[string, Change]>(['two types', addHeader('Content-Type', 'text/plain')]),
  fc
    .constantFrom('gzip', 'br', 'deflate', 'compress', 'gzip, gzip', 'identity')
    .map((coding): [string, Change] => [`coding ${coding}`, setHeader('Content-Encoding', coding)]),
);

const framed: fc.Arbitrary<[string, Change]> = fc
  .constantFrom('0', '1', '999999', '-1', '1e3', '99999999999999999999', '5, 5', 'x')
  .map((length) => [`length ${length}`, (request) => ({ ...request, length })]);

const chunked: fc.Arbitrary<[string, Change]> = fc
  .constantFrom('zz\r\nhello\r\n', '5\r\nhel', '0\r\n\r\nGET / HTTP/1.1\r\n\r\n', 'fffffffff\r\n', '')
  .map((body) => [
    'chunks that are none',
    (request) => ({ ...addHeader('Transfer-Encoding', 'chunked')(request), body, length: '3' }),
  ]);

const methods: fc.Arbitrary<[string, Change]> = fc
  .constantFrom(...METHODS)
  .map((method) => [`method ${method}`, (request) => ({ ...request, method })]);

const headed: fc.Arbitrary<[string, Change]> = fc.oneof(
  fc.tuple(fc.constantFrom(...HEADERS), word, fc.boolean()).map(([name, value, twice]): [string, Change] => [
    `header ${name}${twice ? ' twice' : ''}`,
    (request) => {
      const once = (twice ? addHeader : setHeader)(name, inHeader(value));
      return twice ? addHeader(name, inHeader(value))(once(request)) : once(request);
    },
  ]),
  fc
    .tuple(fc.constantFrom(...COOKIES), word)
    .map(([name, value]): [string, Change] => [
      `cookie ${name}`,
      setHeader('Cookie', `${name}=${inHeader(value)}; ${name}=; ${'x=y; '.repeat(50)}`),
    ]),
  fc.constant<[string, Change]>(['a very long header', setHeader('X-Long', 'a'.repeat(20_000))]),
  fc.constant<[string, Change]>([
    'very many headers',
    (request) =>
      Array.from({ length: 1_500 }).reduce<Request>((so, _, i) => addHeader(`X-${i}`, '1')(so), request),
  ]),
  fc.constant<[string, Change]>(['no host', withoutHeader('host')]),
  fc.constant<[string, Change]>(['two hosts', addHeader('Host', 'elsewhere.example')]),
  fc.constant<[string, Change]>(['a header that is none', addHeader('bad header', '\u{1}\u{2}')]),
);

const addressed: fc.Arbitrary<[string, Change]> = fc
  .tuple(fc.nat(9), word, fc.boolean())
  .map(([at, value, escaped]) => [
    'address',
    (request) => {
      const parts = request.path.split('/');
      const part = 1 + (at % (parts.length - 1));
      parts[part] = escaped ? percent(value) : inLine(value);
      return { ...request, path: parts.join('/') };
    },
  ]);

const asked = ({ asks }: Route): fc.Arbitrary<[string, Change]> =>
  fc
    .tuple(
      fc.constantFrom(
        ...Object.keys(asks ?? { at: '' }),
        '__proto__',
        'constructor[prototype][polluted]',
        '0',
      ),
      word,
      fc.constantFrom('=', '=1&', '[]=', '[a][b]=', '[__proto__][polluted]=', '[100000]=', ''),
      fc.boolean(),
    )
    .map(([name, value, join, escaped]) => {
      const said = escaped ? percent(value) : inLine(value);
      const part = join.endsWith('&') ? `${name}${join}${name}=${said}` : `${name}${join}${said}`;
      return [`query ${name}`, (request) => ({ ...request, path: `${request.path}?${part}` })];
    });

/** One request for this address, broken once or twice. */
function malformed(route: Route, voices: readonly string[]): fc.Arbitrary<Input> {
  const fits = bodyFor(route);
  const inBody = fc
    .tuple(fits, breaks)
    .map(([value, how]): [string, Change] => [
      'body',
      (request) => ({ ...request, ...json(textOf(broken(value, how))) }),
    ]);
  const elsewhere = [headed, addressed, methods, asked(route)];
  const change = route.body
    ? fc.oneof(
        { weight: 14, arbitrary: inBody },
        { weight: 2, arbitrary: spoiled },
        { weight: 2, arbitrary: typed },
        { weight: 1, arbitrary: framed },
        { weight: 1, arbitrary: chunked },
        ...elsewhere.map((arbitrary) => ({ weight: 1, arbitrary })),
      )
    : fc.oneof(...elsewhere, asked(route), spoiled, framed);
  return fc
    .tuple(fc.constantFrom(...voices), fits, fc.array(change, { minLength: 1, maxLength: 2 }))
    .map(([voice, value, changes]) => {
      const start: Request = {
        method: route.method.toUpperCase(),
        path: addressOf(route.path),
        headers: [['Host', HERE], ...(route.body ? [['Content-Type', 'application/json'] as const] : [])],
        body: route.body ? textOf(value) : null,
      };
      const request = changes.reduce((so, [, how]) => how(so), start);
      const what = `${route.name}: ${changes.map(([said]) => said).join(', ')}`;
      return {
        ...request,
        voice,
        what,
        unframed: /length |chunks|header|cookie|type|coding|host|method|address|query/.test(what),
      };
    });
}

const of = (routes: readonly Route[], voices: readonly string[]) =>
  fc.oneof(...routes.map((route) => malformed(route, voices)));

/** Malformed requests over every address; commands, of which there are most, count half. */
export const anyMalformed = (voices: readonly string[]): fc.Arbitrary<Input> =>
  fc.oneof(of(ROUTES, voices), of(commandRoutes, voices));
export const anyMalformedCommand = (voices: readonly string[]): fc.Arbitrary<Input> =>
  of(commandRoutes, voices);
