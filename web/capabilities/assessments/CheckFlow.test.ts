import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { boardRow, stayRow } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import CheckFlow from './CheckFlow.vue';

const given = (view = stayRow(), role = 'nurse', over: Record<string, unknown> = {}) =>
  bench(CheckFlow, {
    stay: 's1',
    view,
    protocol: DEFAULT_PROTOCOL,
    rules: DEFAULT_RULES,
    board: boardRow([]),
    role,
    ...over,
  });
type Form = ReturnType<typeof given>;
const cooperates = async (form: Form) => {
  const yes = () => form.wrapper.findAll('button').filter((b) => b.text().endsWith('Yes'));
  await yes()[0]!.trigger('click');
  await yes()[1]!.trigger('click');
};
const clear = async (form: Form) => {
  await cooperates(form);
  await form.tap('All the rest met');
  await form.tap('Stage met, go on');
};
const wellDone = async (form: Form, asksHow: boolean) => {
  await form.tap('All the rest met');
  if (asksHow) await form.tap('Free, on their own');
  await form.tap('Stage met, go on');
};
const part = (form: Form, says: string) =>
  form.wrapper.findAll('.part').find((p) => p.text().includes(says))!;

/** The button of the depth without a pressure set. */
const WITHOUT_SET = 'Fullunder 4 minutes';
const noSymptoms = (form: Form) =>
  form.wrapper
    .findAll('[role=group]')
    .find((g) => g.text().startsWith('Symptoms on rising'))!
    .findAll('button')
    .find((b) => b.text() === 'None')!
    .trigger('click');
const pressureInto = (form: Form) => async (says: string, systolic: string, diastolic: string) => {
  const slot = form.wrapper.findAll('fieldset').find((f) => f.text().startsWith(says))!;
  const [first, second] = slot.findAll('input');
  await first!.setValue(systolic);
  await first!.trigger('change');
  await second!.setValue(diastolic);
  await second!.trigger('change');
};

const stopped = async () => {
  const form = given();
  await form.tap('Full');
  await clear(form);
  await part(form, 'back raised for 3 minutes')
    .findAll('button')
    .find((b) => b.text() === 'Not met')!
    .trigger('click');
  return form;
};

