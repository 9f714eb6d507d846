import { balances, people, vessels } from './equipment.ts'
import { conditioner } from './formula-conditioner.ts'
import { gel } from './formula-gel.ts'
import { lotion } from './formula-lotion.ts'
import { shampoo } from './formula-shampoo.ts'
import { lots } from './lots.ts'
import { materials } from './materials.ts'

/** The catalogue file that Import reads: everything of the invented Quillwort Studio beside its batches. */
export const demonstrationCatalogue = {
  format: 'pannikin-catalogue',
  version: 1,
  people,
  balances,
  vessels,
  materials,
  lots,
  formulas: [lotion, conditioner, gel, shampoo],
} as const
