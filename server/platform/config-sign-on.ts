/** The settings of single sign-on (OpenID Connect). All of them hang on OIDC_ISSUER. */
import { existsSync } from 'node:fs';
import { z } from 'zod';
import { StartRefused } from './start-refused.ts';

export interface SingleSignOnSettings {
  readonly issuer: string;
  readonly clientId: string;
  /** The secret itself is only in this file. Left out: a public client, which PKCE alone protects. */
  readonly clientSecretFile?: string;
  /** What stands on the button. */
  readonly label: string;
  /** Asked of the provider, "openid" among them. */
  readonly scope: string;
  readonly groupsClaim: string;
  /** JSON: which group gives which role on which ward. */
  readonly rolesFile: string;
  /** Where people open Footboard: an origin, without a slash at the end. */
  readonly publicUrl: string;
}

const HERE = /^(localhost|127(\.\d{1,3}){3}|::1|\[::1\])$/;
/** Whether a host is this machine and nobody else's. */
export const isHere = (host: string): boolean => HERE.test(host);
/** What is said in clear may only be said within this machine. */
export const httpsOrHere = (text: string): boolean => {
  if (!URL.canParse(text)) return false;
  const { protocol, hostname } = new URL(text);
  return protocol === 'https:' || (protocol === 'http:' && isHere(hostname));
};

const file = (what: string) =>
  z.string().refine((path) => existsSync(path), `no such file: write the path of ${what}`);

export const singleSignOnSettings = {
  OIDC_ISSUER: z
    .string()
    .refine(httpsOrHere, 'write the address of the provider, like https://sign-on.ward.example')
    .optional(),
  OIDC_CLIENT_ID: z.string().optional(),
  OIDC_CLIENT_SECRET_FILE: file('the file that holds the client secret and nothing else').optional(),
  OIDC_LABEL: z.string().max(40, 'write at most 40 characters').default('Sign in with your work account'),
  OIDC_SCOPE: z
    .string()
    .refine(
      (text) => text.split(' ').includes('openid'),
      'write the scopes with a space between, "openid" among them, for example OIDC_SCOPE="openid profile"',
    )
    .default('openid profile'),
  OIDC_GROUPS_CLAIM: z.string().default('groups'),
  OIDC_ROLES_FILE: file('the JSON file that says which group gives which role').optional(),
} as const;

interface Read {
  readonly PUBLIC_URL?: string | undefined;
  readonly OIDC_ISSUER?: string | undefined;
  readonly OIDC_CLIENT_ID?: string | undefined;
  readonly OIDC_CLIENT_SECRET_FILE?: string | undefined;
  readonly OIDC_LABEL: string;
  readonly OIDC_SCOPE: string;
  readonly OIDC_GROUPS_CLAIM: string;
  readonly OIDC_ROLES_FILE?: string | undefined;
}

/** @throws StartRefused when one of them is missing. */
export function readSingleSignOn(e: Read): SingleSignOnSettings | null {
  const { OIDC_ISSUER: issuer, OIDC_CLIENT_ID: clientId, OIDC_ROLES_FILE: rolesFile } = e;
  const { PUBLIC_URL: publicUrl, OIDC_CLIENT_SECRET_FILE: clientSecretFile } = e;
  if (issuer === undefined) {
    const alone = (['OIDC_CLIENT_ID', 'OIDC_CLIENT_SECRET_FILE', 'OIDC_ROLES_FILE'] as const).find(
      (name) => e[name] !== undefined,
    );
    if (alone === undefined) return null;
    throw new StartRefused(
      `OIDC_ISSUER is not set while ${alone} is: write the address of the provider, or leave both out`,
    );
  }
  if (clientId === undefined || rolesFile === undefined || publicUrl === undefined) {
    const missing = Object.entries({
      OIDC_CLIENT_ID: clientId,
      OIDC_ROLES_FILE: rolesFile,
      PUBLIC_URL: publicUrl,
    }).flatMap(([name, value]) => (value === undefined ? [name] : []));
    throw new StartRefused(
      `OIDC_ISSUER is set and ${missing.join(' and ')} not: single sign-on needs OIDC_CLIENT_ID, OIDC_ROLES_FILE and PUBLIC_URL`,
    );
  }
  return {
    issuer,
    clientId,
    rolesFile,
    publicUrl,
    label: e.OIDC_LABEL,
    scope: e.OIDC_SCOPE,
    groupsClaim: e.OIDC_GROUPS_CLAIM,
    ...(clientSecretFile === undefined ? {} : { clientSecretFile }),
  };
}
