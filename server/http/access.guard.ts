import { Inject, Injectable } from '@nestjs/common';
import type { CanActivate, ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Request } from 'express';
import { wardId } from '@footboard/shared/kernel/ids';
import { WITHOUT_A_WARD } from '@footboard/shared/capabilities/people/policy/document';
import type { ActionWithoutWard } from '@footboard/shared/capabilities/people/policy/document';
import { Gate } from '../access/gate.ts';
import { IDENTIFY } from '../access/identify.ts';
import type { Identify } from '../access/identify.ts';
import { GATE } from '../access/ports.ts';
import { Answered, noSuchWard, problem } from '../commanding/problems.ts';
import { STREAMS } from '../commanding/streams.ts';
import type { Streams } from '../commanding/streams.ts';
import { ACTION, remember } from './allowed.ts';
import { LIMITS, kindOf } from './limits.ts';
import type { Limits } from './limits.ts';

const ownAction = (action: string): action is ActionWithoutWard => Object.hasOwn(WITHOUT_A_WARD, action);

/** Stands before every route: who asks, and does the policy document let them do this. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    @Inject(Reflector) private readonly reflector: Reflector,
    @Inject(IDENTIFY) private readonly identify: Identify,
    @Inject(GATE) private readonly gate: Gate,
    @Inject(STREAMS) private readonly streams: Streams,
    @Inject(LIMITS) private readonly limits: Limits,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    // Socket messages ask the gate in the gateway, with the identity of the handshake.
    if (context.getType() !== 'http') return true;
    const request = context.switchToHttp().getRequest<Request>();
    const action = this.reflector.get<string | undefined>(ACTION, context.getHandler());
    // Express reads the address from the proxy's header where there is a proxy, and only there.
    // A page may ask who is here as often as it likes without anybody being there.
    const seen = action === 'read-me' ? 'quietly' : undefined;
    const identity = await this.identify.of(request.headers, request.ip ?? 'unknown', seen);
    remember(request, identity, null);
    const kind = kindOf(request.method, action);
    if (kind !== null) await this.limits.take(identity.origin, kind);
    if (action === undefined) {
      throw new Answered(
        problem('not-allowed', 'No rule says who may use this address.', 'Tell whoever runs Footboard.'),
      );
    }
    if (ownAction(action)) {
      const refused = this.gate.without(identity, action);
      if (refused) throw new Answered(refused);
      return true;
    }
    // The command's own name is the action; who says it is settled with the ward at hand, in the recipe.
    if (action === 'command') {
      const refused = this.gate.unheard(identity);
      if (refused) throw new Answered(refused);
      return true;
    }
    const id = wardId.safeParse(request.params['ward']);
    const ward = id.success ? await this.streams.ward(id.data) : null;
    // Whoever has no business here does not learn which wards there are.
    if (!id.success || (!ward?.state && (identity.access === 'open' || identity.person?.wide))) {
      throw new Answered(noSuchWard(String(request.params['ward'])));
    }
    const passed = await this.gate.on(identity, action, id.data, ward?.state ?? null);
    if ('problem' in passed) throw new Answered(passed.problem);
    remember(request, identity, passed.pass);
    return true;
  }
}
