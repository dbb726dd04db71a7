/** Words that stand in a template in one language alone, by file. The list may only shrink. */
export const BARE: Readonly<Record<string, readonly string[]>> = {};
