/** Another bed on the same ward: one person moves, or two swap. */
import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/stays/commands';
import { bedFreed, bedTaken } from '@footboard/shared/capabilities/wards/events';
import { stayMoved } from '@footboard/shared/capabilities/stays/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import { arrived, bed, fact, given, hours, left, stay } from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const ben = arrived('ben', 'b2');

describe('a move', () => {
  it('given an empty bed, when a person moves there, then one bed is freed and the other taken', () => {
    given(anna)
      .when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b3' })
      .appends(
        ['stay-moved', 'stay/anna', { from: 'b1', to: 'b3' }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
        ['bed-taken', 'bed/b3', { bed: 'b3', stay: 'anna' }],
      );
  });
  it('given someone in it, when another moves to that bed, then that is refused', () => {
    given(anna, ben)
      .when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b2' })
      .refuses('bed-occupied', '/to');
  });
  it('when the person is not where the entry says, then nothing is moved', () => {
    given(anna)
      .when(commands.moveStay, { stay: 'anna', from: 'b2', to: 'b3' })
      .refuses('not-in-that-bed', '/from');
  });
  it('when a bed or the stay is unknown, then each is pointed at', () => {
    given(anna)
      .when(commands.moveStay, { stay: 'anna', from: 'b9', to: 'b3' })
      .refuses('bed-unknown', '/from');
    given(anna).when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b9' }).refuses('bed-unknown', '/to');
    given(anna)
      .when(commands.moveStay, { stay: 'ghost', from: 'b1', to: 'b3' })
      .refuses('stay-unknown', '/stay');
  });
  it('when the bed is the same, then that is said', () => {
    given(anna).when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b1' }).refuses('same-bed', '/to');
  });
  it('given the person came into the bed at 11:00, when a move before that is entered, then it is out of order', () => {
    given(
      anna,
      fact(stayMoved, 'anna', { from: bed('b1'), to: bed('b2') }, { at: hours(2) }),
      newEvent(bedFreed, streamKey('bed', 'b1'), { bed: bed('b1'), stay: stay('anna') }),
      newEvent(bedTaken, streamKey('bed', 'b2'), { bed: bed('b2'), stay: stay('anna') }),
    )
      .when(commands.moveStay, { stay: 'anna', from: 'b2', to: 'b3' }, { at: hours(1), now: hours(3) })
      .refuses('placement-out-of-order', '/stay');
  });
  it('given a stay that has ended, when a move from before the end is entered, then nobody is moved', () => {
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.moveStay, { stay: 'anna', from: 'b1', to: 'b3' }, { at: hours(1), now: hours(3) })
      .refuses('stay-ended', '/stay');
  });
});

describe('a swap', () => {
  const swap = {
    first: { stay: 'anna', bed: 'b1' },
    second: { stay: 'ben', bed: 'b2' },
  };
  it('given two people, when they change beds, then both stays and both guards change in one act', () => {
    given(anna, ben)
      .when(commands.swapStays, swap)
      .appends(
        ['stay-moved', 'stay/anna', { from: 'b1', to: 'b2', swappedWith: 'ben' }],
        ['stay-moved', 'stay/ben', { from: 'b2', to: 'b1', swappedWith: 'anna' }],
        ['bed-freed', 'bed/b1', { bed: 'b1', stay: 'anna' }],
        ['bed-taken', 'bed/b1', { bed: 'b1', stay: 'ben' }],
        ['bed-freed', 'bed/b2', { bed: 'b2', stay: 'ben' }],
        ['bed-taken', 'bed/b2', { bed: 'b2', stay: 'anna' }],
      );
  });
  it('when either is not where the entry says, then neither is moved', () => {
    given(anna, ben)
      .when(commands.swapStays, { ...swap, first: { stay: 'anna', bed: 'b3' } })
      .refuses('not-in-that-bed', '/first/bed');
    given(anna, ben)
      .when(commands.swapStays, { ...swap, second: { stay: 'ben', bed: 'b3' } })
      .refuses('not-in-that-bed', '/second/bed');
  });
  it('when one side is unknown or has left, then neither is moved', () => {
    given(anna).when(commands.swapStays, swap).refuses('stay-unknown', '/second/stay');
    given(anna, ben, left('ben', 'b2', { at: hours(1) }))
      .when(commands.swapStays, swap)
      .refuses('stay-ended', '/second/stay');
  });
  it('when both sides are one person, then that is said', () => {
    given(anna)
      .when(commands.swapStays, { first: swap.first, second: { stay: 'anna', bed: 'b2' } })
      .refuses('same-stay', '/second');
  });
});
