import { Module } from '@nestjs/common';
import type { DynamicModule, Provider } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { COOKIES } from './access/cookies.ts';
import { IDENTIFY } from './access/identify.ts';
import type { Access } from './access/open-access.ts';
import {
  ACCESS_LOG,
  ACCOUNTS,
  DEVICES,
  GATE,
  GLASS,
  RETENTION,
  SESSIONS,
  SIGNING,
  SINGLE_SIGN_ON,
} from './access/ports.ts';
import { CONCERNS } from './capabilities/concerns/concerns.ts';
import type { Concerns } from './capabilities/concerns/concerns.ts';
import { TOTALS } from './capabilities/dayplan/queries.ts';
import type { TotalsStore } from './capabilities/dayplan/queries.ts';
import { REVIEWS, Reviews } from './capabilities/dayplan/review.ts';
import { FORECASTS, Forecasts } from './capabilities/forecast/forecasts.ts';
import type { Simulate } from './capabilities/forecast/forecasts.ts';
import { PLANNER } from './capabilities/planning/planner.ts';
import type { Planner } from './capabilities/planning/planner.ts';
import { ROUND_LISTS } from './capabilities/dayplan/round-lists.ts';
import type { RoundLists } from './capabilities/dayplan/round-lists.ts';
import { PAPER } from './capabilities/paper/sheets.ts';
import type { Paper } from './capabilities/paper/sheets.ts';
import { COMMANDS } from './commanding/handle-command.ts';
import type { Commands } from './commanding/handle-command.ts';
import { STREAMS } from './commanding/streams.ts';
import type { Streams } from './commanding/streams.ts';
import { ABOUT } from './http/about.ts';
import type { About } from './http/about.ts';
import { AccessGuard } from './http/access.guard.ts';
import { CommandsController } from './http/commands.controller.ts';
import { LIMITS } from './http/limits.ts';
import type { Limits } from './http/limits.ts';
import { ConcernsController } from './http/concerns.controller.ts';
import { ItemsController } from './http/items.controller.ts';
import { HealthController } from './http/health.controller.ts';
import { OpenApiController } from './http/openapi.controller.ts';
import { ProblemsController } from './http/problems.controller.ts';
import { AccountsController } from './http/accounts.controller.ts';
import { DevicesController } from './http/devices.controller.ts';
import { ForecastController } from './http/forecast.controller.ts';
import { GlassController } from './http/glass.controller.ts';
import { PlanningController } from './http/planning.controller.ts';
import { PicturesController } from './http/pictures.controller.ts';
import { PreviewController } from './http/preview.controller.ts';
import { PaperController } from './http/paper.controller.ts';
import { PrivacyController } from './http/privacy.controller.ts';
import { RoundController } from './http/round.controller.ts';
import { ScreensController } from './http/screens.controller.ts';
import { SessionController } from './http/session.controller.ts';
import { SignOnController } from './http/sign-on.controller.ts';
import { SigningController } from './http/signing.controller.ts';
import { QueriesController } from './http/queries.controller.ts';
import { LOG } from './log/log.ts';
import type { Log } from './log/log.ts';
import { CLOCK } from './platform/clock.ts';
import type { Clock } from './platform/clock.ts';
import { BOARDS } from './projecting/board.ts';
import type { RunningBoards } from './projecting/open-boards.ts';
import { WardGateway } from './pushing/gateway.ts';
import { VAULT } from './vault/vault.ts';
import type { Vault } from './vault/vault.ts';

/** What is opened before there is an application: the ports its parts are built on. */
export interface AppPorts {
  readonly log: Log;
  readonly vault: Vault;
  readonly boards: RunningBoards;
  readonly clock: Clock;
  readonly streams: Streams;
  readonly commands: Commands;
  readonly totals: TotalsStore;
  readonly roundLists: RoundLists;
  readonly paper: Paper;
  readonly concerns: Concerns;
  readonly simulate: Simulate;
  readonly planner: Planner;
  readonly access: Access;
  readonly about: About;
  readonly limits: Limits;
}

/** Nest wires the edges (HTTP and sockets) to the ports; the core knows nothing of it. */
@Module({})
// oxlint-disable-next-line typescript/no-extraneous-class -- a module of Nest is a class
class AppModule {}

export function appModule(ports: AppPorts): DynamicModule {
  const given: readonly (readonly [symbol, unknown])[] = [
    [LOG, ports.log],
    [VAULT, ports.vault],
    [BOARDS, ports.boards],
    [CLOCK, ports.clock],
    [STREAMS, ports.streams],
    [COMMANDS, ports.commands],
    [TOTALS, ports.totals],
    [REVIEWS, new Reviews(ports)],
    [FORECASTS, new Forecasts(ports)],
    [PLANNER, ports.planner],
    [ROUND_LISTS, ports.roundLists],
    [PAPER, ports.paper],
    [CONCERNS, ports.concerns],
    [ABOUT, ports.about],
    [LIMITS, ports.limits],
    [IDENTIFY, ports.access.identify],
    [GATE, ports.access.gate],
    [COOKIES, ports.access.cookies],
    [ACCOUNTS, ports.access.accounts],
    [SESSIONS, ports.access.sessions],
    [DEVICES, ports.access.devices],
    [SIGNING, ports.access.signing],
    [ACCESS_LOG, ports.access.accessLog],
    [GLASS, ports.access.glass],
    [RETENTION, ports.access.retention],
    [SINGLE_SIGN_ON, ports.access.singleSignOn],
  ];
  const providers: Provider[] = given.map(([provide, useValue]) => ({ provide, useValue }));
  return {
    module: AppModule,
    controllers: [
      HealthController,
      OpenApiController,
      CommandsController,
      ConcernsController,
      ItemsController,
      QueriesController,
      ProblemsController,
      AccountsController,
      DevicesController,
      ForecastController,
      GlassController,
      PicturesController,
      PlanningController,
      PreviewController,
      PaperController,
      PrivacyController,
      RoundController,
      ScreensController,
      SessionController,
      SignOnController,
      SigningController,
    ],
    providers: [...providers, { provide: APP_GUARD, useClass: AccessGuard }, WardGateway],
  };
}
