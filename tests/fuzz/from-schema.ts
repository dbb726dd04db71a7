/** Values that fit a zod schema, made at random from its JSON Schema: what the fuzzer then breaks. */
import * as fc from 'fast-check';
import { z } from 'zod';

interface JsonSchema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | JsonSchema;
  readonly items?: JsonSchema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, JsonSchema>>;
}

/** What a field of this name should hold, so that a made value gets as far as the rules; or undefined. */
export type Named = (field: string) => fc.Arbitrary<unknown> | undefined;

export function fitting(schema: z.ZodType, named: Named): fc.Arbitrary<unknown> {
  const root = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as JsonSchema;
  return ofSchema(root, root.$defs ?? {}, named);
}

function ofSchema(schema: JsonSchema, defs: Readonly<Record<string, JsonSchema>>, named: Named) {
  const build = (node: JsonSchema, depth: number): fc.Arbitrary<unknown> => {
    if (node.$ref !== undefined) {
      const inner = defs[node.$ref.replace('#/$defs/', '')];
      // Only z.json() is recursive: any JSON does.
      return inner && depth < 4 ? build(inner, depth + 1) : fc.jsonValue({ maxDepth: 2 });
    }
    if ('const' in node) return fc.constant(node.const);
    if (node.enum) return fc.constantFrom(...node.enum);
    const options = node.anyOf ?? node.oneOf;
    if (options) return fc.oneof(...options.map((option) => build(option, depth + 1)));
    switch (node.type) {
      case 'object':
        return objectOf(node, depth);
      case 'array':
        return fc.array(build(node.items ?? {}, depth + 1), {
          minLength: node.minItems ?? 0,
          maxLength: Math.min(node.maxItems ?? 3, Math.max(3, node.minItems ?? 0)),
        });
      case 'string':
        return textOf(node);
      case 'integer':
        return fc.integer({
          min: Math.max(node.minimum ?? 0, -1_000_000),
          max: Math.min(node.maximum ?? 1_000, 1_000_000),
        });
      case 'number':
        return fc.double({ min: node.minimum ?? 0, max: node.maximum ?? 1_000, noNaN: true });
      case 'boolean':
        return fc.boolean();
      case 'null':
        return fc.constant(null);
      default:
        return fc.jsonValue({ maxDepth: 2 });
    }
  };
  const objectOf = (node: JsonSchema, depth: number): fc.Arbitrary<unknown> => {
    const fields = Object.entries(node.properties ?? {});
    if (fields.length === 0) return fc.dictionary(fc.string({ maxLength: 8 }), fc.jsonValue({ maxDepth: 1 }));
    const arbitraries = Object.fromEntries(
      fields.map(([name, field]) => [name, named(name) ?? build(field, depth + 1)]),
    );
    return fc.record(arbitraries, { requiredKeys: [...(node.required ?? [])] });
  };
  return build(schema, 0);
}

function textOf({ pattern, minLength = 0, maxLength = 40 }: JsonSchema): fc.Arbitrary<string> {
  if (pattern?.includes('T\\d{2}')) {
    // Instants around the day the fuzzed ward lives in; whole minutes do.
    return fc
      .integer({ min: -3_000, max: 200 })
      .map((minutes) => new Date(Date.parse('2026-11-25T10:00:00Z') + minutes * 60_000).toISOString())
      .map((iso) => (pattern.endsWith('Z$') ? iso : iso.slice(0, 16)));
  }
  // What must not be there is left to the breaking.
  const plain = pattern?.replaceAll(/\(\?[=!][^)]*\)/g, '');
  if (plain !== undefined) return fc.stringMatching(new RegExp(plain));
  return fc.string({ minLength, maxLength: Math.min(maxLength, minLength + 40), unit: 'binary' });
}
