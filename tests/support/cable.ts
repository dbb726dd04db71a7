import { createServer, connect, type Server, type Socket } from 'node:net';
import { once } from 'node:events';

/**
 * A cable between two programs, to be pulled: a TCP relay on its own port. Pulled, bytes vanish
 * without a word (no reset, no close), as with a real cable; plugged in again, broken connections end.
 */
export class Cable {
  private readonly ends = new Set<Socket>();
  private pulled = false;
  private constructor(
    private readonly server: Server,
    readonly port: number,
  ) {}

  static async between(toPort: number, toHost = '127.0.0.1'): Promise<Cable> {
    const server = createServer({ allowHalfOpen: false });
    server.listen(0, '127.0.0.1');
    await once(server, 'listening');
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('the relay has no port');
    const cable = new Cable(server, address.port);
    server.on('connection', (near) => cable.join(near, toPort, toHost));
    return cable;
  }

  pull(): void {
    this.pulled = true;
  }

  plugIn(): void {
    this.pulled = false;
    this.drop();
  }

  async close(): Promise<void> {
    this.drop();
    this.server.close();
    await once(this.server, 'close').catch(() => undefined);
  }

  private join(near: Socket, toPort: number, toHost: string): void {
    const far = connect(toPort, toHost);
    this.ends.add(near).add(far);
    const carry = (from: Socket, to: Socket) => {
      from.on('data', (bytes) => {
        if (!this.pulled) to.write(bytes);
      });
      from.on('error', () => undefined);
      from.on('close', () => {
        this.ends.delete(from);
        if (!this.pulled) to.destroy();
      });
    };
    carry(near, far);
    carry(far, near);
  }

  private drop(): void {
    for (const end of this.ends) end.destroy();
    this.ends.clear();
  }
}
