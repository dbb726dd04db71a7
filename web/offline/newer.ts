/**
 * A newer version of the program: it is fetched beside the one that runs and waits. It is taken when
 * a person says so, by the "old page" notice, or by a wall at a calm moment; never in the middle of
 * an entry.
 */
import { readonly, ref } from 'vue';
import { registerWorker } from './worker.ts';

const LOOK_EVERY_MS = 60 * 60_000;
/** The board comes first: the files are fetched once it is drawn. Common practice, no source. */
const BEGIN_AFTER_MS = 2_000;
const TAKES_AT_MOST_MS = 15_000;

const ready = ref(false);
/** True while a newer version waits to be taken. */
export const newerReady = readonly(ready);
let registration: ServiceWorkerRegistration | null = null;
let taking = false;

function watchFor(found: ServiceWorkerRegistration): void {
  const judge = () => {
    // The first version ever has nobody to wait for.
    if (found.waiting && navigator.serviceWorker.controller) ready.value = true;
  };
  judge();
  found.addEventListener('updatefound', () => found.installing?.addEventListener('statechange', judge));
}

async function begin(): Promise<void> {
  registration = await registerWorker();
  if (!registration) return;
  watchFor(registration);
  setInterval(() => void registration?.update().catch(() => undefined), LOOK_EVERY_MS);
}

/** Called once, at the start of the program. */
export function keepProgram(): void {
  let controlled = Boolean(navigator.serviceWorker?.controller);
  navigator.serviceWorker?.addEventListener('controllerchange', () => {
    if (taking) window.location.reload();
    // Another window took it: this one runs on with what it has until somebody reloads it.
    else if (controlled) ready.value = true;
    controlled = true;
  });
  setTimeout(() => void begin(), BEGIN_AFTER_MS);
}

const later = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

async function installed(of: ServiceWorkerRegistration): Promise<void> {
  const coming = of.installing;
  if (!coming) return;
  await Promise.race([
    new Promise<void>((done) => coming.addEventListener('statechange', () => done())),
    later(TAKES_AT_MOST_MS),
  ]);
}

/** Reloads with the newest version there is; without a service worker that is what the server gives. */
export async function takeNewest(): Promise<void> {
  const { location } = window;
  if (!registration) return location.reload();
  await Promise.race([registration.update().catch(() => undefined), later(TAKES_AT_MOST_MS)]);
  await installed(registration);
  if (!registration.waiting) return location.reload();
  taking = true;
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no other origin
  registration.waiting.postMessage({ type: 'SKIP_WAITING' });
  // It answers by taking over the page; a browser that does not is asked no further.
  await later(TAKES_AT_MOST_MS);
  location.reload();
}
