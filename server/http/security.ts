import helmet from 'helmet';
import type { RequestHandler } from 'express';

/**
 * Headers for every answer. Scripts, styles and fonts come from this server only; nothing may frame
 * the board. Strict transport is asked for only when this server itself speaks HTTPS: a hospital
 * network that serves it over plain HTTP must stay reachable.
 */
export const securityHeaders = (https: boolean): RequestHandler =>
  helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'", 'ws:', 'wss:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: https,
    // Over plain HTTP a browser ignores these and says so on the console of every screen.
    crossOriginOpenerPolicy: https,
    originAgentCluster: https,
    xFrameOptions: { action: 'deny' },
    referrerPolicy: { policy: 'no-referrer' },
  }) as RequestHandler;
