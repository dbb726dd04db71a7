import helmet from 'helmet';
import type { RequestHandler } from 'express';

/** What a page may ask of the device: the camera, to scan a badge or a bed's label. Everything else is off. */
const PERMISSIONS = [
  'camera=(self)',
  ...[
    'accelerometer',
    'autoplay',
    'browsing-topics',
    'display-capture',
    'encrypted-media',
    'gamepad',
    'geolocation',
    'gyroscope',
    'hid',
    'idle-detection',
    'local-fonts',
    'magnetometer',
    'microphone',
    'midi',
    'payment',
    'publickey-credentials-get',
    'serial',
    'usb',
    'xr-spatial-tracking',
  ].map((feature) => `${feature}=()`),
].join(', ');

/**
 * Headers for every answer. Scripts, styles and everything else come from this server only; nothing
 * may frame the board, no text becomes markup outside Vue's own policy (Trusted Types), and a page
 * reaches nothing but this server: 'self' covers its sockets too (CSP level 3, 6.7.2.8).
 *
 * Strict transport is asked for only where the browser comes over HTTPS, here or at a proxy: a
 * hospital network that serves it over plain HTTP must stay reachable.
 *
 * @param https the browser reaches this server over HTTPS
 */
export const securityHeaders = (https: boolean): RequestHandler => {
  const headers = helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        // WebAssembly from this server, for reading codes before the camera; no eval of scripts (CSP level 3, 4.4).
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        workerSrc: ["'self'"],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        requireTrustedTypesFor: ["'script'"],
        // Vue's own, and the one that knows the service worker's path (web/offline/worker.ts).
        trustedTypes: ['vue', 'footboard-worker'],
      },
    },
    strictTransportSecurity: https ? { maxAge: 365 * 24 * 60 * 60, includeSubDomains: false } : false,
    // Over plain HTTP a browser ignores these and says so on the console of every screen.
    crossOriginOpenerPolicy: https,
    originAgentCluster: https,
    crossOriginResourcePolicy: { policy: 'same-origin' },
    xFrameOptions: { action: 'deny' },
    referrerPolicy: { policy: 'no-referrer' },
  }) as RequestHandler;
  return (request, response, next) => {
    response.setHeader('Permissions-Policy', PERMISSIONS);
    headers(request, response, next);
  };
};
