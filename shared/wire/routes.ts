/**
 * Every address the server answers, each once: method, path, the action of the policy document, what
 * it takes and what it gives. The API document and the fuzzer are made from it; a test holds it
 * against the controllers' own routes (server/http/openapi.test.ts).
 */
import { z } from 'zod';
import { recordAssessment } from '../capabilities/assessments/commands.ts';
import { COMMAND_TYPES } from '../capabilities/registry.ts';
import type { CommandType } from '../kernel/command-type.ts';
import { commandEnvelope } from '../kernel/command-type.ts';
import { healthPage, protocolsInForce, rulesInForce, totalsPage, verifyPage } from './documents.ts';
import { boardPage, commandAccepted, huddlePage, staffList, stayPage, wardList } from './http.ts';
import { paperSheets } from './paper.ts';
import { planPreview } from './preview.ts';
import { ownEntries } from './access.ts';
import { forecastPage } from './forecast.ts';
import { aidUsePage, coordinatorPage } from './coordinator.ts';
import { fairnessPage } from './fairness.ts';
import { fitPage, itemsPage } from './items.ts';
import type { Route } from './route.ts';
import { planningRoutes } from './routes-of-planning.ts';
import { roundActs, roundPage, roundThen } from './round.ts';
import { accessRoutes } from './routes-of-access.ts';
import { concernRoutes } from './routes-of-concerns.ts';
import { pictureRoutes } from './routes-of-pictures.ts';

/** Reading the board, the people and the log. */
export const READS: readonly Route[] = [
  {
    method: 'get',
    path: '/api/wards',
    action: 'list-wards',
    name: 'WardList',
    says: 'The wards of this server that whoever asks may see.',
    answer: wardList,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/board',
    action: 'read-board',
    name: 'BoardPage',
    says: 'The board: now, or as of an instant, knowing what was known at a position of the log.',
    answer: boardPage,
    asks: { at: 'Instant in UTC, like 2026-10-25T01:40:00Z.', p: 'Position in the ward’s log, from 1.' },
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/staff',
    action: 'read-staff',
    name: 'StaffList',
    says: 'The staff list of the ward.',
    answer: staffList,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/stays/{stay}',
    action: 'read-stay',
    name: 'StayPage',
    says: 'One stay: the person, the row of the board, and every entry in plain words.',
    answer: stayPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/huddle',
    action: 'read-huddle',
    name: 'HuddlePage',
    says: 'The ward in the order of the morning review.',
    answer: huddlePage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/round',
    action: 'read-round',
    name: 'RoundPage',
    says: 'Whom to see next: the list in order with its reasons, and who is not on it and why.',
    answer: roundPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/round/acts',
    action: 'read-round-acts',
    name: 'RoundActs',
    says: 'What was done by the round’s list in the last seven days, and where somebody else stood first. Names nobody.',
    answer: roundActs,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/round/acts/{event}',
    action: 'read-round-acts',
    name: 'RoundThen',
    says: 'The round’s list as it was when somebody acted on it, made again from the log.',
    answer: roundThen,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/fairness',
    action: 'read-fairness',
    name: 'FairnessPage',
    says: 'Who was got up in the last four weeks, by bed, bay, isolation and weekday. Not recorded is counted apart.',
    answer: fairnessPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/totals',
    action: 'read-totals',
    name: 'TotalsPage',
    says: 'What each stay did on one ward day. Not recorded is a gap, never a zero.',
    answer: totalsPage,
    asks: { day: 'Date the ward day began on, like 2026-10-25; today if left out.' },
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/rules',
    action: 'read-rules',
    name: 'RulesInForce',
    says: 'Limits and validities in force, each with source, owner and review date.',
    answer: rulesInForce,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/protocols',
    action: 'read-protocols',
    name: 'ProtocolsInForce',
    says: 'Protocol versions an assessment may name, and the one in force.',
    answer: protocolsInForce,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/own-entries',
    action: 'read-own-entries',
    name: 'OwnEntries',
    says: 'Entries of whoever asks that nobody has signed for, and those waiting for a second signature.',
    answer: ownEntries,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/items',
    action: 'read-items',
    name: 'ItemsPage',
    says: 'The equipment of the ward and whether each piece can be used now.',
    answer: itemsPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/fit',
    action: 'read-fit',
    name: 'FitPage',
    says: 'Who needs a lift or other listed equipment, and which pieces can do it, with reasons for and against.',
    answer: fitPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/coordinator',
    action: 'read-coordinator-list',
    name: 'CoordinatorPage',
    says: 'What the handling coordinator is to see to: stays and pieces, since when, and what would close it.',
    answer: coordinatorPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/aid-use',
    action: 'read-coordinator-list',
    name: 'AidUsePage',
    says: 'Planned equipment that was not used in the last four weeks, by equipment and reason, without who.',
    answer: aidUsePage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/forecast',
    action: 'read-forecast',
    name: 'ForecastPage',
    says: 'Demand for lifts and second pairs of hands by quarter hour against what there is: the chance of waiting too long, who would wait, what would help.',
    answer: forecastPage,
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/labels',
    action: 'make-labels',
    name: 'EquipmentLabels',
    says: 'Labels for the equipment as PDF: name, safe working load, a code that opens the piece.',
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/paper/sheet',
    action: 'make-sheet',
    name: 'PaperSheet',
    says: 'A paper sheet of the ward as PDF, with a serial of its own.',
  },
  {
    method: 'get',
    path: '/api/wards/{ward}/paper/sheets',
    action: 'read-sheets',
    name: 'PaperSheets',
    says: 'The sheets printed in the last two days, and which beds on each no longer hold.',
    answer: paperSheets,
  },
  {
    method: 'get',
    path: '/api/verify/{ward}',
    action: 'verify-log',
    name: 'VerifyPage',
    says: 'Checks the ward’s whole log: chain, order and payloads, and an earlier anchor if given.',
    answer: verifyPage,
    asks: { position: 'Position of an anchor exported earlier.', chain: 'Chain hash of that anchor.' },
  },
  {
    method: 'get',
    path: '/health/live',
    action: 'read-health',
    name: 'Live',
    says: 'The process answers.',
    answer: healthPage,
  },
  {
    method: 'get',
    path: '/health/ready',
    action: 'read-health',
    name: 'Ready',
    says: 'Screens can be served.',
    answer: healthPage,
  },
  {
    method: 'get',
    path: '/api/openapi.json',
    action: 'read-openapi',
    name: 'ApiDocument',
    says: 'This document.',
    answer: z.looseObject({ openapi: z.string() }),
  },
  {
    method: 'get',
    path: '/problems/{code}',
    action: 'read-problem-page',
    name: 'ProblemKind',
    says: 'What the type of a problem means, in words.',
    answer: z.strictObject({ type: z.string(), title: z.string(), rule: z.boolean() }),
  },
];

