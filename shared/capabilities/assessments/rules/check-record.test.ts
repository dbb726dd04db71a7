import { describe, expect, it } from 'vitest';
import type { DataOf } from '../../../kernel/command-type.ts';
import { recordAssessment } from '../commands.ts';
import type { Finding, Reading, StageRecord } from '../values.ts';
import { allMet, hours, notMet, record, type StageSays, upTo } from './assessment.testkit.ts';
import { checkAssessment } from './check-record.ts';
import { DEFAULT_PROTOCOL } from './protocol.ts';

type Data = DataOf<typeof recordAssessment>;
const at = new Date(hours(0)).toISOString();
const data = (stages: Record<string, StageSays> | StageRecord[], extra: Partial<Data> = {}): Data =>
  recordAssessment.data.parse({
    stay: 's1',
    protocol: { id: 'footboard-default', version: 1 },
    depth: 'full',
    stages: Array.isArray(stages) ? stages : Object.entries(stages).map(([s, says]) => record(s, 0, says)),
    ...extra,
  });
const check = (...args: Parameters<typeof data>) => checkAssessment(DEFAULT_PROTOCOL, data(...args));
const without = (stage: string, part: string, side?: string): Finding[] =>
  allMet(stage).filter((f) => !(f.part === part && f.side === side));
const pressure = (posture: 'lying' | 'standing', minute: number): Reading => ({
  kind: 'pressure',
  posture,
  minute,
  systolic: 120,
  diastolic: 70,
  at,
});

const met = (stage: string, says: StageSays = {}) => record(stage, 0, says);
const swap = (list: Finding[], finding: Finding): Finding[] =>
  list.map((f) => (f.part === finding.part && f.side === finding.side ? finding : f));

