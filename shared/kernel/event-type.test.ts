import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from './event-type.ts';
import { saidBy } from './event-type.ts';

/** As the log hands out a page: the payload is parsed when asked for, by the class and not the object. */
class Lazy {
  ward = 'w';
  position = 3;
  stream = 'stay/s';
  version = 2;
  id = 'e3';
  type = 'hold-placed';
  occurred = 1;
  precision = 'exact';
  entered = 1;
  enteredOffsetMinutes = 60;
  recorded = 2;
  author = { staff: 'a', role: 'nurse' };
  source = { kind: 'person' };
  get payload() {
    return { scope: 'walking' };
  }
}

describe('an event said by somebody else', () => {
  it('keeps everything but its author, its payload too', () => {
    const event = new Lazy() as unknown as LoggedEvent;
    const said = saidBy(event, { staff: 'b' as never, role: 'records' });
    expect({ ...said, author: null }).toEqual({ ...event, payload: { scope: 'walking' }, author: null });
    expect(said.author).toEqual({ staff: 'b', role: 'records' });
  });
});
