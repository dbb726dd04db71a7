/** The service worker's registration. Where a browser allows none (plain http), the program works as a page. */

const SCRIPT = '/sw.js';

interface ScriptUrlPolicy {
  createScriptURL(url: string): unknown;
}
interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): ScriptUrlPolicy;
}

/** Its path, as the content policy wants it: by a policy that lets no other path through (W3C Trusted Types). */
function ownScript(): string {
  const types = (window as { trustedTypes?: TrustedTypes }).trustedTypes;
  if (!types) return SCRIPT;
  const policy = types.createPolicy('footboard-worker', {
    createScriptURL(url) {
      if (url !== SCRIPT) throw new TypeError('only the service worker of this program');
      return url;
    },
  });
  return policy.createScriptURL(SCRIPT) as string;
}

/** Never throws; null where there is none. */
export async function registerWorker(): Promise<ServiceWorkerRegistration | null> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return null;
  try {
    return await navigator.serviceWorker.register(ownScript(), { scope: '/' });
  } catch {
    return null;
  }
}
