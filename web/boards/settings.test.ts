import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { boardRow, bedRow } from '../board/rows.testkit.ts';
import BedList from '../capabilities/wards/BedList.vue';
import ClockForm from '../capabilities/wards/ClockForm.vue';
import DocumentCard from '../capabilities/wards/DocumentCard.vue';
import { checkRules, rulesFacts } from '../capabilities/wards/document-facts.ts';

let page: VueWrapper | null = null;
let sent: { name: string; data: unknown; id: string }[] = [];
let answer: () => Response | Promise<Response>;
const accepted = () =>
  Response.json({
    commandId: 'c1',
    outcome: 'accepted',
    position: 9,
    events: [],
    shown: true,
    repeated: false,
  });
const refused = () =>
  Response.json(
    {
      type: '/problems/not-your-role',
      title: 'Not for this role',
      status: 422,
      detail: '"change ward" is not for the role aide',
      remedy: 'Ask an administrator, the manager or the charge nurse.',
    },
    { status: 422 },
  );

beforeEach(() => {
  setActivePinia(createPinia());
  sent = [];
  answer = accepted;
  vi.stubGlobal('fetch', (path: string, init: RequestInit) => {
    const body = JSON.parse(init.body as string) as { data: unknown; commandId: string };
    sent.push({ name: path.split('/').at(-1)!, data: body.data, id: body.commandId });
    return Promise.resolve().then(answer);
  });
});
afterEach(() => {
  page?.unmount();
  page = null;
  vi.unstubAllGlobals();
});

const field = (label: string) => {
  const found = page!.findAll('.field').find((one) => one.find('label').text() === label);
  return found!.find<HTMLInputElement>('input, textarea');
};
const press = async (form = 'form') => {
  await page!.find(form).trigger('submit');
  await flushPromises();
};

describe('name and clock', () => {
  const show = () => (page = mount(ClockForm, { props: { ward: 'w1', board: boardRow([]) } }));

  it('sends only what was changed', async () => {
    show();
    await field('Night begins').setValue('22:30');
    await press();
    expect(sent).toMatchObject([{ name: 'change-ward', data: { nightFrom: '22:30' } }]);
    expect(page!.find('[role="status"]').text()).toBe('Saved.');
  });
  it('names a zone that does not exist, and sends nothing', async () => {
    show();
    await field('Time zone').setValue('Europe/Nowhere');
    await press();
    expect(page!.find('[role="alert"]').text()).toContain('written like Europe/Lisbon');
    expect(sent).toEqual([]);
  });
  it('tells who may not whom to ask', async () => {
    answer = refused;
    show();
    await field('Name of the ward').setValue('Other');
    await press();
    expect(page!.find('[role="alert"]').text()).toContain(
      'Ask an administrator, the manager or the charge nurse.',
    );
    expect(page!.text()).not.toContain('Saved.');
  });
  it('shows what somebody else changed, but keeps the field under change here', async () => {
    show();
    await field('Name of the ward').setValue('Mine');
    await page!.setProps({ board: boardRow([], { name: 'Theirs', nightTo: '06:00' }) });
    expect(field('Name of the ward').element.value).toBe('Mine');
    expect(field('Night ends').element.value).toBe('06:00');
  });
});

describe('beds', () => {
  it('offers to close only an empty bed', () => {
    page = mount(BedList, { props: { ward: 'w1', beds: [bedRow('A1'), bedRow('A2', null)] } });
    const names = page.findAll('button').map((button) => button.attributes('aria-label'));
    expect(names).toContain('Close bed A2');
    expect(names).not.toContain('Close bed A1');
  });
});

describe('publishing a document', () => {
  const show = () => {
    page = mount(DocumentCard, {
      props: {
        ward: 'w1',
        title: 'Rules',
        command: 'publish-rules',
        document: DEFAULT_RULES,
        fileName: 'rules-1.json',
        published: false,
        facts: rulesFacts,
        check: checkRules,
        next: 'Write version 2.',
      } as never,
    });
    return page;
  };
  const next = { ...structuredClone(DEFAULT_RULES), version: 2 };

  it('shows each fault with its place and reason, and offers no way to publish', async () => {
    show();
    await field('Or the text of it').setValue(JSON.stringify({ ...next, start: {} }));
    await press();
    expect(page!.find('[role="alert"]').text()).toMatch(/\/start\/systolicBelow: .+/);
    expect(page!.text()).not.toContain('Publish it for this ward');
  });
  it('publishes what was checked, after showing what differs', async () => {
    show();
    await field('Or the text of it').setValue(JSON.stringify(next));
    await press();
    expect(sent).toEqual([]);
    expect(page!.text()).toContain('/version: 1, then 2');
    const publish = page!.findAll('button').find((b) => b.text() === 'Publish it for this ward')!;
    await publish.trigger('click');
    await flushPromises();
    expect(sent).toMatchObject([{ name: 'publish-rules', data: { document: next } }]);
    expect(page!.emitted('published')).toHaveLength(1);
  });
  it('takes the offer back when the text is changed after the check', async () => {
    show();
    await field('Or the text of it').setValue(JSON.stringify(next));
    await press();
    await field('Or the text of it').setValue('{}');
    expect(page!.text()).not.toContain('Publish it for this ward');
  });
  it('downloads the document in force as it would be published', () => {
    const href = show().find('a.download').attributes('href')!;
    expect(JSON.parse(decodeURIComponent(href.split(',').slice(1).join(',')))).toEqual(DEFAULT_RULES);
  });
});
