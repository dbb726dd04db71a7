import { Controller, Get, NotFoundException, Param } from '@nestjs/common';
import { REFUSALS } from '@footboard/shared/capabilities/refusals';
import { PROBLEMS } from '../commanding/problems.ts';
import { Allowed } from './allowed.ts';

const TITLES = new Map<string, string>([
  ...Object.entries(REFUSALS),
  ...Object.entries(PROBLEMS).map(([code, [, title]]): [string, string] => [code, title]),
]);

/** Where the `type` of a problem leads (RFC 9457, section 3.1.1): what kind it is, in words. */
@Controller('problems')
export class ProblemsController {
  @Get(':code')
  @Allowed('read-problem-page')
  kind(@Param('code') code: string) {
    const title = TITLES.get(code);
    if (title === undefined) throw new NotFoundException();
    return { type: `/problems/${code}`, title, rule: code in REFUSALS };
  }
}
