// The built server with sign-in and limits off: a bench measures the way of an entry, and sends more a
// minute than a ward would.
import { readConfig } from '@footboard/server/platform/config';
import { startFootboard } from '@footboard/server/start';

const config = readConfig(process.env);
const footboard = await startFootboard({ config, access: 'open', limits: 'off', quiet: true });
process.once('SIGTERM', () => void footboard.close().then(() => process.exit(0)));
