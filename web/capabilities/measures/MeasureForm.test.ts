import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import type { TierView } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { recordWalkingMeasure } from '@footboard/shared/capabilities/measures/commands';
import { MEASURES_STANDING_LINE } from '@footboard/shared/capabilities/measures/rules/judge-measure';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/default-rules';
import { holdRow, NOON, stayRow } from '../../board/rows.testkit.ts';
import { bench, type Bench } from '../entry/entry.testkit.ts';
import MeasureForm from './MeasureForm.vue';
import { clearedBy } from './measure-draft.ts';

const documents = { protocol: DEFAULT_PROTOCOL, rules: DEFAULT_RULES, read: true };
const protocol = { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version };
const tier = (word: string | null): TierView => ({ ...stayRow().tier, word, protocol });
const walker = stayRow({ tier: tier('Walk') });
const given = (view: StayView = walker) => bench(MeasureForm, { view, documents });
const text = (form: Bench) => form.wrapper.text().replace(/\s+/g, ' ');
const sent = (form: Bench) => recordWalkingMeasure.data.parse(form.sent[0]!.body.data);

describe('a walking measure on the sheet', () => {
  it('is one command, with what was done and nothing that was not given', async () => {
    const form = given();
    await form.tap('Up and go, 3 m');
    await form.type('Time', '13,5');
    await form.tap('Record the measure');
    expect(form.sent[0]).toMatchObject({ ward: 'w1', name: 'record-walking-measure' });
    expect(form.sent[0]!.body.occurred).toEqual({
      at: new Date(NOON).toISOString(),
      precision: 'exact',
    });
    expect(sent(form)).toEqual({
      stay: 's1',
      measure: { kind: 'up-and-go', seconds: 13.5, support: 'frame' },
    });
    expect(form.recorded).toEqual(['Walking measure: Up and go, 3 m']);
    expect(form.wrapper.emitted('recorded')).toHaveLength(1);
  });

  it('shows at once how it reads, with the source, before anything is sent', async () => {
    const form = given();
    await form.tap('Up and go, 3 m');
    expect(text(form)).not.toContain('How it reads');
    await form.type('Time', '12');
    expect(text(form)).toContain('How it reads (preview, not recorded)');
    expect(text(form)).toContain('At risk of falling: 12 s or more.');
    expect(text(form)).toContain('Source: US Centers for Disease Control and Prevention');
    expect(form.sent).toHaveLength(0);
  });

  it('always says that it is no diagnosis, and to stop', () => {
    const form = given();
    expect(text(form)).toContain(MEASURES_STANDING_LINE);
    expect(text(form)).toContain('Stop at dizziness, pain, breathlessness, or when the person asks.');
  });

  it('of speed asks how it was walked and guesses none of it', async () => {
    const form = given(stayRow({ tier: tier('Walk'), walkingSupport: null }));
    await form.tap('Walking speed');
    await form.tap('Record the measure');
    expect(form.sent).toHaveLength(0);
    expect(text(form)).toContain(
      'Still needed: the distance, the time, the pace, how it began, with a turn or not, the support.',
    );
    await form.tap('4 m');
    await form.type('Time', '5');
    await form.tap('Usual pace');
    await form.tap('Already walking');
    await form.tap('Straight');
    await form.tap('Stick');
    await form.type('Age', '78');
    await form.tap('Woman');
    expect(text(form)).toContain('Slower than the mean of healthy women of 70 to 79 (1.13 m/s).');
    await form.tap('Record the measure');
    expect(sent(form)).toEqual({
      stay: 's1',
      measure: {
        kind: 'gait-speed',
        metres: 4,
        seconds: 5,
        pace: 'usual',
        start: 'walking',
        turn: false,
        support: 'stick',
      },
      readBy: { age: 78, sex: 'female' },
    });
  });

  it("with a turn shows no norm, and the authors' warning", async () => {
    const form = given();
    await form.tap('Walking speed');
    await form.tap('6 m');
    await form.type('Time', '10');
    await form.tap('Usual pace');
    await form.tap('From standing, on a word');
    await form.tap('With a turn');
    expect(text(form)).toContain('No norm: walked with a turn.');
    expect(text(form)).toContain('The authors of the table: not valid over a short course');
  });

  it('of six minutes takes height and weight only to read the table', async () => {
    const form = given();
    await form.tap('Six-minute walk');
    await form.type('Distance', '316');
    expect(text(form)).toContain('No norm: age and sex, height and weight not given.');
    await form.type('Age', '70');
    await form.tap('Woman');
    await form.type('Height', '162');
    await form.type('Weight', '65');
    expect(text(form)).toContain('Below the lower limit of normal: reference 455 m, lower limit 317 m');
    await form.tap('Record the measure');
    expect(sent(form).measure).toEqual({
      kind: 'six-minute-walk',
      metres: 316,
      support: 'frame',
      heightCm: 162,
      weightKg: 65,
    });
  });

  it('of chair stands counts nought as nought, and says what arms do to it', async () => {
    const form = given();
    await form.tap('Chair stands in 30 s');
    await form.type('Stands', '0');
    await form.tap('Arms were used');
    expect(text(form)).toContain('Arms were used, so it counts as 0 by the published rule.');
    await form.tap('Record the measure');
    expect(sent(form)).toEqual({
      stay: 's1',
      measure: { kind: 'chair-stands', stands: 0, usedArms: true },
    });
  });

  it('that was not managed is recorded as such, never as nought', async () => {
    const form = given();
    await form.tap('Five rises');
    await form.type('Time', '30');
    await form.tap('Not managed');
    await form.tap('Without arms');
    expect(text(form)).toContain('Not managed: reads as slow (over 15 s).');
    await form.tap('Record the measure');
    expect(sent(form).measure).toEqual({ kind: 'five-rises', seconds: null, usedArms: false });
  });

  it('asks for the sex with an age, or neither', async () => {
    const form = given();
    await form.tap('Chair stands in 30 s');
    await form.type('Stands', '8');
    await form.tap('Without arms');
    await form.type('Age', '70');
    await form.tap('Record the measure');
    expect(form.sent).toHaveLength(0);
    expect(text(form)).toContain('Still needed: the sex (or leave out the age).');
    await form.type('Age', '');
    await form.tap('Man');
    await form.tap('Record the measure');
    expect(text(form)).toContain('Still needed: the age (or leave out the sex).');
    await form.tap('Man');
    await form.tap('Record the measure');
    expect(sent(form)).not.toHaveProperty('readBy');
  });

  it('of another kind begins anew and keeps who the person is', async () => {
    const form = given();
    await form.tap('Chair stands in 30 s');
    await form.type('Age', '70');
    await form.tap('Woman');
    await form.tap('Arms were used');
    await form.tap('Six-minute walk');
    await form.type('Distance', '200');
    await form.tap('Record the measure');
    expect(sent(form)).toEqual({
      stay: 's1',
      measure: { kind: 'six-minute-walk', metres: 200, support: 'frame' },
      readBy: { age: 70, sex: 'female' },
    });
  });

  it('keeps an impossible amount at its field', async () => {
    const form = given();
    await form.tap('Up and go, 3 m');
    await form.type('Time', '0.2');
    await form.tap('Record the measure');
    expect(form.sent).toHaveLength(0);
    const field = form.wrapper.find('input[aria-invalid="true"]').element as HTMLInputElement;
    expect(field.value).toBe('0.2');
    expect(text(form)).toContain('The time is 0.5 to 600 seconds.');
  });

  it('taken earlier says about when', async () => {
    const form = given();
    await form.tap('Up and go, 3 m');
    await form.type('Time', '20');
    await form.tap('About 1 h ago');
    await form.tap('Record the measure');
    expect(form.sent[0]!.body.occurred).toEqual({
      at: new Date(NOON - 3_600_000).toISOString(),
      precision: 'about',
    });
  });
});

