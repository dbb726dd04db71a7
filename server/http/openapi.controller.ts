import { Controller, Get } from '@nestjs/common';
import { openApiDocument } from './openapi.ts';
import { Allowed } from './allowed.ts';

@Controller('api')
export class OpenApiController {
  #document: ReturnType<typeof openApiDocument> | undefined;

  /** Made when first asked for: a start does not wait for it. */
  @Get('openapi.json')
  @Allowed('read-openapi')
  document() {
    return (this.#document ??= openApiDocument());
  }
}
