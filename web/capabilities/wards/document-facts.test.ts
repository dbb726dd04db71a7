import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/protocol';
import {
  checkRules,
  differences,
  limitLines,
  protocolFacts,
  readJson,
  rulesFacts,
} from './document-facts.ts';

describe('what a reader sees of the documents in force', () => {
  it('every limit of the rules has its value, source, owner and review day', () => {
    const lines = limitLines(DEFAULT_RULES);
    expect(lines).toContainEqual({
      group: 'start',
      name: 'systolic below',
      value: '90',
      source: DEFAULT_RULES.start.systolicBelow.source,
      owner: DEFAULT_RULES.start.systolicBelow.owner,
      reviewBy: DEFAULT_RULES.start.systolicBelow.reviewBy,
    });
    expect(lines.find((line) => line.name === 'lone carer with belt')?.value).toBe('no');
    expect(lines.every((line) => line.source && line.owner && /^\d{4}-\d\d-\d\d$/.test(line.reviewBy))).toBe(
      true,
    );
    expect(lines).toHaveLength((JSON.stringify(DEFAULT_RULES).match(/"reviewBy"/g) ?? []).length);
  });
  it('the review day is the earliest of all', () => {
    const early = structuredClone(DEFAULT_RULES);
    early.activity.notUpHours.reviewBy = '2026-12-01';
    expect(rulesFacts(early)).toContainEqual(['Review by', '2026-12-01']);
  });
  it('names the stages of a protocol in order', () => {
    const stages = protocolFacts(DEFAULT_PROTOCOL).find(([about]) => about === 'Stages')?.[1];
    expect(stages).toMatch(/Upright, Edge, Stand, Turn, Walk/);
  });
});

describe('a document before it is published', () => {
  it('that is not JSON says so', () => {
    expect(readJson('{"a": ')).toMatchObject({ faults: [{ place: 'the text' }] });
  });
  it('names every place and reason', () => {
    const { rising: _rising, ...rest } = structuredClone(DEFAULT_RULES);
    const faulty = { ...rest, version: 0 };
    const checked = checkRules(faulty);
    expect('faults' in checked && checked.faults.map((fault) => fault.place)).toEqual([
      '/version',
      '/rising',
    ]);
  });
  it('shows each place at which it differs, with both values', () => {
    const after = structuredClone(DEFAULT_RULES);
    after.version = 2;
    after.start.systolicBelow.value = 95;
    expect(differences(DEFAULT_RULES, after)).toEqual([
      '/version: 1, then 2',
      '/start/systolicBelow/value: 90, then 95',
    ]);
    expect(differences({ a: [1] }, { a: [1, 2] })).toEqual(['/a/1: nothing, then 2']);
  });
});