/** The one address of all commands; `commandRoutes` has it once for each. */
export const COMMAND_PATH = '/api/wards/{ward}/commands/{name}';

/** Schema of a command's whole body: the envelope with the command's own data in it. */
export const commandBody = (type: CommandType): z.ZodType => commandEnvelope.extend({ data: type.data });

/** "record-session" -> "RecordSession" */
const operationName = (command: string): string =>
  command
    .split('-')
    .map((word) => word[0]!.toUpperCase() + word.slice(1))
    .join('');

export const commandRoutes: readonly Route[] = [...COMMAND_TYPES.values()].map((type) => ({
  method: 'post',
  path: COMMAND_PATH.replace('{name}', type.name),
  action: type.name,
  name: operationName(type.name),
  says: type.says,
  body: commandBody(type),
  answer: commandAccepted,
}));

/** Reads that take a body, because what they are asked about is an entry that is not sent yet. */
const PREVIEWS: readonly Route[] = [
  {
    method: 'post',
    path: '/api/wards/{ward}/previews/record-assessment',
    action: 'read-stay',
    name: 'PreviewAssessment',
    says: 'What a staged check would make of the plan if it were recorded now. Takes what record-assessment takes, checks it alike, and records nothing.',
    body: commandBody(recordAssessment),
    answer: planPreview,
  },
];

/** Everything but commands. */
export const ROUTES: readonly Route[] = [
  ...READS,
  ...PREVIEWS,
  ...pictureRoutes,
  ...planningRoutes,
  ...concernRoutes,
  ...accessRoutes,
];
