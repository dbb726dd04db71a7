/** A database of its own for each test file, dropped at the end. */
import { randomBytes } from 'node:crypto';
import { Client } from 'pg';

const ADDRESS = process.env['TEST_DATABASE_URL'] ?? 'postgres://root@127.0.0.1:5432/postgres';

async function asAdmin(statement: string): Promise<void> {
  const client = new Client(ADDRESS);
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

export async function ownDatabase(): Promise<{ url: string; name: string; drop(): Promise<void> }> {
  const name = `footboard_test_${randomBytes(6).toString('hex')}`;
  await asAdmin(`create database ${name} encoding 'UTF8' template template0`);
  const url = new URL(ADDRESS);
  url.pathname = `/${name}`;
  return { url: url.href, name, drop: () => asAdmin(`drop database if exists ${name} with (force)`) };
}
