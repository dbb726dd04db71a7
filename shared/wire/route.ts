/** One address of the server, as the table in routes.ts names it. */
import type { z } from 'zod';

export interface Route {
  readonly method: 'get' | 'post' | 'delete';
  /** Parameters in braces, as OpenAPI writes them. */
  readonly path: string;
  /** The action of the policy document; `command` stands for the command's own name. */
  readonly action: string;
  /** Name of the operation, once: "BoardPage". */
  readonly name: string;
  readonly says: string;
  readonly body?: z.ZodType;
  /** Shape of the JSON it gives; left out where it gives none. */
  readonly answer?: z.ZodType;
  /** 200 if left out. */
  readonly gives?: 201 | 204 | 302;
  /** Query parameters: name and what it asks for. */
  readonly asks?: Readonly<Record<string, string>>;
}
