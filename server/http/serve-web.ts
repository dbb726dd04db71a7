/** The built web app: hashed files kept for good, the page itself never, every other path the page. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { NextFunction, Request, Response } from 'express';

/** `web/dist` beside the workspaces: the same from source and from server/dist. Null until it is built. */
export function webFolder(from: string = import.meta.dirname): string | null {
  for (let at = from; dirname(at) !== at; at = dirname(at)) {
    const folder = join(at, 'web', 'dist');
    if (existsSync(join(folder, 'index.html'))) return folder;
  }
  return null;
}

/** Paths of the server itself; a wrong one there is a problem, never the page. */
const OWN = /^\/(api|health|problems|socket\.io)(\/|$)/;

export function serveWeb(app: NestExpressApplication, folder: string | null): void {
  if (folder) {
    app.useStaticAssets(folder, {
      index: false,
      setHeaders: (response: Response, path: string) => {
        const hashed = path.startsWith(join(folder, 'assets'));
        response.setHeader('Cache-Control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    });
  }
  app.use((request: Request, response: Response, next: NextFunction) => {
    const page = request.method === 'GET' || request.method === 'HEAD';
    // A path that ends like a file and was not found is missing: the page would be parsed as a script.
    if (!page || OWN.test(request.path) || /\.[a-z0-9]+$/i.test(request.path)) {
      next();
      return;
    }
    response.setHeader('Cache-Control', 'no-store');
    if (folder) response.sendFile(join(folder, 'index.html'), { cacheControl: false });
    else response.status(503).type('text').send('The screens are not built yet: run "npm run build".\n');
  });
}
