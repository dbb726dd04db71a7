/** The HTTP and socket application on opened ports; not listening yet. */
import 'reflect-metadata';
import { readFileSync } from 'node:fs';
import { NestFactory } from '@nestjs/core';
import { ExpressAdapter } from '@nestjs/platform-express';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { NextFunction, Request, Response } from 'express';
import { appModule } from './app.module.ts';
import type { AppPorts } from './app.module.ts';
import { BODY_LIMIT } from './http/body.ts';
import { sameSiteOnly } from './http/csrf.ts';
import { ProblemFilter } from './http/problem-filter.ts';
import { securityHeaders } from './http/security.ts';
import { serveWeb, webFolder } from './http/serve-web.ts';
import { answerUnreadable, readableAddress } from './http/unreadable.ts';
import type { Config } from './platform/config.ts';
import { nestLogger } from './platform/logging.ts';
import type { Logger } from './platform/logging.ts';
import { SameOriginAdapter } from './pushing/same-origin.ts';

export async function createApp(
  ports: AppPorts,
  config: Pick<Config, 'tls' | 'behindTlsProxy'>,
  logger: Logger,
): Promise<NestExpressApplication> {
  const { tls, behindTlsProxy } = config;
  const app = await NestFactory.create<NestExpressApplication>(appModule(ports), new ExpressAdapter(), {
    logger: nestLogger(logger),
    bodyParser: false,
    abortOnError: false,
    forceCloseConnections: true,
    ...(tls ? { httpsOptions: { cert: readFileSync(tls.certFile), key: readFileSync(tls.keyFile) } } : {}),
  });
  answerUnreadable(app.getHttpServer());
  app.disable('x-powered-by');
  app.disable('etag');
  // One proxy, the one in front: what it says of the browser's address is believed, nobody else's word is.
  app.set('trust proxy', behindTlsProxy ? 1 : false);
  app.use(securityHeaders(tls !== undefined || behindTlsProxy));
  app.use(readableAddress);
  // Answers hold names and texts: no cache between here and the screen may keep them.
  app.use(['/api', '/health'], (_request: Request, response: Response, next: NextFunction) => {
    response.setHeader('Cache-Control', 'no-store');
    next();
  });
  app.use('/api', sameSiteOnly(behindTlsProxy));
  serveWeb(app, webFolder());
  app.useBodyParser('json', { limit: BODY_LIMIT });
  app.useGlobalFilters(new ProblemFilter(logger));
  app.useWebSocketAdapter(new SameOriginAdapter(app, { identify: ports.access.identify, behindTlsProxy }));
  return app;
}
