// The stored union of allowances: the terms of every listed kind, told apart by `kind`. It stands here and not with the
// kinds, since only judging a plan needs it.
// Worked example: { kind: 'spoils', id: 'a', rate: '0.02' } is one; a kind "rebate" is refused with the kinds there are.
import * as z from 'zod/mini';
import type { Means } from '../allowances/contract.ts';
import { ALLOWANCE_KINDS, type Stated } from '../allowances/index.ts';
import * as f from './fields.ts';

/** Picked one by one: a whole library passed on would be built in whole. */
const means: Means = {
  z: { strictObject: z.strictObject, literal: z.literal, enum: z.enum, boolean: z.boolean },
  f,
};

const stated = ALLOWANCE_KINDS.map(({ terms }) => terms(means)) as unknown as [Stated, ...Stated[]];

export const allowance = z.discriminatedUnion('kind', stated, {
  error: `an allowance of kind ${ALLOWANCE_KINDS.map(({ kind }) => `"${kind}"`).join(', ')}`,
});
