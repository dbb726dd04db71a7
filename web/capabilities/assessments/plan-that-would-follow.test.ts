/** The plan that a check would lead to, before it is sent. */
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { stayRow } from '../../board/rows.testkit.ts';
import { stopped } from './check-flow.testkit.ts';

describe('the plan that would follow', () => {
  const planOf = (people: 'one' | 'two', aid: 'none' | 'sling-lift') =>
    (['bed-chair', 'walk'] as const).map((task) => ({
      task,
      hold: false,
      people,
      aid,
      with: [],
      towards: null,
      cautions: [],
      because: [{ rule: 'r', facts: [], words: 'Because' }],
    }));
  const side = (word: string, people: 'one' | 'two', aid: 'none' | 'sling-lift') => {
    const { tier, trust, cautions, walkingSupport, scope, due } = stayRow();
    const plan = { day: planOf(people, aid), night: planOf('two', 'sling-lift') };
    return {
      tier: { ...tier, word },
      trust,
      plan,
      checkBeforeMoving: false,
      cautions,
      walkingSupport,
      scope,
      due,
    };
  };
  const preview = {
    ward: 'w1',
    stay: 's1',
    version: 3,
    at: 0,
    now: side('Edge', 'two', 'sling-lift'),
    would: side('Upright', 'one', 'none'),
    moves: [
      { task: 'bed-chair', by: 'day', change: 'less-help' },
      { task: 'bed-chair', by: 'night', change: 'same' },
      { task: 'walk', by: 'day', change: 'less-help' },
      { task: 'walk', by: 'night', change: 'same' },
    ],
    unconfirmed: false,
  };
  afterEach(() => vi.unstubAllGlobals());
  const asked: { path: string; body: { data: { note?: string } } }[] = [];
  const server = (answer: () => Promise<Response>) => {
    asked.length = 0;
    vi.stubGlobal('fetch', (path: string, init: RequestInit) => {
      asked.push({ path, body: JSON.parse(init.body as string) as never });
      return answer();
    });
  };
  const toReview = async () => {
    const form = await stopped();
    await form.tap('The person is safe, go on');
    await form.tap('There was a symptom');
    await form.tap('Go on to record');
    await flushPromises();
    return form;
  };

  it('BEDSIDE-1 stands task by task, by day and by night, with what the board says now, before anything is sent', async () => {
    server(() => Promise.resolve(Response.json(preview)));
    const form = await toReview();
    const shown = form.wrapper.find('.preview').text().replace(/\s+/g, ' ');
    expect(shown).toContain('2 tasks change against the plan now.');
    expect(shown).toMatch(
      /Bed to chair.*By day.*1 person.*Less help\.\s*Now: 2 people, sling lift.*At night.*2 people, sling lift/,
    );
    expect(asked.map(({ path }) => path)).toEqual(['/api/wards/w1/previews/record-assessment']);
    expect(form.sent).toEqual([]);
    await form.type('Note', 'tired');
    await flushPromises();
    expect(asked).toHaveLength(1);
  });

  it('BEDSIDE-1 without an answer the tier stands alone, and the plan is said to be known later', async () => {
    server(() => Promise.reject(new TypeError('network')));
    const form = await toReview();
    expect(form.wrapper.find('.preview').exists()).toBe(false);
    expect(form.wrapper.text()).toContain(
      'The plan will be known when the check is sent: the server does not',
    );
    expect(form.wrapper.text()).toContain('Clear');
    await form.tap('Record this check');
    expect(form.sent).toHaveLength(1);
  });

  it('says before it is sent what would be refused, and what to do', async () => {
    const no = {
      type: '/problems/no-staged-check',
      title: 'No',
      status: 422,
      detail: 'A comfort plan stands',
      remedy: 'Follow it.',
    };
    server(() => Promise.resolve(Response.json(no, { status: 422 })));
    const form = await toReview();
    expect(form.wrapper.text()).toContain('As it stands it would not be taken');
    expect(form.wrapper.text()).toContain('Follow it.');
  });
});
