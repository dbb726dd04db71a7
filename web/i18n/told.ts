/**
 * Sentences that the server or the shared rules wrote, in the language of the screen. They come in
 * English; the phrase book puts them into another language by their form. One that it does not know
 * stays as it is: a reason in English is better than none.
 */
export const told = (sentence: string): string => sentence;
