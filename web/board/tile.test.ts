import { describe, expect, it } from 'vitest';
import { HOUR, NOON, bedRow, holdRow, planFor, stayRow } from './rows.testkit.ts';
import { tileSays, type TileContext } from './tile.ts';

const by = (over: Partial<TileContext> = {}): TileContext => ({
  zone: 'Europe/Lisbon',
  night: false,
  now: NOON,
  old: false,
  ...over,
});
const lift = { people: 'two', aid: 'sling-lift' } as const;

describe('first rank: people and equipment', () => {
  it('SCREEN-1 by day leads with bed to chair', () => {
    expect(tileSays(bedRow('A1'), by()).first).toEqual(['1 person', 'frame']);
  });
  it('SCREEN-1 at night leads with the toilet of the night plan', () => {
    expect(tileSays(bedRow('A1'), by({ night: true })).first).toEqual(['2 people', 'frame']);
  });
  it('names the second equipment beside the first', () => {
    const plan = planFor('bed-chair', { people: 'two', aid: 'standing-aid', with: ['slide sheet'] });
    const says = tileSays(bedRow('A1', stayRow({ plan: { day: [plan], night: [] } })), by());
    expect(says.first).toEqual(['2 people', 'standing aid + slide sheet']);
  });
});

describe('what a wall may not say', () => {
  it('given a row that says nothing, reads ASK AT THE BEDSIDE as a stop, and nothing else', () => {
    const row = bedRow('A1', stayRow({ shown: 'ask-at-the-bedside', plan: null, checkBeforeMoving: true }));
    expect(tileSays(row, by())).toEqual({
      kind: 'stop',
      first: ['ASK AT THE BEDSIDE'],
      held: [],
      wait: '',
      beside: '',
      trust: null,
      lastUp: '',
      today: '',
      due: { words: '', needs: false },
      also: '',
      sign: '',
    });
  });
  it('given a row for visitors, keeps people, aid and holds, and says nothing of what was left out', () => {
    const row = bedRow(
      'A1',
      stayRow({ shown: 'visitors', lastUp: null, holds: [holdRow({ scope: 'walking' })] }),
    );
    expect(tileSays(row, by())).toMatchObject({
      first: ['1 person', 'frame'],
      held: ['HOLD: no walking'],
      trust: null,
      lastUp: '',
      today: '',
      due: { words: '' },
    });
  });
});

describe('what stops', () => {
  it('SCREEN-2 given a hold on the leading task, says HOLD and its scope first, the plan only if it cannot wait', () => {
    const plan = planFor('bed-chair', { ...lift, hold: true });
    const says = tileSays(
      bedRow('A1', stayRow({ holds: [holdRow()], plan: { day: [plan], night: [] } })),
      by(),
    );
    expect(says.kind).toBe('stop');
    expect(says.first).toEqual(['HOLD', 'stay in bed']);
    expect(says.wait).toBe('2 people, sling lift');
  });
  it('given a hold whose review time has passed, reads HOLD REVIEW DUE and still stops', () => {
    const plan = planFor('bed-chair', { ...lift, hold: true });
    const stay = stayRow({ holds: [holdRow({ reviewDue: true })], plan: { day: [plan], night: [] } });
    expect(tileSays(bedRow('A1', stay), by()).first[0]).toBe('HOLD REVIEW DUE');
  });
  it('given a hold that leaves the leading task alone, keeps the plan and names the hold', () => {
    const says = tileSays(bedRow('A1', stayRow({ holds: [holdRow({ scope: 'walking' })] })), by());
    expect(says.kind).toBe('plan');
    expect(says.first).toEqual(['1 person', 'frame']);
    expect(says.held).toEqual(['HOLD: no walking']);
  });
  it('SCREEN-2 given that the review of such a hold is due, says so in the same place', () => {
    const says = tileSays(
      bedRow('A1', stayRow({ holds: [holdRow({ scope: 'walking', reviewDue: true })] })),
      by(),
    );
    expect(says.held).toEqual(['HOLD REVIEW DUE: no walking']);
  });
  it('given two holds of which neither says the other, names both scopes', () => {
    const holds = [
      holdRow({ scope: 'walking' }),
      holdRow({ hold: 'h2', scope: 'standing' }),
      holdRow({ hold: 'h3', scope: 'raising-the-back' }),
    ];
    expect(tileSays(bedRow('A1', stayRow({ holds })), by()).held).toEqual([
      'HOLD: keep the back flat, no standing',
    ]);
  });
  it('given a hold on somebody not known, says both', () => {
    const stay = stayRow({ checkBeforeMoving: true, holds: [holdRow({ scope: 'walking' })] });
    expect(tileSays(bedRow('A1', stay), by())).toMatchObject({
      first: ['CHECK BEFORE MOVING'],
      held: ['HOLD: no walking'],
      wait: '1 person, frame',
    });
  });
  it('SCREEN-2 given a person not known, says CHECK BEFORE MOVING before any plan', () => {
    const stay = stayRow({
      checkBeforeMoving: true,
      trust: { ...stayRow().trust, state: 'not-known' },
      plan: { day: [planFor('bed-chair', lift)], night: [] },
    });
    const says = tileSays(bedRow('A1', stay), by());
    expect(says.first).toEqual(['CHECK BEFORE MOVING']);
    expect(says.wait).toBe('2 people, sling lift');
  });
  it('given no plan at all on a staged stay, never shows a blank: CHECK BEFORE MOVING', () => {
    expect(tileSays(bedRow('A1', stayRow({ plan: null })), by()).first).toEqual(['CHECK BEFORE MOVING']);
  });
});

