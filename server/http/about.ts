/** What a screen must say about this server: invented data, or storage that is for trial only. */
export interface About {
  readonly demo: boolean;
  readonly trialStorage: boolean;
  /** What people type to get here; without it the address that something was asked for at. */
  readonly publicUrl: string | null;
  /** Sign-in is off: anyone may say who they are. */
  readonly open: boolean;
}
export const ABOUT = Symbol('About');
