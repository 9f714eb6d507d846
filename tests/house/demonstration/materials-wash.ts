import type { Material } from '../../../src/batch/catalogue.ts'
import { eyeIrritant } from './hazards.ts'

/** Surfactants and the salt that thickens them. Illustrative textbook values. */
export const washMaterials: readonly Material[] = [
  {
    id: 'sodium-lauroyl-sarcosinate-30',
    name: 'Sarcosinate 30 %',
    inci: [
      { name: 'Aqua', fraction: 0.7 },
      { name: 'Sodium Lauroyl Sarcosinate', fraction: 0.3 },
    ],
    function: 'anionic surfactant',
    form: 'solution',
    densityGPerMl: 1.02,
    activeMatter: { fraction: 0.3, class: 'anionic' },
    useLevel: { min: 0.05, max: 0.5 },
    phWindow: { min: 4.9, max: 9 },
    hazards: eyeIrritant,
    costPerKg: 5.2,
  },
  {
    id: 'lauramidopropyl-betaine-30',
    name: 'Betaine 30 %',
    inci: [
      { name: 'Aqua', fraction: 0.7 },
      { name: 'Lauramidopropyl Betaine', fraction: 0.3 },
    ],
    function: 'amphoteric surfactant',
    form: 'solution',
    densityGPerMl: 1.04,
    activeMatter: { fraction: 0.3, class: 'amphoteric' },
    useLevel: { min: 0.03, max: 0.4 },
    phWindow: { min: 4, max: 8 },
    hazards: eyeIrritant,
    costPerKg: 3.7,
  },
  {
    id: 'coco-glucoside-50',
    name: 'Coco-glucoside 50 %',
    inci: [
      { name: 'Coco-Glucoside', fraction: 0.5 },
      { name: 'Aqua', fraction: 0.5 },
    ],
    function: 'non-ionic surfactant',
    form: 'solution',
    densityGPerMl: 1.08,
    activeMatter: { fraction: 0.5, class: 'non-ionic' },
    useLevel: { min: 0.02, max: 0.3 },
    hazards: { ...eyeIrritant, caution: 'Alkaline and hurts eyes: glasses and gloves on' },
    costPerKg: 4.6,
  },
  {
    id: 'sodium-chloride',
    name: 'Sodium chloride',
    inci: [{ name: 'Sodium Chloride', fraction: 1 }],
    function: 'viscosity adjuster',
    form: 'powder',
    useLevel: { min: 0, max: 0.02 },
    costPerKg: 1.1,
  },
]
