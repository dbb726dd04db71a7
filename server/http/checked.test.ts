import { describe, expect, it } from 'vitest';
import { acceptInvitationRequest } from '@footboard/shared/wire/access';
import { Answered } from '../commanding/problems.ts';
import { checked } from './checked.ts';

const refusal = (body: unknown) => {
  try {
    checked(acceptInvitationRequest, body);
  } catch (error) {
    if (error instanceof Answered) return error.answer;
    throw error;
  }
  throw new Error('it was taken');
};
const right = { token: 'x'.repeat(43), signInName: 'ines', password: 'lanterns under rain' };

describe('a body against its schema', () => {
  it('comes out as the schema reads it', () => {
    expect(checked(acceptInvitationRequest, { ...right, name: ' Ines Amaral ' }).name).toBe('Ines Amaral');
  });
  it('is refused field by field, as JSON pointers', () => {
    const { type, status, errors } = refusal({ ...right, password: 'short', rank: 1, token: undefined });
    expect({ type, status }).toEqual({ type: '/problems/invalid-request', status: 422 });
    expect(errors!.map(({ pointer }) => pointer).toSorted()).toEqual(['/password', '/rank', '/token']);
  });
  it('is refused where a text holds what no database can', () => {
    const { errors } = refusal({ ...right, name: 'Ines \0 Amaral' });
    expect(errors).toMatchObject([{ pointer: '/name', detail: expect.stringContaining('no character') }]);
  });
  it('is never said back', () => {
    const planted = 'Quillfeather';
    const said = refusal({ ...right, signInName: `${planted} ${planted}`, code: planted, password: 12 });
    expect(said.errors).toHaveLength(3);
    expect(JSON.stringify(said)).not.toContain(planted);
  });
  it('is asked for when there is none, or none that is an object', () => {
    expect(refusal(undefined)).toMatchObject({ type: '/problems/not-json', status: 415 });
    for (const body of [null, [], 'x', 7]) {
      expect(refusal(body)).toMatchObject({ type: '/problems/invalid-request', errors: [{ pointer: '' }] });
    }
  });
});
