// The least that could carry a change to screens: an HTTP post in, one socket.io room emit out.
import { createServer } from 'node:http';
import { Server } from 'socket.io';

let sample = {};
let count = 0;
const http = createServer((request, response) => {
  let body = '';
  request.on('data', (part) => (body += part));
  request.on('end', () => {
    const told = JSON.parse(body);
    if (request.url === '/sample') sample = told;
    else {
      count++;
      io.to(told.ward).emit('patch', { ...sample, ward: told.ward, from: count - 1, to: count, p: count });
    }
    response.setHeader('content-type', 'application/json');
    response.end(JSON.stringify({ position: count }));
  });
});
const io = new Server(http, { transports: ['websocket'], perMessageDeflate: false, serveClient: false });
io.on('connection', (socket) => {
  socket.on('join', ({ ward }, answer) => {
    void socket.join(ward);
    answer({ answer: 'snapshot' });
  });
});
http.listen(0, '127.0.0.1', () => process.send({ url: `http://127.0.0.1:${http.address().port}` }));
process.on('disconnect', () => process.exit(0));
