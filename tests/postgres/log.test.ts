import { openDatabase } from '@footboard/server/platform/database';
import { logContract } from '../contracts/log-contract.ts';
import { openOver } from '../contracts/log-fixture.ts';
import { vaultContract } from '../contracts/vault-contract.ts';
import { ownDatabase } from './postgres.ts';

const open = async () => {
  const own = await ownDatabase();
  const opened = await openOver(await openDatabase({ databaseUrl: own.url, dataDir: 'unused' }));
  return {
    ...opened,
    close: async () => {
      await opened.close();
      await own.drop();
    },
  };
};

logContract('PostgreSQL', open);
vaultContract('PostgreSQL', open);
