import { Controller } from '@nestjs/common';

@Controller('api')
// oxlint-disable-next-line typescript/no-extraneous-class -- filled in by the next commits
export class DevicesController {}
