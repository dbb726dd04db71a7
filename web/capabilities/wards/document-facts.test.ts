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
  it('says what is on or off, a list, and a trigger without a time in words', () => {
    const lines = limitLines(DEFAULT_RULES);
    const value = (group: string, name: string) =>
      lines.find((line) => line.group === group && line.name === name)?.value;
    expect(value('early warning', 'on')).toBe('no');
    expect(value('early warning', 'any three')).toBe('yes');
    expect(value('critical care', 'on')).toBe('no');
    expect(value('stop', 'saturation below')).toBe(String(DEFAULT_RULES.stop.saturationBelow.value));
    expect(value('signs', 'refusals in row')).toBe(String(DEFAULT_RULES.signs.refusalsInRow.value));
    expect(value('roster', 'shifts from')).toBe('07:00, 19:00');
    expect(value('validity, triggers', 'fall')).toBe('1');
    expect(value('validity, triggers', 'return from surgery')).toBe('no time: before the next move');
    expect(lines.map((line) => line.value).join()).not.toMatch(/undefined|null|\[object/);
  });
  it('names no two limits alike', () => {
    const names = limitLines(DEFAULT_RULES).map((line) => `${line.group}: ${line.name}`);
    expect(new Set(names).size).toBe(names.length);
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
  it('the protocol says what it leaves out, and the default leaves out nothing', () => {
    const leavesOut = (protocol: typeof DEFAULT_PROTOCOL) =>
      protocolFacts(protocol).find(([about]) => about === 'Leaves out')?.[1];
    expect(leavesOut(DEFAULT_PROTOCOL)).toBeUndefined();
    const noWalk = { ...DEFAULT_PROTOCOL, stages: DEFAULT_PROTOCOL.stages.slice(0, 5) };
    expect(leavesOut(noWalk)).toBe('no stage shows "walk": nobody is cleared to walk');
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
    after.roster.shiftsFrom.value = ['07:00', '15:00', '23:00'];
    after.validity.triggers.sedation.value = 2;
    expect(differences(DEFAULT_RULES, after).slice(2)).toEqual([
      '/validity/triggers/sedation/value: null, then 2',
      '/roster/shiftsFrom/value/1: "19:00", then "15:00"',
      '/roster/shiftsFrom/value/2: nothing, then "23:00"',
    ]);
    expect(differences({ a: [1] }, { a: [1, 2] })).toEqual(['/a/1: nothing, then 2']);
  });
});
