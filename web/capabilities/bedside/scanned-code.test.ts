import { describe, expect, it } from 'vitest';
import { judgeCode, readCode } from './scanned-code.ts';

const subject = { ward: 'alder', bed: 'bed-7', recordNumber: 'R-004' };

describe('a scanned code', () => {
  it('of the wristband of whoever the page is for confirms the person, whatever its spaces and capitals', () => {
    expect(judgeCode('R-004', subject)).toEqual({ says: 'person' });
    expect(judgeCode(' r-004\n', subject)).toEqual({ says: 'person' });
    expect(judgeCode('R -004', subject)).toEqual({ says: 'person' });
  });

  it('of another wristband says which number it holds, also when it only begins the same', () => {
    expect(judgeCode('R-040', subject)).toEqual({ says: 'other-person', number: 'R-040' });
    expect(judgeCode('R-0041', subject)).toEqual({ says: 'other-person', number: 'R-0041' });
    expect(judgeCode('R-00', subject)).toEqual({ says: 'other-person', number: 'R-00' });
  });

  it('is no proof where this page knows no record number', () => {
    expect(judgeCode('R-004', { ...subject, recordNumber: null })).toEqual({ says: 'no-number-here' });
  });

  it('of this bed proves the bed, and of another bed or ward says so', () => {
    expect(judgeCode('https://board.example/wards/alder/bedside/bed-7', subject)).toEqual({ says: 'bed' });
    expect(judgeCode('/wards/alder/bedside/bed-7', subject)).toEqual({ says: 'bed' });
    expect(judgeCode('https://board.example/wards/alder/bedside/bed-8', subject)).toEqual({
      says: 'other-bed',
      bed: 'bed-8',
    });
    expect(judgeCode('https://board.example/wards/birch/bedside/bed-7', subject)).toEqual({
      says: 'other-bed',
      bed: 'bed-7',
    });
  });

  it('of a printed sheet proves nothing', () => {
    expect(judgeCode('https://board.example/wards/alder/paper/alder-1/bed-7', subject)).toEqual({
      says: 'paper',
    });
  });

  it.each(['', '   ', 'javascript:alert(1)', 'https://elsewhere.example/', '<b>R-004</b>', 'x'.repeat(200)])(
    'that holds %j is not readable',
    (raw) => {
      expect(readCode(raw)).toEqual({ kind: 'unreadable' });
    },
  );
});
