// Version 2 keeps the talks with an account beside its terms; a plan of version 1 has had none.
// Worked figure: a plan of two accounts gets "table": null in both.
import type { Migration } from './index.ts';

export const talks: Migration = {
  from: 1,
  what: 'talks with an account',
  migrate: ({ accounts, ...plan }) => ({
    ...plan,
    accounts: (accounts as Record<string, unknown>[]).map((account) => ({ ...account, table: null })),
    version: 2,
  }),
};
