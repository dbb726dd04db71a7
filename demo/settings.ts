import { StartRefused } from '@footboard/server/platform/start-refused';

export interface DemoSettings {
  readonly folder: string;
  /** How many times real speed the ward's clock runs. */
  readonly speed: number;
  readonly seed: number;
}

/** @throws StartRefused with one line naming the setting */
export function readDemoSettings(env: Readonly<Record<string, string | undefined>>): DemoSettings {
  const number = (name: string, fallback: number, low: number, high: number): number => {
    const text = env[name];
    if (text === undefined || text === '') return fallback;
    const value = Number(text);
    if (!Number.isFinite(value) || value < low || value > high) {
      throw new StartRefused(`${name} is "${text}": write a number from ${low} to ${high}`);
    }
    return value;
  };
  return {
    folder: env['DEMO_DATA_DIR'] || './demo-data',
    speed: number('DEMO_SPEED', 10, 0.1, 600),
    seed: Math.trunc(number('DEMO_SEED', 20_261_020, 0, 4_294_967_295)),
  };
}
