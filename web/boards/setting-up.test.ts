/** Setting up a ward: its name and beds in one command, then its staff. */
import { flushPromises } from '@vue/test-utils';
import { describe, expect, it, vi } from 'vitest';
import { screensAnew, show } from './screens.testkit.ts';
import SetUpPage from './SetUpPage.vue';

screensAnew();

/** A server that keeps what was sent, and whose network can be cut. */
const sent = () => {
  const bodies: { path: string; data: Record<string, unknown>; id: unknown }[] = [];
  let reachable = true;
  vi.stubGlobal('fetch', (path: string, init?: RequestInit) => {
    if (!init?.body) return Promise.resolve(Response.json({ staff: [] }));
    const body = JSON.parse(init.body as string) as { data: Record<string, unknown>; commandId: string };
    bodies.push({ path, data: body.data, id: body.commandId });
    if (!reachable) return Promise.reject(new TypeError('network'));
    return Promise.resolve(
      Response.json({
        commandId: body.commandId,
        outcome: 'accepted',
        position: 1,
        events: [],
        shown: true,
        repeated: false,
      }),
    );
  });
  return { bodies, cut: () => (reachable = false), mend: () => (reachable = true) };
};

describe('setting up a ward', () => {
  it('says that the built-in storage is for trial', async () => {
    sent();
    expect((await show(SetUpPage, {})).text()).toMatch(
      /trial: a power cut may lose the last seconds.*DATABASE_URL/s,
    );
  });

  it('given no name, names the field and sends nothing', async () => {
    const { bodies } = sent();
    const screen = await show(SetUpPage, {});
    await screen.find('form').trigger('submit');
    expect(screen.find('[role="alert"]').text()).toBe('give it a name');
    expect(bodies).toHaveLength(0);
  });

  it('sends one ward with 24 beds, then asks for the staff', async () => {
    const { bodies } = sent();
    const screen = await show(SetUpPage, {});
    await screen.find('input').setValue('Heron ward');
    await screen.find('form').trigger('submit');
    await flushPromises();
    expect(bodies).toHaveLength(1);
    expect(bodies[0]!.path).toMatch(/^\/api\/wards\/[\w-]+\/commands\/set-up-ward$/);
    expect(bodies[0]!.data['beds']).toHaveLength(24);
    expect(screen.text()).toContain('Add first somebody who may keep this list');
  });

  it('SCREEN-9 given no answer, a second tap sends the same command again', async () => {
    const { bodies, cut, mend } = sent();
    const screen = await show(SetUpPage, {});
    await screen.find('input').setValue('Heron ward');
    cut();
    await screen.find('form').trigger('submit');
    await vi.advanceTimersByTimeAsync(5_000);
    mend();
    await screen.find('form').trigger('submit');
    await flushPromises();
    expect(new Set(bodies.map((b) => b.id)).size).toBe(1);
    expect(screen.text()).toContain('Heron ward is set up');
  });
});
