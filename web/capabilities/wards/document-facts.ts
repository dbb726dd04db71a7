/** What a reader must know of a document before signing or publishing it, in words. */
import { protocolWarnings, type Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { rulesDocument, type RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { faultsOfRules } from '@footboard/shared/capabilities/wards/rules/rules-faults';
import { told } from '../../i18n/told.ts';
import { say } from './words.ts';

export interface LimitLine {
  /** "start", "rising": where it belongs. */
  readonly group: string;
  readonly name: string;
  readonly value: string;
  readonly source: string;
  readonly owner: string;
  readonly reviewBy: string;
}

const plainWords = (name: string) =>
  name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll('-', ' ');

/** A value as a reader says it. Only a trigger's time may be empty: it then asks before the next move and no sooner. */
function valueWords(value: unknown): string {
  if (value === null) return say('no-time-before-the-next-move');
  if (typeof value === 'boolean') return value ? say('yes') : say('no');
  return Array.isArray(value) ? value.join(', ') : String(value);
}

type Limit = { value: unknown } & Pick<LimitLine, 'source' | 'owner' | 'reviewBy'>;
const isLimit = (entry: object): entry is Limit => 'value' in entry && 'source' in entry;

/** Every limit of the rules, one a line, groups within groups too. Units are part of its name. */
export function limitLines(rules: RulesDocument): readonly LimitLine[] {
  const { version: _version, ...groups } = rules;
  const linesOf = (group: string, entries: object): LimitLine[] =>
    Object.entries(entries as Record<string, object>).flatMap(([name, entry]) =>
      isLimit(entry)
        ? [
            {
              group,
              name: plainWords(name),
              value: valueWords(entry.value),
              source: entry.source,
              owner: entry.owner,
              reviewBy: entry.reviewBy,
            },
          ]
        : linesOf(`${group}, ${plainWords(name)}`, entry),
    );
  return Object.entries(groups).flatMap(([group, entries]) => linesOf(plainWords(group), entries));
}

export type Fact = readonly [about: string, says: string];

const distinct = (all: readonly string[]) => [...new Set(all)];

export function rulesFacts(rules: RulesDocument): readonly Fact[] {
  const lines = limitLines(rules);
  const unsourced = lines.filter((line) => line.source.includes('no source')).length;
  return [
    [say('version-2'), String(rules.version)],
    [say('limits'), say('of-which-are-common-practice-without', { n: lines.length, unsourced })],
    [say('source'), say('each-limit-names-its-own')],
    [say('owner'), distinct(lines.map((line) => told(line.owner))).join('; ')],
    [say('review-by'), lines.map((line) => line.reviewBy).toSorted()[0] ?? ''],
  ];
}

export function protocolFacts(protocol: Protocol): readonly Fact[] {
  const parts = protocol.stages.reduce((sum, stage) => sum + stage.parts.length, 0);
  const leavesOut = protocolWarnings(protocol).map((warning) => warning.reason);
  return [
    [say('name'), told(protocol.name)],
    [say('version-2'), say('version', { id: protocol.id, version: protocol.version })],
    [
      say('stages'),
      `${protocol.stages.map((stage) => (stage.word === null ? say('no-tier-of-its-own', { id: stage.id }) : told(stage.word))).join(', ')}; ${say('parts-in-all', { n: parts })}`,
    ],
    ...(leavesOut.length > 0 ? [[say('leaves-out'), leavesOut.join('; ')] as const] : []),
    [say('source'), told(protocol.source)],
    [say('owner'), told(protocol.owner)],
    [say('review-by'), protocol.reviewBy],
  ];
}

export interface Fault {
  readonly place: string;
  readonly reason: string;
}

/** The text of a document as JSON, or where and why it is not. */
export function readJson(text: string): { json: unknown } | { faults: readonly Fault[] } {
  try {
    return { json: JSON.parse(text) };
  } catch (error) {
    return {
      faults: [{ place: say('the-text'), reason: say('not-json', { message: (error as Error).message }) }],
    };
  }
}

/** The same answer as for a protocol: the document, or each place with its reason. */
export function checkRules(document: unknown): { ok: RulesDocument } | { faults: readonly Fault[] } {
  const parsed = rulesDocument.safeParse(document);
  if (parsed.success) {
    const faults = faultsOfRules(parsed.data);
    return faults.length > 0 ? { faults } : { ok: parsed.data };
  }
  return {
    faults: parsed.error.issues.map((issue) => ({
      place: `/${issue.path.map(String).join('/')}`,
      reason: issue.message,
    })),
  };
}

const said = (value: unknown) => (value === undefined ? say('nothing') : JSON.stringify(value));
const isTree = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** Each place at which two documents say different things, with both. */
export function differences(before: unknown, after: unknown): readonly string[] {
  const compare = (a: unknown, b: unknown, place: string): string[] => {
    if (isTree(a) && isTree(b) && Array.isArray(a) === Array.isArray(b)) {
      const keys = distinct([...Object.keys(a), ...Object.keys(b)]);
      return keys.flatMap((key) => compare(a[key], b[key], `${place}/${key}`));
    }
    return Object.is(a, b) ? [] : [say('then-said2', { place, said: said(a), said2: said(b) })];
  };
  return compare(before, after, '');
}
