// Load process: screens on wards, commands at a fixed pace, and for each command the time from its
// request leaving to the first patch that holds it arriving, on every screen of its ward. Screens
// read only the head of a message, so that the load does not measure its own JSON.
import { randomUUID } from 'node:crypto';
import { Agent, request } from 'node:http';
import { WebSocket } from 'ws';
import { percentile } from './table.mjs';

const agent = new Agent({ keepAlive: true, maxSockets: 64 });

export function post(url, path, body, headers = {}) {
  return new Promise((resolve, reject) => {
    const text = JSON.stringify(body);
    const out = request(
      new URL(path, url),
      { method: 'POST', agent, headers: { 'content-type': 'application/json', 'content-length': Buffer.byteLength(text), ...headers } },
      (response) => {
        let answer = '';
        response.setEncoding('utf8');
        response.on('data', (part) => (answer += part));
        response.on('end', () => {
          if (response.statusCode === 200) resolve(JSON.parse(answer));
          else reject(new Error(`${path}: ${response.statusCode} ${answer.slice(0, 400)}`));
        });
      },
    ); // prettier-ignore
    out.on('error', (error) => {
      // The server closed an idle kept connection just as it was used: any client asks again.
      if (out.reusedSocket && error.code === 'ECONNRESET')
        post(url, path, body, headers).then(resolve, reject);
      else reject(error);
    });
    out.end(text);
  });
}

/** One command's body around its data. */
export const command = (data) => {
  const at = new Date().toISOString();
  return {
    commandId: randomUUID(), occurred: { at }, entered: { at, offsetMinutes: 0 }, source: { kind: 'person' },
    expect: 'latest', data,
  }; // prettier-ignore
};
export const sessionOf = (stay) => ({
  stay,
  session: {
    outcome: 'done', occasion: 'planned', activities: ['chair'], startedAt: new Date().toISOString(),
    minutesOutOfBed: 20, events: [], firstTimeUp: false,
  },
}); // prettier-ignore

const HEAD = /"p":(\d+)/;

/** A socket.io screen over a bare web socket: connect, join, then note each patch's position and time. */
function openScreen(url, ward) {
  return new Promise((resolve, reject) => {
    const socket = new WebSocket(`${url.replace('http', 'ws')}/socket.io/?EIO=4&transport=websocket`, {
      perMessageDeflate: false,
    });
    const screen = { ward, seen: [], bytes: 0, first: null, close: () => socket.close() };
    socket.on('error', reject);
    socket.on('message', (data) => {
      const kind = data[0];
      if (kind === 50) socket.send('3');
      else if (kind === 48) socket.send('40');
      else if (kind === 52 && data[1] === 48) {
        const ask = { requestId: randomUUID(), wireVersion: 3, ward, feed: null };
        socket.send(`420["join",${JSON.stringify(ask)}]`);
      } else if (kind === 52 && data[1] === 51) resolve(screen);
      else if (kind === 52 && data.subarray(2, 10).toString('latin1') === '["patch"') {
        const at = performance.now();
        const position = Number(HEAD.exec(data.toString('latin1', 10, 400))?.[1]);
        screen.seen.push([position, at]);
        screen.bytes += data.length;
        screen.first ??= data.toString('utf8', 2);
      }
    });
  });
}

export async function measure({ kind, url, wards, screensPerWard, perSecond, seconds }) {
  const screens = await Promise.all(
    wards.flatMap(({ ward }) => Array.from({ length: screensPerWard }, () => openScreen(url, ward))),
  );
  const sent = [];
  const total = perSecond * seconds;
  const started = performance.now();
  const one = async (n) => {
    const { ward, stays } = wards[n % wards.length];
    const stay = stays[Math.floor(n / wards.length) % stays.length];
    const body = kind === 'bare' ? { ward } : command(sessionOf(stay));
    const path = kind === 'bare' ? '/' : `/api/wards/${ward}/commands/record-session`;
    const at = performance.now();
    const answer = await post(url, path, body, { 'x-footboard-staff': 'nurse-1' });
    sent.push({ ward, at, position: answer.position, answered: performance.now() - at });
  };
  const going = [];
  await new Promise((resolve) => {
    const step = () => {
      const due = Math.min(total, Math.floor(((performance.now() - started) * perSecond) / 1000) + 1);
      while (going.length < due) going.push(one(going.length));
      if (going.length < total) setTimeout(step, 2);
      else resolve();
    };
    step();
  });
  await Promise.all(going);
  const last = new Map();
  for (const { ward, position } of sent) last.set(ward, Math.max(last.get(ward) ?? 0, position));
  const arrived = () => screens.every(({ ward, seen }) => (seen.at(-1)?.[0] ?? 0) >= (last.get(ward) ?? 0));
  for (let waited = 0; waited < 200 && !arrived(); waited++)
    await new Promise((done) => setTimeout(done, 50));

  const latencies = [];
  let lost = 0;
  for (const screen of screens) {
    const own = sent.filter(({ ward }) => ward === screen.ward).toSorted((a, b) => a.position - b.position);
    let index = 0;
    for (const { position, at } of own) {
      while (index < screen.seen.length && screen.seen[index][0] < position) index++;
      if (index < screen.seen.length) latencies.push(screen.seen[index][1] - at);
      else lost++;
    }
  }
  for (const screen of screens) screen.close();
  const patches = screens.reduce((sum, { seen }) => sum + seen.length, 0);
  return {
    p50: percentile(latencies, 0.5),
    p99: percentile(latencies, 0.99),
    answered99: percentile(sent.map(({ answered }) => answered), 0.99),
    lost,
    commands: sent.length,
    bytesAPatch: Math.round(screens.reduce((sum, { bytes }) => sum + bytes, 0) / Math.max(1, patches)),
    patches,
    sample: screens[0]?.first ?? null,
  }; // prettier-ignore
}

if (process.argv[1] === import.meta.filename) {
  process.on('message', (task) => {
    measure(task).then(
      (result) => process.send({ result }),
      (error) => process.send({ error: String(error.stack ?? error) }),
    );
  });
  process.on('disconnect', () => process.exit(0));
}
