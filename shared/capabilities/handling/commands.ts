import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { stayId } from '../../kernel/ids.ts';
import { onOwn } from './values.ts';

export const setOnOwn = commandType(
  'set-on-own',
  'A nurse or therapist lets the person go alone, and says where and when.',
  z.strictObject({ stay: stayId, ...onOwn.shape }),
);
export const removeOnOwn = commandType(
  'remove-on-own',
  'Anyone takes "on own" back.',
  z.strictObject({ stay: stayId }),
);
export const handlingCommands = [setOnOwn, removeOnOwn] as const;
