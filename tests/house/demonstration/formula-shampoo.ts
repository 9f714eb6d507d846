import type { Formula, Phase } from '../../../src/batch/formula.ts'
import * as part from './formula-parts.ts'
import { shampooProcedure } from './formula-shampoo-procedure.ts'
import { kg } from './mass.ts'

const { line } = part

const phases: readonly Phase[] = [
  {
    letter: 'A',
    name: 'Conditioning base',
    lines: [
      part.water([
        { step: 'a-water', rest: true },
        { step: 'c-water-benzoate', fraction: part.percent(2) },
        { step: 'c-water-sorbate', fraction: part.percent(1) },
      ]),
      line('propanediol', 2, { locksAfter: 'a-hydrate' }),
      line('guar-hptc', 0.25, { tolerance: { relative: 0.02 }, fixedOrder: true, locksAfter: 'a-hydrate' }),
      part.asNeeded('citric-acid-20', { expected: 0.05, min: 0, max: 0.2 }, { id: 'citric-acid-for-guar' }),
      line('sodium-phytate-50', 0.2),
    ],
  },
  {
    letter: 'B',
    name: 'Surfactants',
    lines: [
      line('sodium-lauroyl-sarcosinate-30', 20, { assayAssumed: 0.3 }),
      line('lauramidopropyl-betaine-30', 12, { assayAssumed: 0.3 }),
    ],
  },
  {
    letter: 'C',
    name: 'Preserve',
    lines: [
      line('sodium-benzoate', 0.45, { range: { min: part.percent(0.4), max: part.percent(0.5) } }),
      line('potassium-sorbate', 0.2, { range: { min: part.percent(0.18), max: part.percent(0.25) } }),
      line('panthenol-75', 0.67, { assayAssumed: 0.75 }),
    ],
  },
  {
    letter: 'D',
    name: 'Fragrance, adjust',
    lines: [
      line('coco-glucoside-50', 6, { assayAssumed: 0.5 }),
      line('fragrance-barley-field', 0.4, { tolerance: { relative: 0.02 }, fixedOrder: true }),
      part.asNeeded('citric-acid-20', { expected: 2, min: 0.5, max: 4 }),
      part.asNeeded('sodium-chloride', { expected: 0.8, min: 0, max: 1.5 }),
    ],
  },
]

export const shampoo: Formula = {
  id: 'formula-shampoo',
  code: 'QW-SHA-04',
  name: 'Everyday shampoo',
  nickname: 'Shampoo',
  contact: 'rinse-off',
  revisions: [
    {
      number: 1,
      note: 'Illustrative: not tried at a bench.',
      approvedBy: 'MO',
      approvedAt: '2026-09-08T15:30:00+01:00',
      usualSizeUg: kg(1),
      phases,
      procedure: shampooProcedure,
      specification: [
        {
          id: 'ph-guar',
          property: 'pH',
          label: 'pH for the guar',
          method: 'meter, neat, 25 °C',
          basis: { kind: 'neat' },
          limits: { min: 5.8, max: 6.2 },
          when: 'in-process',
        },
        ...part.phChecks({ min: 5, max: 5.3 }, null),
        {
          id: 'viscosity',
          property: 'viscosity',
          label: 'Viscosity',
          unit: 'mPa·s',
          method: 'spindle 3, 12 rpm, 25 °C, after 60 s',
          limits: { min: 2000, max: 6000 },
          when: 'in-process',
        },
        {
          id: 'viscosity-rested',
          property: 'viscosity',
          label: 'Viscosity, rested',
          unit: 'mPa·s',
          method: 'spindle 3, 12 rpm, 25 °C, after 60 s',
          limits: { min: 2000, max: 6000 },
          when: 'after-rest',
        },
        part.looks('clear to faintly hazy, no strings'),
        part.smells('of barley, clean'),
      ],
      vessels: [
        part.vessel('main', 'Main vessel', 1.4, 'propeller'),
        part.cup('slurry', 'Slurry cup'),
        part.cup('benzoate-cup', 'Benzoate cup'),
        part.cup('sorbate-cup', 'Sorbate cup'),
        part.cup('fragrance-beaker', 'Fragrance beaker', 60),
      ],
      sharedLimits: [
        part.actives('anionic', { min: 5.7, max: 6.3 }),
        part.actives('amphoteric', { min: 3.4, max: 3.8 }),
        part.actives('non-ionic', { min: 2.8, max: 3.2 }),
        part.preservatives(0.7),
      ],
      lossAllowance: 0.01,
      restHours: 24,
      preflight: part.preflight('Glasses on: every surfactant hurts eyes', 'Stirrer set low: no foam'),
    },
  ],
}
