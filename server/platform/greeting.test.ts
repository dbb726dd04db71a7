import { describe, expect, it } from 'vitest';
import { readConfig } from './config.ts';
import { greeting } from './greeting.ts';
import type { GreetingParts } from './greeting.ts';

const said = (parts: Partial<GreetingParts>) =>
  greeting({
    url: 'http://localhost:4000',
    config: readConfig({}),
    boards: { wards: () => [], snapshot: () => null },
    demo: false,
    kind: 'postgres',
    open: false,
    firstRunLink: null,
    ...parts,
  });

describe('the lines of a start', () => {
  it('ACCOUNT-2 given nobody can sign in, they show the link on a line of its own and what it does', () => {
    const lines = said({ firstRunLink: 'http://localhost:4000/join#abc' }).split('\n');
    expect(lines).toContain('  http://localhost:4000/join#abc');
    expect(lines.join('\n')).toMatch(/becomes the first administrator; it works once, for 24 hours/);
  });

  it('given somebody can, they show none', () => {
    expect(said({})).not.toContain('/join');
  });

  it('given sign-in is off beyond this machine, they say so; with accounts they do not', () => {
    const config = readConfig({ HOST: '0.0.0.0', ALLOW_PLAIN_HTTP: '1' });
    expect(said({ config, open: true })).toContain('Sign-in is off: whoever reaches this address');
    expect(said({ config })).not.toContain('Sign-in is off');
    expect(said({ open: true })).not.toContain('Sign-in is off');
  });
});
