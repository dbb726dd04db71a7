// The built server with sign-in off, as the demo runs it but empty: for tests of screens and rules
// that are not about who may come in. What is about that starts server/dist/main.js itself.
import { readConfig } from '@footboard/server/platform/config';
import { startFootboard } from '@footboard/server/start';

const footboard = await startFootboard({ config: readConfig(process.env), access: 'open' });
process.once('SIGTERM', () => void footboard.close().then(() => process.exit(0)));
