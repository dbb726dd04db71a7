import { describe, expect, it } from 'vitest';
import { readConfig } from './config.ts';
import { StartRefused } from './start-refused.ts';

const refusal = (env: Record<string, string>): string => {
  try {
    readConfig(env);
  } catch (error) {
    expect(error).toBeInstanceOf(StartRefused);
    return (error as Error).message;
  }
  return 'not refused';
};

describe('settings from the environment', () => {
  it('needs nothing: port 4000 on this machine only, data beside the program', () => {
    expect(readConfig({})).toEqual({
      port: 4000,
      host: '127.0.0.1',
      behindTlsProxy: false,
      allowPlainHttp: false,
      dataDir: './data',
      sessionIdleMs: 30 * 60_000,
      sessionMs: 12 * 3_600_000,
      logLevel: 'info',
    });
  });

  it('takes an empty variable as not set', () => {
    expect(readConfig({ PORT: '', DATABASE_URL: '' }).port).toBe(4000);
  });

  it.each([
    [{ PORT: 'four thousand' }, /^PORT is "four thousand": write a port number .* PORT=4000$/],
    [{ PORT: '65536' }, /^PORT is "65536": /],
    [{ HOST: 'http://here/' }, /^HOST is "http:\/\/here\/": write the address to listen on/],
    [{ DATABASE_URL: 'mysql://db/ward' }, /^DATABASE_URL is not usable: write a PostgreSQL address/],
    [{ TLS_CERT_FILE: '/nowhere/cert.pem' }, /^TLS_CERT_FILE is "\/nowhere\/cert.pem": no such file/],
    [{ SESSION_IDLE_MINUTES: '0' }, /^SESSION_IDLE_MINUTES is "0": write after how many minutes/],
    [{ SESSION_HOURS: '25' }, /^SESSION_HOURS is "25": write after how many hours .*1 to 24/],
    [{ SESSION_HOURS: '1.5' }, /^SESSION_HOURS is "1.5": /],
    [{ KEEP_DAYS: '0' }, /^KEEP_DAYS is "0": write for how many days/],
    [{ KEEP_DAYS: 'ever' }, /^KEEP_DAYS is "ever": .*KEEP_DAYS=3650/],
    [{ FOOTBOARD_LOG: 'loud' }, /^FOOTBOARD_LOG is "loud": write one of fatal, error/],
  ])('refuses %o with a line that names it and says what to write', (env, line) => {
    const said = refusal(env as Record<string, string>);
    expect(said).toMatch(line);
    expect(said).not.toContain('\n');
  });

  const file = import.meta.filename;
  it.each([
    [
      { HOST: '0.0.0.0' },
      /^HOST is "0\.0\.0\.0", and nothing here ends TLS: set TLS_CERT_FILE .*ALLOW_PLAIN_HTTP=1/,
    ],
    [{ NODE_ENV: 'production' }, /^NODE_ENV is "production", and nothing here ends TLS/],
    [{ PUBLIC_URL: 'http://board.ward.example' }, /^PUBLIC_URL is not usable: write the address people open/],
    [{ PUBLIC_URL: 'https://ward.example/board' }, /^PUBLIC_URL is .*without a path/],
    [{ OIDC_ISSUER: 'http://sign-on.ward.example' }, /^OIDC_ISSUER is not usable: .*like https:/],
    [{ OIDC_CLIENT_ID: 'board' }, /^OIDC_ISSUER is not set while OIDC_CLIENT_ID is/],
    [
      { OIDC_ISSUER: 'https://sign-on.ward.example', OIDC_CLIENT_ID: 'board' },
      /^OIDC_ISSUER is set and OIDC_ROLES_FILE and PUBLIC_URL not/,
    ],
    [{ OIDC_SCOPE: 'profile' }, /^OIDC_SCOPE is "profile": .*"openid" among them/],
    [{ OIDC_CLIENT_SECRET_FILE: '/nowhere/secret' }, /^OIDC_CLIENT_SECRET_FILE is .*: no such file/],
  ])('START-4 given %o, which would not be safe or not work, then it refuses', (env, line) => {
    const said = refusal(env as Record<string, string>);
    expect(said).toMatch(line);
    expect(said).not.toContain('\n');
  });

  it.each([
    { HOST: '0.0.0.0', ALLOW_PLAIN_HTTP: '1' },
    { HOST: '0.0.0.0', BEHIND_TLS_PROXY: '1' },
    { HOST: '0.0.0.0', TLS_CERT_FILE: file, TLS_KEY_FILE: file },
    { HOST: '::1' },
    { HOST: 'localhost' },
    { NODE_ENV: 'production', BEHIND_TLS_PROXY: '1' },
  ])(
    'given %o, where plain HTTP stays within this machine or somebody answers for it, then it goes on',
    (env) => {
      expect(refusal(env as Record<string, string>)).toBe('not refused');
    },
  );

  it('reads single sign-on, a public client when no secret is given', () => {
    const env = {
      OIDC_ISSUER: 'https://sign-on.ward.example',
      OIDC_CLIENT_ID: 'board',
      OIDC_ROLES_FILE: file,
      PUBLIC_URL: 'https://board.ward.example/',
    };
    expect(readConfig(env).singleSignOn).toEqual({
      issuer: 'https://sign-on.ward.example',
      clientId: 'board',
      rolesFile: file,
      publicUrl: 'https://board.ward.example',
      label: 'Sign in with your work account',
      scope: 'openid profile',
      groupsClaim: 'groups',
    });
  });

  it('refuses a certificate without a key', () => {
    const anyFile = import.meta.filename;
    expect(refusal({ TLS_CERT_FILE: anyFile })).toBe(
      'TLS_KEY_FILE is not set while TLS_CERT_FILE is: write both for HTTPS, or neither for plain HTTP',
    );
  });

  it('never prints a password that stands in an address', () => {
    expect(refusal({ DATABASE_URL: 'mysql://ward:hushhush@db/ward' })).not.toContain('hushhush');
  });
});
