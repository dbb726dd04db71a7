/**
 * The start cannot go on and the person at the keyboard can do something about it. Printed as one
 * line, without a stack, by server/main.ts.
 */
export class StartRefused extends Error {
  constructor(line: string, options?: { cause?: unknown }) {
    super(line, options);
    this.name = 'StartRefused';
  }
}
