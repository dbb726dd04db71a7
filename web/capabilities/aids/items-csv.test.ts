import { describe, expect, it } from 'vitest';
import { itemDescription, type ItemId } from '@footboard/shared/capabilities/aids/values';
import { readItems, writeItems, type Listed } from './items-csv.ts';

const piece = (item: string, is: object): Listed => ({
  item: item as ItemId,
  is: itemDescription.parse({ label: item, kind: 'floor-lift', model: 'A', home: 'Store', ...is }),
});
const LIFT = piece('Lift 1', {
  powered: true,
  safeLoadKg: 200,
  inspectionDue: '2027-03-01',
  worksWithModels: ['B', 'C'],
});
const TRACK = piece('Track', { kind: 'ceiling-lift', covers: ['Bay 1', 'Bay 2'], powered: true });
const rows = (file: string, listed: readonly Listed[] = []) => {
  const read = readItems(file, listed);
  if ('wrong' in read) throw new Error(JSON.stringify(read.wrong));
  return read.rows;
};

describe('the equipment list as a table', () => {
  it('comes back as it went out, and then has nothing to do', () => {
    expect(rows(writeItems([LIFT, TRACK]), [LIFT, TRACK]).map(({ does }) => does)).toEqual(['same', 'same']);
    const [lift, track] = rows(writeItems([LIFT, TRACK]));
    expect(lift).toMatchObject({ does: 'add', line: 2, is: LIFT.is });
    expect(track).toMatchObject({ does: 'add', line: 3, is: TRACK.is });
  });

  it('reads semicolons and decimal commas, as a German spreadsheet writes them, and columns in any order', () => {
    const file = 'kind;name;model;home;safe load kg;motor\r\nsling;Sling 1;B;Hook;227,5;nein\r\n';
    expect(rows(file)).toMatchObject([
      { does: 'add', is: { label: 'Sling 1', safeLoadKg: 227.5, powered: false } },
    ]);
  });

  it('knows a piece by its name and says what would change', () => {
    const heavier = writeItems([piece('LIFT 1', { ...LIFT.is, label: 'LIFT 1', safeLoadKg: 250 })]);
    expect(rows(heavier, [LIFT])).toMatchObject([
      { does: 'change', item: 'Lift 1', is: { safeLoadKg: 250 } },
    ]);
  });

  it('names each row that cannot be taken, with its column, and takes the others', () => {
    const file = [
      'name,kind,model,home,safe load kg,track reaches,next examination',
      'Good,floor-lift,A,Store,200,,2027-01-01',
      ',floor-lift,A,Store,200,,',
      'Bad kind,crane,A,Store,,,',
      'Bad load,floor-lift,A,Store,two hundred,,',
      'Light,floor-lift,A,Store,2,,',
      'No track,ceiling-lift,A,Store,,,',
      'Bad date,floor-lift,A,Store,,,1.3.2027',
      'good,floor-lift,A,Store,,,',
    ].join('\n');
    const read = rows(file);
    expect(read[0]!.does).toBe('add');
    expect(
      read.slice(1).map((row) => (row.does === 'wrong' ? [row.line, row.wrong[0]!.column] : row.does)),
    ).toEqual([
      [3, 'name'],
      [4, 'kind'],
      [5, 'safe load kg'],
      [6, 'safe load kg'],
      [7, 'track reaches'],
      [8, 'next examination'],
      [9, 'name'],
    ]);
    const [, , , load] = read;
    expect(load).toMatchObject({ wrong: [{ detail: '"two hundred" is not a number of kilograms.' }] });
  });

  it('refuses a file without the columns it needs, or with one it does not know', () => {
    expect(readItems('', [])).toEqual({ wrong: [{ column: '', detail: 'The file is empty.' }] });
    expect(readItems('name,kind,model,home,colour\n', [])).toMatchObject({ wrong: [{ column: 'colour' }] });
    expect(readItems('name,kind\n', [])).toMatchObject({ wrong: [{ column: 'model' }, { column: 'home' }] });
    expect(readItems('name,"kind\n', [])).toMatchObject({
      wrong: [{ detail: expect.stringContaining('not a table') }],
    });
  });

  it('hands no cell to a spreadsheet that it would run', () => {
    expect(writeItems([piece('=1+1', {})])).not.toMatch(/(^|[\n,])=1\+1/);
  });
});
