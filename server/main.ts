/** `npm start`: one process, settings from the environment, one clear line when they cannot be right. */
import { readConfig } from './platform/config.ts';
import { StartRefused } from './platform/start-refused.ts';
import { startFootboard } from './start.ts';

try {
  const footboard = await startFootboard({ config: readConfig(process.env) });
  const stop = () => {
    footboard.close().then(
      () => process.exit(0),
      (error: unknown) => {
        console.error(error);
        process.exit(1);
      },
    );
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
} catch (error) {
  if (!(error instanceof StartRefused)) throw error;
  console.error(`Footboard cannot start: ${error.message}`);
  process.exit(2);
}
