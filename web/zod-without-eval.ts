/**
 * Stands for 'zod' in the browser's bundle (vite.config.ts). zod tries out whether it may make code
 * from text; the server's policy forbids that (script-src 'self', Trusted Types), and the browser
 * would report each try. Said before the first schema is made, it is not tried.
 */
import { config } from 'zod/v4';

config({ jitless: true });

export * from 'zod/v4';
export { z } from 'zod/v4';
