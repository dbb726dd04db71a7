/** From a request's cookies (or a socket's handshake) to an Identity. Believes nothing that is not proven. */
import { staffId } from '@footboard/shared/kernel/ids';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { STAFF_HEADER } from '../capabilities/people/author-policy.ts';
import type { Cookies } from './cookies.ts';
import type { Identity, KnownDevice, KnownPerson } from './identity.ts';
import type { Devices, Sessions, Signing } from './ports.ts';

type Headers = Readonly<Record<string, string | readonly string[] | undefined>>;

export interface Identify {
  /**
   * @param address of the other end of the connection; used only to count requests.
   * @param seen `quietly` for a look that nobody asked for: it puts off no idle end of a session.
   */
  of(headers: Headers, address: string, seen?: 'quietly'): Promise<Identity>;
}
export const IDENTIFY = Symbol('Identify');

const one = (headers: Headers, name: string): string | undefined => {
  const value = headers[name];
  return typeof value === 'string' ? value : undefined;
};
const claimIn = (headers: Headers): StaffId | null => {
  const read = staffId.safeParse(one(headers, STAFF_HEADER));
  return read.success ? read.data : null;
};

/** Sign-in is off: the header is believed. Only the demo and tests start a server so. */
export const identifyOpenly: Identify = {
  of: async (headers, address) => ({
    access: 'open',
    person: null,
    device: null,
    claimed: claimIn(headers),
    ranOut: false,
    origin: `address ${address}`,
  }),
};

export function identifyBy(
  cookies: Cookies,
  { sessions, devices, signing }: { sessions: Sessions; devices: Devices; signing: Signing },
): Identify {
  async function deviceOf(headers: { cookie?: string | undefined }): Promise<KnownDevice | null> {
    const key = cookies.read(headers, 'device');
    return key === null ? null : devices.device(key);
  }
  return {
    async of(all, address, seen) {
      const headers = { cookie: one(all, 'cookie') };
      const device = await deviceOf(headers);
      const token = cookies.read(headers, 'session');
      const found = token === null ? null : await sessions.person(token, seen);
      let person: KnownPerson | null = found && !('ranOut' in found) ? found : null;
      const ranOut = found && 'ranOut' in found ? found.ranOut : null;
      // A short code signed on this device stands before a session that is open on it: it is newer.
      const signed = device?.kind === 'shared' ? cookies.read(headers, 'signing') : null;
      if (device && signed !== null) person = (await signing.person(signed, device)) ?? person;
      const claimed = claimIn(all);
      return {
        access: 'accounts',
        person,
        device,
        // With somebody signed in: whose entry it is said to be, to be held against who sends it.
        // Otherwise a session that ran out speaks for its own person only.
        claimed: person
          ? claimed
          : device?.kind === 'shared'
            ? (claimed ?? ranOut)
            : claimed === null || claimed === ranOut
              ? ranOut
              : null,
        ranOut: ranOut !== null,
        origin: device
          ? `device ${device.device}`
          : person?.session
            ? `session ${person.session}`
            : `address ${address}`,
      };
    },
  };
}
