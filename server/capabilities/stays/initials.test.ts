import { describe, expect, it } from 'vitest';
import { initialsIn } from './initials.ts';

describe('initials in a name', () => {
  it.each([
    ['Ana Vale', 'A.V.'],
    ['Ana Maria de Vale', 'A.V.'],
    ['vale, ana', 'V.A.'],
    ['Óscar', 'Ó.'],
    ['李 小龙', '李.小.'],
    ['  ', ''],
    ['42', ''],
  ])('of "%s" are "%s"', (name, letters) => expect(initialsIn(name)).toBe(letters));
});
