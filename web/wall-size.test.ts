// @vitest-environment node
import { build, type Rolldown } from 'vite';
import { describe, expect, it, onTestFinished, vi } from 'vitest';

const compressed = async (code: string): Promise<number> => {
  const packed = new Blob([code]).stream().pipeThrough(new CompressionStream('gzip'));
  return (await new Response(packed).arrayBuffer()).byteLength;
};

/** Everything the browser must load for a chunk: the chunk and what it imports, and so on. */
function closure(chunks: ReadonlyMap<string, Rolldown.OutputChunk>, from: readonly string[]): Set<string> {
  const found = new Set<string>();
  const visit = (name: string) => {
    if (found.has(name)) return;
    found.add(name);
    chunks.get(name)?.imports.forEach(visit);
  };
  from.forEach(visit);
  return found;
}

describe('the wall’s download', () => {
  it('SCREEN-12 is under 150 KB of JavaScript, compressed', { timeout: 120_000 }, async () => {
    const root = import.meta.dirname;
    // As `npm run build` builds it: else Vue's warnings for developers are counted too.
    vi.stubEnv('NODE_ENV', 'production');
    onTestFinished(() => void vi.unstubAllEnvs());
    const built = (await build({
      root,
      configFile: `${root}/vite.config.ts`,
      logLevel: 'silent',
      build: { write: false },
    })) as Rolldown.RolldownOutput;
    const chunks = new Map(
      built.output.flatMap((one) => (one.type === 'chunk' ? [[one.fileName, one] as const] : [])),
    );
    const entry = [...chunks.values()].find((chunk) => chunk.isEntry);
    const wall = [...chunks.values()].find((chunk) => chunk.facadeModuleId?.endsWith('WallPage.vue'));
    const names = closure(chunks, [entry!.fileName, wall!.fileName]);
    let bytes = 0;
    for (const name of names) bytes += await compressed(chunks.get(name)!.code);
    expect(names.size).toBeGreaterThan(1);
    expect(bytes).toBeLessThan(150_000);
  });
});
