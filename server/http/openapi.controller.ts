import { Controller, Get } from '@nestjs/common';
import { openApiDocument } from './openapi.ts';

@Controller('api')
export class OpenApiController {
  #document: ReturnType<typeof openApiDocument> | undefined;

  /** Made when first asked for: a start does not wait for it. */
  @Get('openapi.json')
  document() {
    return (this.#document ??= openApiDocument());
  }
}
