import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import type { MeasuresView } from '@footboard/shared/capabilities/board/activity-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { MEASURES_STANDING_LINE } from '@footboard/shared/capabilities/measures/rules/judge-measure';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/default-rules';
import type { Role } from '@footboard/shared/kernel/author';
import type { EventId, StaffId } from '@footboard/shared/kernel/ids';
import { HOUR, NOON, stayRow } from '../../board/rows.testkit.ts';
import { useWhoStore } from '../../people/who-store.ts';
import { bench, type Bench } from '../entry/entry.testkit.ts';
import WalkingMeasures from './WalkingMeasures.vue';

const none: MeasuresView = { event: 'e5' as EventId, last: [] };
const one: MeasuresView = {
  event: 'e5' as EventId,
  last: [
    {
      event: 'e6' as EventId,
      at: NOON - 3 * HOUR,
      words: 'Up and go over 3 m: 18 s',
      says: 'At risk of falling: 12 s or more.',
      source: 'a published table',
      warnings: ['Walked with a frame: compare it only with a walk with the same.'],
    },
  ],
};

async function given(measures: MeasuresView | null, role: Role | null): Promise<Bench> {
  const view: StayView = stayRow({ measures });
  const form = bench(WalkingMeasures, {
    view,
    now: NOON,
    zone: 'Europe/Lisbon',
    documents: { protocol: DEFAULT_PROTOCOL, rules: DEFAULT_RULES, read: true },
    factHref: (event: string) => `#entry-${event}`,
  });
  const who = useWhoStore();
  if (role) who.staff = [{ staff: 'x1' as StaffId, role, name: 'Ines Alder', active: true, standing: 'own' }];
  who.choose(role ? ('x1' as StaffId) : null);
  await form.wrapper.vm.$nextTick();
  return form;
}
const text = (form: Bench) => form.wrapper.text().replace(/\s+/g, ' ');

describe('MEASURE-1 walking measures on the stay page', () => {
  it('while they are off show nothing, save to a therapist a way to turn them on', async () => {
    for (const role of ['aide', 'nurse', 'charge-nurse', 'manager', null] as const) {
      expect(text(await given(null, role))).toBe('');
    }
    const form = await given(null, 'therapist');
    expect(text(form)).toBe('Turn walking measures on for this stay');
    await form.tap('Turn walking measures on');
    expect(form.sent[0]).toMatchObject({ name: 'switch-walking-measures' });
    expect(form.sent[0]!.body.data).toEqual({ stay: 's1', on: true });
    expect(form.recorded).toEqual(['Walking measures turned on']);
  });

  it('while they are on show to everyone what was last measured, its reading, age, source and cautions', async () => {
    for (const role of ['aide', 'therapist', null] as const) {
      const shown = text(await given(one, role));
      expect(shown).toContain('Up and go over 3 m: 18 s, 3 h ago');
      expect(shown).toContain('At risk of falling: 12 s or more.');
      expect(shown).toContain('Walked with a frame: compare it only with a walk with the same.');
      expect(shown).toContain('Source: a published table');
      expect(shown).toContain(MEASURES_STANDING_LINE);
    }
    expect((await given(one, null)).wrapper.find('a').attributes('href')).toBe('#entry-e6');
  });

  it('say when none was recorded', async () => {
    expect(text(await given(none, 'aide'))).toContain('None recorded yet.');
    expect(text(await given(one, 'aide'))).not.toContain('None recorded yet.');
  });

  it('are added to by a nurse or therapist, and turned off by a therapist', async () => {
    const buttons = async (role: Role | null) =>
      (await given(none, role)).wrapper.findAll('button').map((b) => b.text());
    expect(await buttons('therapist')).toEqual(['Add a measure', 'Turn walking measures off']);
    expect(await buttons('nurse')).toEqual(['Add a measure']);
    expect(await buttons('charge-nurse')).toEqual(['Add a measure']);
    for (const role of ['aide', 'manager', null] as const) {
      expect(await buttons(role)).toEqual([]);
      expect(text(await given(none, role))).toContain('A nurse or therapist adds a measure.');
    }
    const form = await given(one, 'therapist');
    await form.tap('Turn walking measures off');
    expect(form.sent[0]!.body.data).toEqual({ stay: 's1', on: false });
  });

  it('open the sheet for a new measure', async () => {
    const form = await given(one, 'nurse');
    await form.tap('Add a measure');
    expect(document.body.textContent).toContain('Which measure');
    form.wrapper.unmount();
  });

  it('show a refusal with what to do', async () => {
    const form = await given(null, 'therapist');
    form.answers.push({
      type: '/problems/stay-ended',
      title: 'The stay has ended',
      status: 422,
      detail: 'the stay ended at 11:40',
      remedy: 'Check the person.',
    });
    await form.tap('Turn walking measures on');
    expect(text(form)).toContain('The stay has ended');
    expect(text(form)).toContain('Check the person.');
  });
});
