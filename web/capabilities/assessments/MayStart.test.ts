import { flushPromises, mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import type { StartView } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import type { EventId } from '@footboard/shared/kernel/ids';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { HOUR, NOON } from '../../board/rows.testkit.ts';
import MayStart from './MayStart.vue';
import { nextCheckWords } from './next-check-words.ts';

const asks: StartView['reasons'][number] = {
  word: 'ask-first',
  words: 'pain 5 of 10: offer relief, come back when it works',
  limit: 4,
  source: 'a ward source',
  takenAt: NOON - HOUR,
  facts: ['e1' as EventId],
};
const stops: StartView['reasons'][number] = {
  word: 'not-now',
  words: 'systolic 84 mmHg is below 90',
  limit: 90,
  source: 'a pressure source',
  takenAt: NOON - 2 * HOUR,
  facts: ['e2' as EventId],
};
const shown = (mayStart: StartView | null, over: { old?: boolean; nextCheck?: StayView['nextCheck'] } = {}) =>
  mount(MayStart, {
    props: {
      view: { mayStart, nextCheck: over.nextCheck ?? null },
      now: NOON,
      protocol: DEFAULT_PROTOCOL,
      old: over.old ?? false,
    },
    attachTo: document.body,
  });
afterEach(() => {
  document.body.innerHTML = '';
});
const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ');

describe('may we start', () => {
  it('says the word, then each reason with the age of its reading, what stops before what asks', () => {
    const block = shown({ word: 'not-now', reasons: [asks, stops], notTaken: [] });
    expect(block.find('.word').text()).toBe('Not now');
    expect(block.findAll('.reasons li').map((li) => plain(li.text()))).toEqual([
      'Systolic 84 mmHg is below 90, taken 2 h ago',
      'Pain 5 of 10: offer relief, come back when it works, taken 1 h ago',
    ]);
  });

  it('has each limit with its source behind one tap, and not before', async () => {
    const block = shown({ word: 'not-now', reasons: [asks, stops], notTaken: ['temperature'] });
    expect(plain(document.body.textContent)).not.toContain('a pressure source');
    await block.find('[aria-label="Why: may we start"]').trigger('click');
    await flushPromises();
    const card = plain(document.body.querySelector('.why-card')!.textContent);
    expect(card).toContain('not now; limit 90; taken 2 h ago; source: a pressure source');
    expect(card).toContain('ask first; limit 4; taken 1 h ago; source: a ward source');
    expect(card).toContain('No reading that is recent enough: temperature.');
    expect(card).not.toContain('Nothing is recorded behind this');
  });

  it('lists what was not taken, and never calls it normal', () => {
    const block = shown({ word: 'ask-first', reasons: [], notTaken: ['blood pressure', 'pain'] });
    expect(block.find('.word').text()).toBe('Ask first');
    expect(plain(block.text())).toContain('Not taken: blood pressure, pain.');
  });

  it('marks the word as needing somebody unless it is a go-ahead', () => {
    expect(
      shown({ word: 'ask-first', reasons: [asks], notTaken: [] })
        .find('.word')
        .classes(),
    ).toContain('needs');
    const go = shown({ word: 'may-start', reasons: [], notTaken: [] });
    expect(go.find('.word').text()).toBe('May start');
    expect(go.find('.word').classes()).not.toContain('needs');
  });

  // Stale facts only keep or raise help.
  it('given a page that is not up to date, an old "may start" is no go-ahead', () => {
    const block = shown({ word: 'may-start', reasons: [], notTaken: [] }, { old: true });
    expect(block.find('.word').text()).toBe('Ask first');
    expect(block.find('.word').classes()).toContain('needs');
    expect(block.text()).toContain('This page is not up to date');
    const stopped = shown({ word: 'not-now', reasons: [stops], notTaken: [] }, { old: true });
    expect(stopped.find('.word').text()).toBe('Not now');
  });

  it('shows nothing under the clinician’s or comfort plan', () => {
    expect(shown(null).find('section').exists()).toBe(false);
  });
});

describe('the next check', () => {
  const because = [{ rule: 'next-check/faint', facts: ['e3' as EventId], words: 'a faint is open' }];

  it('says how deep and from which stage, and why behind one tap', async () => {
    const nextCheck = { depth: 'full-with-pressure', from: 'clear', because } as const;
    const block = shown(
      { word: 'ask-first', reasons: [], notTaken: [] },
      { nextCheck: { ...nextCheck, because } },
    );
    expect(plain(block.text())).toContain('Next check: Full, with pressure set, from Clear');
    await block.find('[aria-label="Why: depth of the next check"]').trigger('click');
    await flushPromises();
    expect(document.body.textContent).toContain('a faint is open');
  });

  it('names no stage where one ordinary move is enough', () => {
    expect(nextCheckWords({ depth: 'confirm', from: 'clear', because }, DEFAULT_PROTOCOL)).toBe(
      'Confirm: one ordinary move, watched by a nurse',
    );
  });

  it('names a stage that the protocol at hand does not have by its id', () => {
    expect(nextCheckWords({ depth: 'full', from: 'side-of-bed', because }, DEFAULT_PROTOCOL)).toBe(
      'Full, from Side of bed',
    );
  });
});
