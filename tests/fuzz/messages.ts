/** Malformed socket messages: of every name there is and of none, made from their schemas, and bytes that are no message. */
import * as fc from 'fast-check';
import { WIRE_VERSION, SOCKET, joinRequest, painted } from '@footboard/shared/wire/messages';
import { wardId } from '@footboard/shared/kernel/ids';
import { broken, breaks, HOSTILE_WORDS, textOf } from './break-json.ts';
import { fitting } from './from-schema.ts';
import type { Named } from './from-schema.ts';

export interface Message {
  readonly voice: string;
  readonly event: string;
  readonly args: readonly unknown[];
  /** Whether an acknowledgement is asked for. */
  readonly asks: boolean;
}

const named: Named = (field) =>
  field === 'ward'
    ? fc.constantFrom('alder', 'alder', 'elsewhere')
    : field === 'wireVersion'
      ? fc.constantFrom(WIRE_VERSION, WIRE_VERSION, 0, WIRE_VERSION + 1)
      : undefined;

/** What JSON cannot say, and what is too long for one message (the limit is 64 KiB). */
const ODD: readonly unknown[] = [
  Buffer.from([0, 255, 1]),
  { ward: Buffer.from('alder') },
  [Buffer.alloc(3), { nested: Buffer.alloc(2) }],
  undefined,
  'x'.repeat(70_000),
  { _placeholder: true, num: 0 },
  { type: 5, nsp: '/' },
];
const SAID = [
  [SOCKET.join, joinRequest],
  [SOCKET.painted, painted],
  [SOCKET.leave, wardId],
] as const;
/** Names the server says, names of the library itself, and names of nothing. */
const OTHER = [
  SOCKET.patch,
  SOCKET.beat,
  SOCKET.out,
  'exception',
  'ping',
  'message',
  '__proto__',
  'constructor',
  '',
];

const withArgs = (args: fc.Arbitrary<readonly unknown[]>) =>
  fc.oneof(
    { weight: 6, arbitrary: args },
    { weight: 1, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.tuple(args, args).map(([a, b]) => [...a, ...b, null]) },
  );

export function anyMessage(voices: readonly string[]): fc.Arbitrary<Message> {
  const spoken = SAID.map(([event, schema]) => {
    const fits = fitting(schema, named);
    const arg = fc.oneof(
      { weight: 1, arbitrary: fits },
      { weight: 6, arbitrary: fc.tuple(fits, breaks).map(([value, how]) => plain(broken(value, how))) },
      { weight: 1, arbitrary: fc.constantFrom(...ODD) },
    );
    return fc.record({
      voice: fc.constantFrom(...voices),
      event: fc.constant<string>(event),
      args: withArgs(arg.map((one) => [one])),
      asks: fc.boolean(),
    });
  });
  const unspoken = fc.record({
    voice: fc.constantFrom(...voices),
    event: fc.oneof(fc.constantFrom(...OTHER), fc.constantFrom(...HOSTILE_WORDS)),
    args: withArgs(fc.oneof(fc.jsonValue({ maxDepth: 2 }), fc.constantFrom(...ODD)).map((one) => [one])),
    asks: fc.boolean(),
  });
  return fc.oneof({ weight: 4, arbitrary: spoken[0]! }, ...spoken.slice(1), unspoken);
}

/** Deeper than this the client's own code gives up; the raw packets go deeper. */
const TOO_DEEP = /[[{]{200}|("a":\{){200}|("data":\{){200}/;

/** As it would travel: what no client can send, or is no JSON at all, is left to the raw packets. */
function plain(value: unknown): unknown {
  const text = textOf(value);
  try {
    return TOO_DEEP.test(text) ? text.slice(0, 1_000) : JSON.parse(text);
  } catch {
    return text;
  }
}

/** Packets as engine.io and socket.io write them (protocol 4 and 5), and what is none. */
const PACKETS: readonly string[] = [
  '',
  '4',
  '40',
  '41',
  '42',
  '42{}',
  '42[]',
  '42[1]',
  '42[null,1]',
  '42["join"',
  '42["join",]',
  '42["join",{"ward":"alder"}]',
  '4299999999999999999999["join",{}]',
  '42-1["join",{}]',
  '42/other,["join",{}]',
  '40/other,{}',
  '40{"token":"x"}',
  '40[',
  '43["never asked"]',
  '430["never asked"]',
  '44{"message":"x"}',
  '451-["join",{"_placeholder":true,"num":0}]',
  '45999999-["join",{"_placeholder":true,"num":0}]',
  '451-["join",{"_placeholder":true,"num":7}]\x1ebAAAA',
  '45-["join"]',
  'bAAAA',
  'b!!!!',
  '2',
  '2probe',
  '3',
  '5',
  '6',
  '7',
  '9',
  '0{}',
  '1',
  'x'.repeat(70_000),
  `42["join",${'['.repeat(20_000)}${']'.repeat(20_000)}]`,
  `42${JSON.stringify(['join', { __proto__: null, constructor: { prototype: { polluted: true } } }])}`,
  '42["__proto__",{"polluted":true}]',
  '42["disconnect"]',
  '42["connect"]',
  '42["error"]',
  Array.from({ length: 3_000 }, () => '2').join('\x1e'),
  '\x1e\x1e\x1e',
];
export const anyPackets: fc.Arbitrary<readonly string[]> = fc.array(
  fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...PACKETS) },
    { weight: 1, arbitrary: fc.string({ maxLength: 40 }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(...HOSTILE_WORDS).map((said) => `42["join",${JSON.stringify(said)}]`),
    },
  ),
  { minLength: 1, maxLength: 4 },
);
