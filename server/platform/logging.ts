/** The server's own log lines: JSON on standard error, ids only, never a name, a text or a reading. */
import type { LoggerService } from '@nestjs/common';
import { destination, pino } from 'pino';
import type { Logger } from 'pino';
import type { Config } from './config.ts';

export type { Logger };
export const LOGGER = Symbol('Logger');

export const openLogger = (level: Config['logLevel']): Logger =>
  pino({ level, base: null }, destination({ fd: 2, sync: false }));

/** Nest speaks through the same logger; its start-up chatter counts as detail. */
export function nestLogger(logger: Logger): LoggerService {
  const say = (level: 'debug' | 'warn' | 'error') => {
    return (message: unknown, ...rest: readonly unknown[]) =>
      logger[level]({ from: rest.at(-1) }, message instanceof Error ? message.message : String(message));
  };
  return {
    log: say('debug'),
    debug: say('debug'),
    verbose: say('debug'),
    warn: say('warn'),
    error: say('error'),
  };
}
