// One wall that notes when each heartbeat arrives, and nothing else.
import { randomUUID } from 'node:crypto';
import { WIRE_VERSION } from '@footboard/shared/wire/messages';
import { WebSocket } from 'ws';

const EVERY_MS = 2_000;

function beats({ url, ward, seconds }) {
  return new Promise((resolve, reject) => {
    const socket = new WebSocket(`${url.replace('http', 'ws')}/socket.io/?EIO=4&transport=websocket`, {
      perMessageDeflate: false,
    });
    const arrived = [];
    socket.on('error', reject);
    socket.on('message', (data) => {
      const at = performance.now();
      const text = data.toString('utf8', 0, 16);
      if (text[0] === '2') socket.send('3');
      else if (text[0] === '0') socket.send('40');
      else if (text.startsWith('40')) {
        const ask = { requestId: randomUUID(), wireVersion: WIRE_VERSION, ward, feed: null };
        socket.send(`420["join",${JSON.stringify(ask)}]`);
      } else if (text.startsWith('42["beat"')) arrived.push(at);
    });
    setTimeout(() => {
      socket.close();
      // A beat that has not come by now is late as well.
      const due = [...arrived, Math.max(performance.now(), arrived.at(-1) + EVERY_MS)];
      const late = due.slice(1).map((at, i) => Math.max(0, at - due[i] - EVERY_MS));
      if (arrived.length < 2) reject(new Error(`${arrived.length} beats in ${seconds} s`));
      else resolve(late);
    }, seconds * 1_000);
  });
}

process.on('message', (task) => {
  beats(task).then(
    (late) => process.send({ late }),
    (error) => process.send({ error: String(error) }),
  );
});