describe('a record at the door', () => {
  it.each(['clear', 'upright', 'edge', 'stand', 'turn', 'walk'])('passes when whole up to %s', (last) => {
    expect(check(upTo(last))).toBeNull();
  });
  it('passes when it stops where a part was not met', () => {
    expect(check(upTo('stand', { stand: notMet('leg-bears/left') }))).toBeNull();
  });
  it('passes when stages carry no findings at all', () => {
    expect(
      check(upTo('edge', { clear: { findings: [] }, upright: { findings: [] }, edge: { findings: [] } })),
    ).toBeNull();
  });

  it.each<[string, string, Record<string, StageSays> | StageRecord[], Partial<Data>?]>([
    ['protocol-unknown', '/protocol', upTo('clear'), { protocol: { id: 'footboard-default', version: 9 } }],
    ['stage-unknown', '/stages/1/stage', [met('clear'), { ...met('edge'), stage: 'hop' }]],
    ['stage-out-of-order', '/stages/1/stage', [met('clear'), met('edge')]],
    ['stage-out-of-order', '/stages/0/stage', [met('upright')]],
    ['stage-out-of-order', '/stages/1/stage', [met('clear'), met('clear')]],
    [
      'stage-after-not-met',
      '/stages/2/outcome',
      [met('clear'), met('upright', notMet('back-raised')), met('edge')],
    ],
    ['stage-time-backwards', '/stages/1/at', [record('clear', 1), record('upright', 0)]],
    [
      'part-unknown',
      '/stages/0/findings/0/part',
      upTo('clear', { clear: { findings: [{ part: 'hums', result: 'met' }] } }),
    ],
    [
      'side-missing',
      '/stages/1/findings/0/side',
      upTo('upright', { upright: { findings: [{ part: 'grip', result: 'met' }] } }),
    ],
    [
      'side-does-not-fit',
      '/stages/0/findings/0/side',
      upTo('clear', { clear: { findings: [{ part: 'wakes-to-voice', side: 'left', result: 'met' }] } }),
    ],
    [
      'finding-twice',
      '/stages/0/findings/6',
      upTo('clear', { clear: { findings: [...allMet('clear'), allMet('clear')[0]!] } }),
    ],
    [
      'reason-does-not-fit',
      '/stages/0/findings/0/reason',
      upTo('clear', {
        clear: {
          outcome: 'not-met',
          findings: [{ part: 'orders-allow', result: 'not-tested', reason: 'cast' }],
        },
      }),
    ],
    [
      'finding-missing',
      '/stages/2/findings',
      upTo('edge', { edge: { findings: without('edge', 'looks-behind', 'right') } }),
    ],
    [
      'met-against-finding',
      '/stages/2/outcome',
      upTo('edge', {
        edge: { findings: swap(allMet('edge'), { part: 'sits-hands-free', result: 'not-met' }) },
      }),
    ],
    [
      'met-against-finding',
      '/stages/2/outcome',
      upTo('edge', {
        edge: {
          findings: swap(allMet('edge'), { part: 'sits-hands-free', result: 'not-tested', reason: 'pain' }),
        },
      }),
    ],
    [
      'secured-with-does-not-fit',
      '/stages/2/securedWith',
      upTo('edge', { edge: { how: 'secured', securedWith: 'raised-bed' } }),
    ],
    ['one-leg-does-not-fit', '/stages/2/oneLeg', upTo('edge', { edge: { oneLeg: 'left' } })],
    [
      'one-leg-needs-arms',
      '/stages/3/oneLeg',
      upTo('stand', {
        upright: { findings: without('upright', 'arm-pushes', 'left') },
        stand: { oneLeg: 'left' },
      }),
    ],
    ['met-with-symptoms', '/stages/3/outcome', upTo('stand'), { risingSymptoms: ['dizzy'] }],
    [
      'pressure-set-incomplete',
      '/readings',
      upTo('stand'),
      {
        depth: 'full-with-pressure',
        risingSymptoms: [],
        readings: [pressure('lying', 5), pressure('standing', 1)],
      },
    ],
    [
      'symptoms-not-asked',
      '/risingSymptoms',
      upTo('stand'),
      {
        depth: 'full-with-pressure',
        readings: [pressure('lying', 5), pressure('standing', 1), pressure('standing', 3)],
      },
    ],
  ])('refuses %s at %s with a remedy', (refused, field, stages, extra) => {
    const refusal = check(stages, extra);
    expect(refusal).toMatchObject({ refused, field });
    expect(refusal?.remedy.length).toBeGreaterThan(10);
  });

  it('names the readings that are missing', () => {
    const refusal = check(upTo('stand'), {
      depth: 'full-with-pressure',
      risingSymptoms: [],
      readings: [pressure('standing', 1)],
    });
    expect(refusal?.detail).toContain('lying, standing 3 min');
  });
  it('takes a pressure set that stopped when Stand was not met', () => {
    expect(
      check(upTo('stand', { stand: notMet('rises') }), {
        depth: 'full-with-pressure',
        risingSymptoms: ['dizzy'],
        readings: [pressure('lying', 5), pressure('standing', 1)],
      }),
    ).toBeNull();
  });
  it('takes one leg with both arms pushing, the other leg not bearing', () => {
    const findings = allMet('stand').map((f): Finding =>
      f.side === 'right' ? { ...f, result: 'not-applicable', reason: 'cast' } : f,
    );
    expect(check(upTo('stand', { stand: { oneLeg: 'left', findings } }))).toBeNull();
  });
  // The one-leg route needs both arms (design, "tier"), also where the other leg does not apply.
  it.each<[string, StageSays, string | null]>([
    ['both push', {}, null],
    [
      'one was not met',
      { findings: swap(allMet('upright'), { part: 'arm-pushes', side: 'right', result: 'not-met' }) },
      'one-leg-needs-arms',
    ],
    ['one has no finding', { findings: without('upright', 'arm-pushes', 'right') }, 'one-leg-needs-arms'],
    ['nothing was written down there', { findings: [] }, null],
    ['that stage was left out of this check', { outcome: 'not-tested', reason: 'other', findings: [] }, null],
  ])('one leg because of a cast: %s', (_, upright, refused) => {
    const findings = swap(allMet('stand'), {
      part: 'leg-bears',
      side: 'right',
      result: 'not-applicable',
      reason: 'cast',
    });
    expect(check(upTo('stand', { upright, stand: { findings } }))?.refused ?? null).toBe(refused);
  });
  it.each<[string, StageSays, string | null]>([
    ['neither leg applies', {}, 'met-against-finding'],
    ['the one said to bear does not apply', { oneLeg: 'left' }, 'met-against-finding'],
    ['not met: that agrees', { outcome: 'not-met' }, null],
  ])('standing on no leg: %s', (_, says, refused) => {
    const none = allMet('stand').map((f): Finding =>
      f.side ? { ...f, result: 'not-applicable', reason: 'cast' } : f,
    );
    const refusal = check(upTo('stand', { stand: { findings: none, ...says } }));
    expect(refusal?.refused ?? null).toBe(refused);
    expect(refusal?.field ?? null).toBe(refused && '/stages/3/outcome');
    expect(refusal?.detail ?? 'applies to no leg').toContain('applies to no leg');
  });
  it('takes one heel that does not hold', () => {
    const upright = {
      findings: swap(allMet('upright'), { part: 'heel-held', side: 'left', result: 'not-met' }),
    };
    expect(check(upTo('upright', { upright }))).toBeNull();
  });
});
