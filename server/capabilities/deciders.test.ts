import { describe, expect, it } from 'vitest';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { role } from '@footboard/shared/kernel/author';
import { DECIDERS } from './deciders.ts';
import { given, LARCH, ROWAN, STAFF } from './given.testkit.ts';

describe('the deciders together', () => {
  it('there is one for every command', () => {
    expect([...DECIDERS.keys()].toSorted()).toEqual([...COMMAND_TYPES.keys()].toSorted());
  });

  /** A `what I saw` version speaks of the first stream read: the stay's for what is said of a stay. */
  it('read the stay first when the command is about one', () => {
    const aboutAStay = [...COMMAND_TYPES.values()].filter(
      (c) => 'stay' in ((c.data as { shape?: object }).shape ?? {}),
    );
    expect(aboutAStay.length).toBeGreaterThan(20);
    for (const { name } of aboutAStay) {
      const data = { stay: 'anna', bed: 'b1', from: 'b1', to: { ward: ROWAN, bed: 'b2', stay: 'anna-2' } };
      expect(DECIDERS.get(name)!.reads(data as never, LARCH)[0], `${name} reads first`).toEqual({
        ward: LARCH,
        stream: 'stay/anna',
      });
    }
  });

  it('of a stay nobody knows, nothing is recorded, whoever says it', () => {
    for (const who of role.options) {
      given()
        .when(COMMAND_TYPES.get('record-trigger')!, { stay: 'ghost', kind: 'fall' }, { by: STAFF[who] })
        .refuses('stay-unknown', '/stay');
    }
  });
});
