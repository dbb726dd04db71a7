// Asks the registry for known faults in what is installed to run (npm audit). Findings of high or
// critical severity fail. Where the registry keeps no audit service, or none is reached, it says NOT RUN
// and why: a missing answer is not a clean one, and not a reason to stop a build either.
import { spawnSync } from 'node:child_process';

const asked = ['audit', '--omit=dev', '--audit-level=high', '--json'];
const root = new URL('..', import.meta.url).pathname;
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const { stdout, status, error } = spawnSync(npm, asked, {
  cwd: root,
  encoding: 'utf8',
  maxBuffer: 64 * 1024 * 1024,
});

const { outcome, lines } = judge(stdout, status, error);
process.stdout.write(`${lines.join('\n')}\n`);
process.exitCode = outcome === 'findings' ? 1 : 0;

function judge(text, code, failed) {
  let told;
  try {
    told = JSON.parse(text);
  } catch {
    return notRun(failed?.message ?? `npm ended with code ${code} and no report`);
  }
  const counts = told?.metadata?.vulnerabilities;
  if (!counts) {
    const { error: trouble, message } = told ?? {};
    return notRun(trouble?.summary || message || trouble?.code || 'no report');
  }
  const said = ['critical', 'high', 'moderate', 'low'].map((grade) => `${counts[grade] ?? 0} ${grade}`);
  const first = `dependency audit of what is installed to run: ${said.join(', ')}`;
  const bad = Object.values(told.vulnerabilities ?? {}).filter(({ severity }) =>
    ['high', 'critical'].includes(severity),
  );
  if (bad.length === 0) return { outcome: 'clean', lines: [first] };
  const each = bad.map(({ name, severity, via }) => {
    const why = via.map((one) => (typeof one === 'string' ? one : one.title)).join('; ');
    return `  ${severity}  ${name}: ${why}`;
  });
  return { outcome: 'findings', lines: [first, ...each, 'Update them, then run it again: npm run audit'] };
}

function notRun(why) {
  // The registry's address is nobody's business in a build log.
  const plain = String(why)
    .replaceAll(/https?:\/\/\S+/g, '(address left out)')
    .split('\n')[0];
  return { outcome: 'not run', lines: [`dependency audit: NOT RUN (${plain})`] };
}
