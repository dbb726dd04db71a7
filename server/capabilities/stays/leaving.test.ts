/** Who leaves: for the ward next door, or for good. */
import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/stays/commands';
import type { PersonId } from '@footboard/shared/kernel/ids';
import { AIDE, arrived, given, hours, left, LARCH, NURSE, ROWAN } from '../given.testkit.ts';

const anna = arrived('anna', 'b1');

describe('a transfer to the ward next door', () => {
  const to = { ward: ROWAN, bed: 'b1', stay: 'anna-rowan' };
  const transfer = { stay: 'anna', bed: 'b1', to };
  const inRowan = arrived('ida', 'b1', { ward: ROWAN });

  it('given an empty bed there with the same id as here, when a person goes, then both wards hold their half', () => {
    given(anna)
      .when(commands.transferStay, transfer)
      .appends(
        ['stay-ended', 'stay/anna', { bed: 'b1', to: 'ward', next: { ward: ROWAN, stay: 'anna-rowan' } }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
        [
          'stay-begun',
          'stay/anna-rowan',
          {
            stay: 'anna-rowan',
            person: 'person-anna' as PersonId,
            bed: 'b1',
            from: 'ward',
            previous: { ward: LARCH, stay: 'anna' },
          },
          ROWAN,
        ],
        ['bed-taken', 'bed/b1', { bed: 'b1', stay: 'anna-rowan' }, ROWAN],
      );
  });
  it('given someone in that bed there, then nobody leaves here', () => {
    given(anna, inRowan).when(commands.transferStay, transfer).refuses('bed-occupied', '/to/bed');
  });
  it('when ward, bed or stay there are wrong, then each is pointed at', () => {
    const when = (more: object) =>
      given(anna).when(commands.transferStay, { ...transfer, to: { ...to, ...more } });
    when({ ward: 'nowhere' }).refuses('other-ward-unknown', '/to/ward');
    when({ ward: LARCH }).refuses('same-ward', '/to/ward');
    when({ bed: 'b9' }).refuses('bed-unknown', '/to/bed');
    when({ stay: 'anna' }).refuses('stay-known', '/to/stay');
    given(anna, inRowan)
      .when(commands.transferStay, { ...transfer, to: { ...to, bed: 'b2', stay: 'ida' } })
      .refuses('stay-known', '/to/stay');
  });
  it('when the person is in another bed, then nothing is transferred', () => {
    given(anna)
      .when(commands.transferStay, { ...transfer, bed: 'b2' })
      .refuses('not-in-that-bed', '/bed');
  });
});

describe('leaving', () => {
  it('when a person goes home, then the stay ends and the bed is freed', () => {
    given(anna)
      .when(commands.endStay, { stay: 'anna', bed: 'b1', to: 'home' })
      .appends(
        ['stay-ended', 'stay/anna', { bed: 'b1', to: 'home' }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
      );
  });
  it('when the person has left already, or lies elsewhere, then that is said', () => {
    given(anna, left('anna', 'b1', { at: hours(1) }))
      .when(commands.endStay, { stay: 'anna', bed: 'b1', to: 'home' })
      .refuses('stay-ended', '/stay');
    given(anna)
      .when(commands.endStay, { stay: 'anna', bed: 'b2', to: 'home' })
      .refuses('not-in-that-bed', '/bed');
  });
  it('when the time is before the arrival, then that is refused', () => {
    given(anna)
      .when(commands.endStay, { stay: 'anna', bed: 'b1', to: 'home' }, { at: hours(-1), now: hours(1) })
      .refuses('before-stay', '/stay');
  });
  it('an aide does not enter who leaves; a nurse does', () => {
    const end = { stay: 'anna', bed: 'b1', to: 'home' } as const;
    given(anna).when(commands.endStay, end, { by: AIDE }).refuses('not-your-role');
    given(anna).when(commands.endStay, end, { by: NURSE }).accepts();
  });
});