describe('MEASURE-3 a measure that is not safe to take', () => {
  const warned = 'Do not take this measure now';

  it('is warned of before it is taken, with the reason', async () => {
    const form = given(stayRow({ tier: tier('Stand') }));
    await form.tap('Up and go, 3 m');
    expect(text(form)).toContain(warned);
    expect(text(form)).toContain('Walking is not cleared; the tier is Stand.');
    await form.tap('Chair stands in 30 s');
    expect(text(form)).not.toContain(warned);
  });
  it('is told once when it was sent all the same: the refusal says it', async () => {
    const form = given(stayRow({ tier: tier('Stand') }));
    form.answers.push({
      type: '/problems/walk-not-cleared',
      title: 'Walking is not cleared',
      status: 422,
      detail: 'walking is not cleared; the tier is Stand',
      remedy: 'Do not take this measure now. Check the person first.',
    });
    await form.tap('Up and go, 3 m');
    await form.type('Time', '20');
    await form.tap('Record the measure');
    expect(text(form).split(warned)).toHaveLength(2);
    expect(text(form)).toContain('Check the person first.');
  });
  it('is warned of while a hold stops it', async () => {
    const form = given(stayRow({ tier: tier('Walk'), holds: [holdRow()] }));
    await form.tap('Chair stands in 30 s');
    expect(text(form)).toContain('A hold stops standing: waiting for review.');
  });
  it('is not warned of where nothing stops it', async () => {
    const form = given();
    await form.tap('Up and go, 3 m');
    expect(text(form)).not.toContain(warned);
    expect(text(form)).not.toContain('Check the person first');
  });
  it('asks for a check first when the board is not current', () => {
    const trust = { ...stayRow().trust, state: 're-check' as const };
    expect(text(given(stayRow({ trust })))).toContain('Check the person first');
  });
  it('goes by the protocol that the tier was judged by, and knows nothing by another', () => {
    expect(clearedBy(tier('Edge'), DEFAULT_PROTOCOL)).toEqual(new Set(['clear', 'upright', 'edge']));
    expect(clearedBy(tier('Walk'), DEFAULT_PROTOCOL)).toContain('walk');
    expect(clearedBy(tier(DEFAULT_PROTOCOL.lowestWord), DEFAULT_PROTOCOL)).toEqual(new Set());
    expect(clearedBy(tier(null), DEFAULT_PROTOCOL)).toEqual(new Set());
    expect(clearedBy({ ...tier('Not known'), protocol: null }, DEFAULT_PROTOCOL)).toEqual(new Set());
    for (const other of [
      { ...protocol, version: protocol.version + 1 },
      { ...protocol, id: 'own' },
    ]) {
      expect(clearedBy({ ...tier('Walk'), protocol: other }, DEFAULT_PROTOCOL)).toBeNull();
    }
  });
});
