import type { House } from './house'
import type { StartModel } from './model'
import type { SetUp } from './set-up'

/** What every piece of Start is handed. */
export interface StartProps {
  model: StartModel
  house: House
  setUp: SetUp
}

/** What can be opened over Start. */
export type StartSheet = 'vessels' | 'lines' | 'people' | 'checks' | 'stock'
