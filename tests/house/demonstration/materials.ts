import type { Material } from '../../../src/batch/catalogue.ts'
import { careMaterials } from './materials-care.ts'
import { oilMaterials } from './materials-oil.ts'
import { washMaterials } from './materials-wash.ts'
import { waterMaterials } from './materials-water.ts'

export const materials: readonly Material[] = [...waterMaterials, ...oilMaterials, ...washMaterials, ...careMaterials]
