import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import type { EventId, StaffId } from '@footboard/shared/kernel/ids';
import type { TimelineEntry } from '@footboard/shared/wire/http';
import StayTimeline from './StayTimeline.vue';

const at = (iso: string) => Date.parse(iso);
const line = (event: string, occurred: string, over: Partial<TimelineEntry> = {}): TimelineEntry => ({
  event: event as EventId,
  type: 'session-recorded',
  occurred: at(occurred),
  precision: 'exact',
  recorded: at(occurred),
  late: false,
  author: { staff: 'n1' as StaffId, role: 'aide', name: 'Ines Alder' },
  source: { kind: 'person' },
  words: `Session ${event}`,
  changedBy: [],
  target: null,
  counts: true,
  confirmation: null,
  cosign: null,
  ...over,
});
const shown = (timeline: TimelineEntry[]) =>
  mount(StayTimeline, { props: { timeline, zone: 'Europe/Lisbon' } });
const entry = (page: ReturnType<typeof shown>, id: string) =>
  page.find(`#entry-${id}`).text().replace(/\s+/g, ' ');

describe('the timeline of a stay', () => {
  it('is newest first, with author and role', () => {
    const page = shown([line('a', '2026-11-25T08:00:00Z'), line('b', '2026-11-25T09:00:00Z')]);
    expect(page.findAll('li').map((li) => li.attributes('id'))).toEqual(['entry-b', 'entry-a']);
    expect(entry(page, 'a')).toContain('Ines Alder, aide');
  });

  it('keeps a withdrawn entry readable, struck through, and linked to what withdrew it and back', () => {
    const page = shown([
      line('a', '2026-11-25T08:00:00Z', {
        counts: false,
        changedBy: [{ verb: 'retraction', event: 'r' as EventId }],
      }),
      line('r', '2026-11-25T09:00:00Z', { type: 'retraction-made', target: 'a' as EventId }),
    ]);
    expect(page.find('#entry-a del').text()).toContain('Session a');
    expect(page.find('#entry-a a').attributes('href')).toBe('#entry-r');
    expect(page.find('#entry-r a').attributes('href')).toBe('#entry-a');
    expect(page.find('#entry-r del').exists()).toBe(false);
  });

  it('says late, about, and where an entry came from', () => {
    const page = shown([
      line('a', '2026-11-25T08:00:00Z', {
        late: true,
        recorded: at('2026-11-25T11:30:00Z'),
        precision: 'about',
        source: { kind: 'paper', serial: '0042' },
      }),
    ]);
    expect(entry(page, 'a')).toContain('about 08:00');
    expect(entry(page, 'a')).toContain('late entry, recorded Wed 25 Nov 11:30');
    expect(entry(page, 'a')).toContain('from a paper sheet, no. 0042');
  });

  // Source: IANA time zone database, Europe/Lisbon: clocks back on 2026-10-25 at 01:00 UTC.
  it('writes two walks at 01:40 in the repeated hour so that they do not read alike', () => {
    const page = shown([line('a', '2026-10-25T00:40:00Z'), line('b', '2026-10-25T01:40:00Z')]);
    const times = page.findAll('.when').map((when) => when.text());
    expect(times[0]).not.toBe(times[1]);
    expect(times.every((time) => time.startsWith('01:40 ('))).toBe(true);
  });

  const signer = { staff: 'n2' as StaffId, role: 'nurse' as const, name: 'Noor Haddad' };
  const button = (page: ReturnType<typeof shown>, id: string) =>
    page
      .findAll(`#entry-${id} button`)
      .map((one) => one.text())
      .filter((text) => text !== 'Change');

  it('marks an entry whose author was not checked, offers it to that person alone, and says who confirmed it', async () => {
    const timeline = [
      line('a', '2026-11-25T08:00:00Z', { confirmation: { state: 'unconfirmed', by: null, at: null } }),
      line('b', '2026-11-25T09:00:00Z', {
        confirmation: { state: 'confirmed', by: signer, at: at('2026-11-25T09:30:00Z') },
      }),
    ];
    const page = shown(timeline);
    expect(entry(page, 'a')).toContain('can only raise help until Ines Alder confirms it');
    expect(entry(page, 'b')).toContain('confirmed by Noor Haddad, nurse, 09:30');
    expect(button(page, 'a')).toEqual([]);
    await page.setProps({ mine: 'n2', maySign: true });
    expect(button(page, 'a')).toEqual([]);
    await page.setProps({ mine: 'n1' });
    expect(button(page, 'a')).toEqual(['Confirm it']);
    await page.find('#entry-a button.button').trigger('click');
    expect(page.emitted('sign')).toEqual([['confirm', timeline[0]]]);
    await page.setProps({ timeline: [{ ...timeline[0]!, counts: false }] });
    expect(button(page, 'a')).toEqual([]);
  });

  it('marks what waits for a second signature, offers it to whoever may sign and is not the author', async () => {
    const timeline = [
      line('a', '2026-11-25T08:00:00Z', {
        cosign: { kind: 'agency', state: 'waiting', by: null, at: null },
      }),
      line('b', '2026-11-25T09:00:00Z', {
        cosign: { kind: 'student', state: 'signed', by: signer, at: at('2026-11-25T09:30:00Z') },
      }),
    ];
    const page = shown(timeline);
    expect(entry(page, 'a')).toContain('waits for a second signature (agency staff)');
    expect(entry(page, 'b')).toContain('also signed by Noor Haddad, nurse, 09:30');
    await page.setProps({ mine: 'n2' });
    expect(button(page, 'a')).toEqual([]);
    await page.setProps({ maySign: true });
    expect(button(page, 'a')).toEqual(['Sign it too']);
    await page.setProps({ mine: 'n1' });
    expect(button(page, 'a')).toEqual([]);
  });
});
