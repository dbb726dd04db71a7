import { SetMetadata } from '@nestjs/common';
import type { Request } from 'express';
import type { ActionWithoutWard } from '@footboard/shared/capabilities/people/policy/document';
import { NOBODY } from '../access/identity.ts';
import type { Identity } from '../access/identity.ts';
import type { Pass } from '../access/gate.ts';

export const ACTION = 'footboard:action';

/**
 * Which action of the policy document a route is. A route without one answers nobody, and a test
 * fails on it. An action of a ward asks for the route parameter `:ward`.
 */
export const Allowed = (action: ActionWithoutWard | (string & {})) => SetMetadata(ACTION, action);

interface Known extends Request {
  footboard?: { readonly identity: Identity; readonly pass: Pass | null };
}

/** Who asks: put there by the access guard before any handler runs. */
export const identityOf = (request: Request): Identity => (request as Known).footboard?.identity ?? NOBODY;
/** What the policy let them do here: the actor, how much of the board, and through which glass. */
export const passOf = (request: Request): Pass | null => (request as Known).footboard?.pass ?? null;

export function remember(request: Request, identity: Identity, pass: Pass | null): void {
  (request as Known).footboard = { identity, pass };
}
