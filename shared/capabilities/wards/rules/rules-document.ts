/** The ward's rules: their shape, the defaults, and how a document that a ward published is read. */
import { DEFAULT_RULES } from './default-rules.ts';
import { rulesDocument, type RulesDocument } from './rules-schema.ts';

export { DEFAULT_RULES, rulesDocument, type RulesDocument };

type Group = Record<string, unknown>;
const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isLimit = (value: Group): boolean => 'value' in value && 'source' in value;

/**
 * A document with the limits that it does not have taken from the defaults, so that one published
 * before a limit existed goes on counting. A limit that is there is never touched.
 */
export function completed(document: unknown): unknown {
  if (!isGroup(document)) return document;
  return fill(document, DEFAULT_RULES as unknown as Group);
}

function fill(given: Group, defaults: Group): Group {
  const out: Group = { ...given };
  for (const [key, value] of Object.entries(defaults)) {
    const own = given[key];
    if (own === undefined) out[key] = value;
    else if (isGroup(own) && isGroup(value) && !isLimit(value)) out[key] = fill(own, value);
  }
  return out;
}
