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
    [{ FOOTBOARD_LOG: 'loud' }, /^FOOTBOARD_LOG is "loud": write one of fatal, error/],
  ])('refuses %o with a line that names it and says what to write', (env, line) => {
    const said = refusal(env as Record<string, string>);
    expect(said).toMatch(line);
    expect(said).not.toContain('\n');
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
