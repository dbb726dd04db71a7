/** What a screen must say about this server: invented data, or storage that is for trial only. */
export interface About {
  readonly demo: boolean;
  readonly trialStorage: boolean;
}
export const ABOUT = Symbol('About');