describe('a gap is not a zero', () => {
  const today = stayRow().today;
  it('SCREEN-3 says not recorded where nothing was recorded, whatever the count holds', () => {
    const says = tileSays(bedRow('A1', stayRow({ today: { ...today, recorded: false, timesUp: 0 } })), by());
    expect(says.today).toBe('not recorded');
    expect(JSON.stringify(says)).not.toMatch(/0 of 3/);
  });
  it('says 0 of 3 where it was recorded that nobody got up', () => {
    const says = tileSays(bedRow('A1', stayRow({ today: { ...today, timesUp: 0 } })), by());
    expect(says.today).toBe('0 of 3');
  });
  it('says not up yet, never an age, where no session is known', () => {
    expect(tileSays(bedRow('A1', stayRow({ lastUp: null })), by()).lastUp).toBe('not up yet');
  });
});

describe('ages', () => {
  it('counts last up from the server’s clock', () => {
    expect(tileSays(bedRow('A1'), by({ now: NOON + HOUR })).lastUp).toBe('up 3 h ago');
  });
  it('under last known shows the time it was, because no age is known', () => {
    expect(tileSays(bedRow('A1'), by({ old: true })).lastUp).toBe('up 10:00');
  });
});

describe('other plans and states', () => {
  it('an empty bed says so and nothing else', () => {
    const says = tileSays(bedRow('A1', null), by());
    expect(says).toMatchObject({ kind: 'empty', first: ['Empty'], today: '', lastUp: '', trust: null });
  });
  it('away says where and when back', () => {
    const away = { since: NOON - HOUR, reason: 'theatre', dueBack: NOON + HOUR };
    const says = tileSays(bedRow('A1', stayRow({ away })), by());
    expect(says).toMatchObject({ kind: 'away', first: ['Away, theatre'], beside: 'back 13:00', held: [] });
  });
  it('SCREEN-2 away with a hold, or not known, says so before the person is back', () => {
    const away = { since: NOON - HOUR, reason: 'theatre', dueBack: null };
    const held = stayRow({ away, holds: [holdRow()] });
    expect(tileSays(bedRow('A1', held), by()).held).toEqual(['HOLD: stay in bed']);
    const unknown = stayRow({ away, checkBeforeMoving: true });
    expect(tileSays(bedRow('A1', unknown), by()).held).toEqual(['CHECK BEFORE MOVING']);
    const plan = planFor('bed-chair', { ...lift, hold: true });
    const joined = stayRow({ away, plan: { day: [plan], night: [plan] } });
    expect(tileSays(bedRow('A1', joined), by()).held).toEqual(['HOLD: do not move, ask']);
  });
  it('a comfort plan has no goal and no trust on the wall', () => {
    const stay = stayRow({ scope: { kind: 'comfort', fence: null, plan: null }, plan: null });
    expect(tileSays(bedRow('A1', stay), by())).toMatchObject({
      first: ['Comfort plan'],
      today: '',
      trust: null,
    });
  });
  it('a clinician’s plan sends to the bedside', () => {
    const stay = stayRow({
      scope: { kind: 'clinicians-plan', fence: 'traction', plan: { ref: 't1' } },
      plan: null,
    });
    const says = tileSays(bedRow('A1', stay), by());
    expect(says.first.join(' ')).toBe("Clinician's plan only");
    expect(JSON.stringify(says)).not.toContain('traction');
  });
});

describe('where a stay is going', () => {
  const sign = (kind: 'stages-lost' | 'refusals' | 'below-baseline' | 'ready') => ({
    kind,
    words: `long words of ${kind}`,
    because: [],
  });

  it('is a few quiet words of the first sign, never the sentence', () => {
    const says = tileSays(bedRow('A1', stayRow({ signs: [sign('below-baseline'), sign('ready')] })), by());
    expect(says.sign).toBe('below usual');
    expect(JSON.stringify(says)).not.toContain('long words');
  });
  it('never says on a wall that somebody said no', () => {
    const says = (signs: ReturnType<typeof sign>[]) => tileSays(bedRow('A1', stayRow({ signs })), by()).sign;
    expect(says([sign('refusals')])).toBe('');
    expect(says([sign('refusals'), sign('stages-lost')])).toBe('losing ground');
  });
  it('gives way to what stops', () => {
    const signs = [sign('ready')];
    expect(tileSays(bedRow('A1', stayRow({ signs })), by()).sign).toBe('ready for more');
    expect(tileSays(bedRow('A1', stayRow({ signs, checkBeforeMoving: true })), by()).sign).toBe('');
    const holds = [holdRow({ scope: 'walking' })];
    expect(tileSays(bedRow('A1', stayRow({ signs, holds })), by()).sign).toBe('');
    const away = { since: NOON - HOUR, reason: 'test', dueBack: null };
    expect(tileSays(bedRow('A1', stayRow({ signs, away })), by()).sign).toBe('');
  });
});
