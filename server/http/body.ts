/** A command's body may be this long, in bytes. The longest sensible one, a protocol document, is a tenth of it. */
export const BODY_LIMIT = 256 * 1024;