describe('the staged check', () => {
  it('says how long each depth takes before anything is asked', () => {
    const form = given();
    expect(form.wrapper.text()).toContain('about 9 minutes');
    expect(form.wrapper.text()).toContain('under 4 minutes');
    expect(form.wrapper.findAll('.part')).toHaveLength(0);
  });

  // Order of the stages: common practice, no source.
  it('shows one stage at a time, in the protocol’s order', async () => {
    const form = given();
    await form.tap('Full');
    const seen: string[] = [];
    for (const stage of DEFAULT_PROTOCOL.stages) {
      seen.push(form.wrapper.find('h3.title').text());
      expect(form.wrapper.findAll('.part')).toHaveLength(
        stage.parts.reduce((n, p) => n + (p.sided ? 2 : 1), 0),
      );
      await wellDone(form, stage.securedBy.length > 0);
    }
    expect(seen).toEqual(['Clear', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk']);
    expect(form.wrapper.text()).toContain('Before it is recorded');
  });

  it('does not go on while a part is unanswered', async () => {
    const form = given();
    await form.tap('Full');
    const go = form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;
    expect(go.attributes('disabled')).toBeDefined();
  });

  it('does not take free, nor the absence of a symptom, for granted', async () => {
    const form = given();
    await form.tap('Full');
    await clear(form);
    const go = () => form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;
    await form.tap('All the rest met');
    expect(form.wrapper.text()).toContain('Say how it was done');
    expect(go().attributes('disabled')).toBeDefined();
    await form.tap('Secured: raised bed');
    expect(go().attributes('disabled')).toBeUndefined();
  });

  it('has "secured" chosen beforehand for the first standing after surgery', async () => {
    const form = given(stayRow({ firstTimeUpPending: true }));
    await form.tap('Full, with pressure set');
    await clear(form);
    await wellDone(form, true);
    await wellDone(form, true);
    expect(form.wrapper.find('h3.title').text()).toBe('Stand');
    const how = form.wrapper.findAll('[role=group]').find((g) => g.text().startsWith('How was it done?'))!;
    expect(how.findAll('[aria-pressed=true]').map((b) => b.text())).toEqual(['✓Secured: two people']);
  });

  it('asks each side apart and needs a reason for what was not tested', async () => {
    const form = given();
    await form.tap('Full');
    await clear(form);
    const heel = part(form, 'Heel held 5 cm off the mattress for 5 seconds: left');
    await heel
      .findAll('button')
      .find((b) => b.text() === 'Not tested')!
      .trigger('click');
    await part(form, 'for 5 seconds: left')
      .findAll('button')
      .find((b) => b.text() === 'Pain')!
      .trigger('click');
    await form.tap('All the rest met');
    await form.tap('Free, on their own');
    expect(part(form, 'for 5 seconds: left').text()).toContain('Not tested: pain');
    // One leg that lifts is enough to go on; the leg that was not tested says nothing either way.
    expect(form.wrapper.text()).toContain('Stage met, go on');
  });
});

describe('confirm', () => {
  it('is recorded by one tap on the sheet: with "Check", two taps', async () => {
    const form = given();
    await form.tap('As planned, nothing different');
    expect(form.sent).toHaveLength(1);
    expect(form.sent[0]).toMatchObject({
      name: 'confirm-plan',
      body: { data: { stay: 's1', task: 'bed-chair' } },
    });
    expect(form.wrapper.emitted('recorded')).toHaveLength(1);
  });

  it('is not offered while something is open', () => {
    const view = stayRow();
    const trigger = { event: 'e7' as never, kind: 'faint' as const, at: 0, words: 'Faint' };
    const form = given({ ...view, trust: { ...view.trust, state: 're-check', openTriggers: [trigger] } });
    expect(form.wrapper.text()).not.toContain('As planned');
    expect(form.wrapper.text()).toContain('Needed now: full, with pressure set (faint)');
  });

  it('given a check with the pressure set is needed, says that a confirm does not stand for it', () => {
    const because = [{ rule: 'next', facts: [], words: 'the first time up is still ahead' }];
    const needed = given(stayRow({ nextCheck: { depth: 'full-with-pressure', from: 'clear', because } }));
    expect(needed.wrapper.text()).toContain('The check needed now is still needed afterwards.');
    expect(given().wrapper.text()).not.toContain('still needed afterwards');
  });
});

describe('a part that is not met', () => {
  it('shows "make safe first" before anything else is asked or can be recorded', async () => {
    const form = await stopped();
    const text = form.wrapper.text();
    expect(text).toContain('Make safe first');
    expect(text).toContain('Call for help');
    expect(text).toContain('Stay with the person');
    expect(form.wrapper.findAll('.part')).toHaveLength(0);
    expect(text).not.toContain('Record this check');
  });

  it('then asks the rest and records the stage as not met, with what was never reached said so', async () => {
    const form = await stopped();
    await form.tap('The person is safe, go on');
    await form.tap('There was a symptom');
    await form.tap('Go on to record');
    expect(form.wrapper.text()).toContain('Preview, not recorded');
    await form.tap('Record this check');
    expect(form.sent).toHaveLength(1);
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(data.stages.map((s) => [s.stage, s.outcome])).toEqual([
      ['clear', 'met'],
      ['upright', 'not-met'],
    ]);
    const upright = data.stages[1]!;
    expect(upright.symptom).toBe(true);
    expect(upright.findings.find((f) => f.part === 'back-raised')).toEqual({
      part: 'back-raised',
      result: 'not-met',
    });
    expect(upright.findings.filter((f) => f.part === 'grip')).toEqual([
      { part: 'grip', side: 'left', result: 'not-tested', reason: 'stopped-before' },
      { part: 'grip', side: 'right', result: 'not-tested', reason: 'stopped-before' },
    ]);
    expect(data.cooperation).toEqual({ waitsForHelp: 'yes', followsInstructions: 'yes' });
  });

  it('tapped by mistake can be taken back', async () => {
    const form = await stopped();
    await form.tap('Tapped by mistake');
    expect(form.wrapper.find('h3.title').text()).toBe('Upright');
  });
});

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

describe('readings', () => {
  it('an impossible figure is named at its field with its unit, and nothing goes on', async () => {
    const form = given();
    await form.tap('Full, with pressure set');
    await form.type('systolic', '1300');
    await form.type('diastolic', '80');
    const field = form.wrapper.findAll('.amount').find((a) => a.text().startsWith('systolic'))!;
    expect(field.text()).toContain('Systolic pressure (mmHg) is 40 to 300');
    expect(field.find('input').attributes('aria-invalid')).toBe('true');
    await form.tap('All the rest met');
    const go = form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;
    expect(go.attributes('disabled')).toBeDefined();
  });

  it('exchanged figures are caught', async () => {
    const form = given();
    await form.tap('Full, with pressure set');
    await form.type('systolic', '80');
    await form.type('diastolic', '130');
    expect(form.wrapper.text()).toContain('check that they are not exchanged');
  });

  it('below the ward limit the check says "Not now", with the source of the limit', async () => {
    const form = given();
    await form.tap('Full, with pressure set');
    await form.type('systolic', '84');
    await form.type('diastolic', '50');
    expect(form.wrapper.text()).toContain('Not now');
    expect(form.wrapper.text()).toContain(DEFAULT_RULES.start.systolicBelow.source);
  });

  // Freeman et al., Auton Neurosci 2011;161:46-48: a fall of 20 systolic within 3 minutes of standing.
  it('a fall of 20 on standing is said by the shared rule, and a missing reading is not a "no"', async () => {
    const form = given();
    await form.tap('Full, with pressure set');
    await form.type('systolic', '130');
    await form.type('diastolic', '80');
    await clear(form);
    await wellDone(form, true);
    await wellDone(form, true);
    const put = pressureInto(form);
    await put('Pressure standing, 1 min', '124', '78');
    expect(form.wrapper.text()).toContain('INCOMPLETE');
    await put('Pressure standing, 3 min', '110', '78');
    await noSymptoms(form);
    expect(form.wrapper.text()).toContain('Pressure falls on rising');
    expect(form.wrapper.text()).toContain('Systolic fell 20: from 130/80 lying to 110/78 at 3 min standing');
    expect(form.wrapper.text()).toContain(DEFAULT_RULES.rising.systolicFall.source);
    expect(form.wrapper.text()).toContain('Sit, then try once more');
    expect(form.wrapper.text()).toContain('Tell the prescriber');
  });

  // Common practice, no source: sit 2 minutes, then once more (design, what pressure on rising does).
  it('asks for a second try after a fall without symptoms, and keeps both tries', async () => {
    const form = given();
    await form.tap(WITHOUT_SET);
    await clear(form);
    await wellDone(form, true);
    await pressureInto(form)('Pressure seated', '130', '80');
    await wellDone(form, true);
    const put = pressureInto(form);
    expect(form.wrapper.text()).not.toContain('Second try');
    await put('Pressure standing, 1 min', '108', '78');
    expect(form.wrapper.text()).toContain('Second try, standing 1 min');
    await noSymptoms(form);
    form.tick(180_000);
    await put('Second try, standing 1 min', '112', '79');
    expect(form.wrapper.text()).toContain('Standing counts, with the caution');
    expect(form.wrapper.text()).toContain('Second try, standing 1 min');
    await form.tap('All the rest met');
    await form.tap('Free, on their own');
    await form.tap('Stage met, go on');
    await form.tap('Stop before this');
    await form.tap('Record this check');
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    const standing = data.readings.filter((r) => r.kind === 'pressure' && r.posture === 'standing');
    expect(standing.map((r) => r.kind === 'pressure' && [r.systolic, r.minute])).toEqual([
      [108, 1],
      [112, 1],
    ]);
    expect(Date.parse(standing[1]!.at) - Date.parse(standing[0]!.at)).toBe(180_000);
  });

  it('more oxygen than at the check before asks first', async () => {
    const form = given(stayRow(), 'nurse', { oxygenFlowBefore: 2 });
    await form.tap(WITHOUT_SET);
    await form.type('saturation', '96');
    await form.type('oxygen given', '2');
    expect(form.wrapper.text()).not.toContain('Ask first');
    await form.type('oxygen given', '3');
    expect(form.wrapper.text()).toContain('Ask first');
    expect(form.wrapper.text()).toContain('more oxygen than at the last check (2 to 3 litres a minute)');
  });
});

describe('where the check begins', () => {
  const suggested = (from: string, depth: 'full' | 'full-with-pressure' = 'full') =>
    stayRow({
      nextCheck: { depth, from, because: [{ rule: 'next', facts: [], words: 'Edge was cleared today' }] },
    });

  it('is every stage in order unless a later one, that the rules suggest, is chosen by hand', async () => {
    const form = given(suggested('stand'));
    expect(form.wrapper.text()).toContain('Suggested: Full, from Stand');
    await form.tap(WITHOUT_SET);
    await clear(form);
    expect(form.wrapper.find('h3.title').text()).toBe('Upright');
  });

  it('asks the first stage all the same, then goes on at the suggested one; what lies between is "not tested"', async () => {
    const form = given(suggested('stand'));
    await form.tap('Clear, then Stand');
    await form.tap(WITHOUT_SET);
    expect(form.wrapper.find('h3.title').text()).toBe('Clear');
    expect(form.wrapper.text()).toContain('then on at Stand');
    await clear(form);
    expect(form.wrapper.find('h3.title').text()).toBe('Stand');
    await form.tap('Back');
    expect(form.wrapper.find('h3.title').text()).toBe('Clear');
    await form.tap('Stage met, go on');
    await wellDone(form, true);
    await form.tap('Stop before this');
    expect(form.wrapper.text()).toContain('passed over: what was found before stands');
    await form.tap('Record this check');
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(data.stages.map((s) => [s.stage, s.outcome])).toEqual([
      ['clear', 'met'],
      ['upright', 'not-tested'],
      ['edge', 'not-tested'],
      ['stand', 'met'],
    ]);
    expect(data.stages[1]!.findings.every((f) => f.result === 'not-tested')).toBe(true);
    expect(form.wrapper.text()).not.toContain('cannot be recorded');
  });

  it('leaves the stages passed over out when the check stops before the suggested one', async () => {
    const form = given(suggested('stand'));
    await form.tap('Clear, then Stand');
    await form.tap(WITHOUT_SET);
    await clear(form);
    await form.tap('Stop before this');
    await form.tap('Record this check');
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(data.stages.map((s) => s.stage)).toEqual(['clear']);
  });

  it.each(['clear', 'upright'])('offers no shortcut to %s, and none past a pressure set', (from) => {
    expect(given(suggested(from)).wrapper.text()).not.toContain('Where to begin');
    const whole = given(suggested('stand', 'full-with-pressure')).wrapper.text();
    expect(whole).not.toContain('Where to begin');
    expect(whole).toContain('Needed now: full, with pressure set (Edge was cleared today)');
  });
});
