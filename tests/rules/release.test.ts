import { execFile } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';

const root = join(import.meta.dirname, '..', '..');
const manifest = z.object({
  scripts: z.record(z.string(), z.string()).default({}),
  dependencies: z.record(z.string(), z.string()).default({}),
});
const read = (folder: string) =>
  manifest.parse(JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')));

interface Ran {
  readonly code: number;
  readonly out: string;
}
const run = (program: string, args: readonly string[], path = process.env['PATH'] ?? ''): Promise<Ran> =>
  new Promise((resolve) => {
    const options = { cwd: root, env: { ...process.env, PATH: path }, maxBuffer: 64 * 1024 * 1024 };
    execFile(program, args, options, (error, out) => {
      resolve({ code: error ? Number(error.code) : 0, out });
    });
  });

describe('the list of what a release is made of (CycloneDX)', () => {
  const bill = z.object({
    bomFormat: z.literal('CycloneDX'),
    specVersion: z.string().regex(/^1\.\d$/),
    components: z.array(z.object({ 'bom-ref': z.string(), purl: z.string() })),
  });

  it('given npm run sbom, then it names every direct dependency in its version', async () => {
    const [npm, ...args] = read('.').scripts['sbom']!.replace(/ > .*/, '').split(' ');
    const { code, out } = await run(npm!, args);
    expect(code).toBe(0);
    const listed = new Set(bill.parse(JSON.parse(out)).components.map((one) => one['bom-ref']));
    const direct = ['shared', 'server', 'web', 'demo'].flatMap((folder) =>
      Object.entries(read(folder).dependencies).map(([name, version]) => `${name}@${version}`),
    );
    expect(direct.length).toBeGreaterThan(20);
    expect(direct.filter((one) => !listed.has(one))).toEqual([]);
  });
});

describe('npm run audit', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'footboard-audit-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** The script with an npm that says what a registry could have said. */
  const audit = async (said: string, code: number) => {
    const npm = join(folder, 'npm');
    writeFileSync(join(folder, 'said'), said);
    writeFileSync(npm, `#!/bin/sh\ncat '${join(folder, 'said')}'\nexit ${code}\n`);
    chmodSync(npm, 0o755);
    return run(process.execPath, ['release/audit.mjs'], `${folder}${delimiter}${process.env['PATH']}`);
  };
  const report = (counts: object, vulnerabilities: object = {}) =>
    JSON.stringify({ vulnerabilities, metadata: { vulnerabilities: counts } });

  it('given no findings, then it says so and goes on', async () => {
    expect(await audit(report({ critical: 0, high: 0, moderate: 1, low: 0 }), 0)).toEqual({
      code: 0,
      out: 'dependency audit of what is installed to run: 0 critical, 0 high, 1 moderate, 0 low\n',
    });
  });

  it('given a grave finding, then it is named and the build fails', async () => {
    const via = [{ title: 'reads beyond the end' }, 'another'];
    const bad = { 'some-library': { name: 'some-library', severity: 'high', via } };
    const { code, out } = await audit(report({ high: 1 }, bad), 1);
    expect(code).toBe(1);
    expect(out).toContain('  high  some-library: reads beyond the end; another\n');
  });

  it.each([
    [
      'a registry without an audit service',
      JSON.stringify({ message: '405 Method Not Allowed - POST https://r.example/x' }),
    ],
    [
      'no registry',
      JSON.stringify({ error: { code: 'ENOTFOUND', summary: 'cannot reach https://r.example' } }),
    ],
    ['something that is no report', 'sorry'],
  ])('given %s, then it says NOT RUN and why, without the address', async (_what, said) => {
    const { code, out } = await audit(said, 1);
    expect(code).toBe(0);
    expect(out).toMatch(/^dependency audit: NOT RUN \(.+\)\n$/);
    expect(out).not.toContain('r.example');
  });
});
