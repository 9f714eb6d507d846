import type { Account, Ledger } from './ledger'

export const copyLedger = (ledger: Ledger): Ledger => ({
  vessels: copyAccounts(ledger.vessels),
  sinks: copyAccounts(ledger.sinks),
  added: copyAccount(ledger.added),
})

const copyAccount = (account: Account): Account => ({ masses: new Map(account.masses), totalUg: account.totalUg })

const copyAccounts = <Key>(accounts: ReadonlyMap<Key, Account>): Map<Key, Account> =>
  new Map([...accounts].map(([key, account]) => [key, copyAccount(account)]))
