/** The server's own log lines: JSON on standard error, ids only, never a name, a text or a reading. */
import type { LoggerService } from '@nestjs/common';
import { destination, pino } from 'pino';
import type { Logger } from 'pino';
import type { Config } from './config.ts';
import { saidError } from './said-error.ts';

export type { Logger };
export const LOGGER = Symbol('Logger');

/** Where lines go, one text with its newline at a time. */
export interface LogTo {
  write(line: string): void;
}

export const openLogger = (level: Config['logLevel'], to?: LogTo): Logger =>
  pino({ level, base: null, serializers: { err: saidError } }, to ?? destination({ fd: 2, sync: false }));

/** Nest speaks through the same logger; its start-up chatter counts as detail. */
export function nestLogger(logger: Logger): LoggerService {
  const say = (level: 'debug' | 'warn' | 'error') => {
    return (message: unknown, ...rest: readonly unknown[]) => {
      // Nest may hand a stack over as a text, message included: only a name of its own is written.
      const last = rest.at(-1);
      const from = typeof last === 'string' && /^\w{1,60}$/.test(last) ? last : undefined;
      if (level === 'error' || message instanceof Error) {
        logger[level]({ from, err: saidError(message) }, 'from the framework');
      } else logger[level]({ from }, String(message));
    };
  };
  return {
    log: say('debug'),
    debug: say('debug'),
    verbose: say('debug'),
    warn: say('warn'),
    error: say('error'),
  };
}
