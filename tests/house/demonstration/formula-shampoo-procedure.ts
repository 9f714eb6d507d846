import type { Step } from '../../../src/batch/step.ts'
import * as part from './formula-parts.ts'
import { g } from './mass.ts'

const { weigh } = part

const dissolve = (id: string, vessel: string, title: string): Step => ({
  id,
  phase: 'C',
  vessel,
  kind: 'mix',
  tool: 'spatula',
  minutes: 3,
  title,
})

const charge = (id: string, phase: string, cup: string, after: readonly string[], title: string): Step => ({
  id,
  phase,
  vessel: 'main',
  kind: 'charge',
  cup,
  rate: 'stream',
  rinse: true,
  after,
  title,
})

const conditioningSteps: readonly Step[] = [
  weigh('a-water', 'A', 'aqua', 'main'),
  weigh('a-propanediol', 'A', 'propanediol', 'slurry'),
  weigh('a-guar', 'A', 'guar-hptc', 'slurry', { instruction: 'Stir it smooth in the propanediol' }),
  charge('a-slurry-in', 'A', 'slurry', ['a-propanediol', 'a-guar'], 'Stir the slurry in'),
  {
    id: 'a-acid',
    phase: 'A',
    vessel: 'main',
    kind: 'adjust',
    property: 'pH',
    line: 'citric-acid-for-guar',
    check: 'ph-guar',
    portionUg: g(0.2),
    waitMinutes: 1,
    title: 'Bring it to about pH 6',
    instruction: 'The guar swells only below pH 7',
  },
  {
    id: 'a-hydrate',
    phase: 'A',
    vessel: 'main',
    kind: 'hydrate',
    minutes: 20,
    shear: 'low: propeller, 200–300 rpm',
    startsWhen: 'it is at pH 6 and no lumps show',
    title: 'Hydrate the guar',
  },
  weigh('a-phytate', 'A', 'sodium-phytate-50', 'main'),
]

const surfactantSteps: readonly Step[] = [
  weigh('b-sarcosinate', 'B', 'sodium-lauroyl-sarcosinate-30', 'main', { instruction: 'Down the wall: no foam' }),
  weigh('b-betaine', 'B', 'lauramidopropyl-betaine-30', 'main', { instruction: 'Down the wall: no foam' }),
  {
    id: 'b-mix',
    phase: 'B',
    vessel: 'main',
    kind: 'mix',
    tool: 'propeller',
    rpm: { min: 80, max: 150 },
    minutes: 10,
    noVortex: true,
    title: 'Stir in, no vortex',
  },
]

const preservingSteps: readonly Step[] = [
  weigh('c-water-benzoate', 'C', 'aqua', 'benzoate-cup'),
  weigh('c-benzoate', 'C', 'sodium-benzoate', 'benzoate-cup', { secondPerson: true }),
  dissolve('c-dissolve-benzoate', 'benzoate-cup', 'Dissolve the benzoate'),
  weigh('c-water-sorbate', 'C', 'aqua', 'sorbate-cup'),
  weigh('c-sorbate', 'C', 'potassium-sorbate', 'sorbate-cup', { secondPerson: true }),
  dissolve('c-dissolve-sorbate', 'sorbate-cup', 'Dissolve the sorbate'),
  charge('c-benzoate-in', 'C', 'benzoate-cup', ['c-dissolve-benzoate'], 'Benzoate in, before any more acid'),
  charge('c-sorbate-in', 'C', 'sorbate-cup', ['c-dissolve-sorbate'], 'Sorbate in, before any more acid'),
  weigh('c-panthenol', 'C', 'panthenol-75', 'main'),
]

const fragranceSteps: readonly Step[] = [
  weigh('d-glucoside', 'D', 'coco-glucoside-50', 'fragrance-beaker'),
  weigh('d-fragrance', 'D', 'fragrance-barley-field', 'fragrance-beaker'),
  {
    id: 'd-premix',
    phase: 'D',
    vessel: 'fragrance-beaker',
    kind: 'mix',
    tool: 'spatula',
    minutes: 3,
    title: 'Premix the fragrance clear',
  },
  charge('d-in', 'D', 'fragrance-beaker', ['d-premix'], 'D in'),
  {
    id: 'd-mix',
    phase: 'D',
    vessel: 'main',
    kind: 'mix',
    tool: 'propeller',
    rpm: { min: 80, max: 150 },
    minutes: 5,
    noVortex: true,
    title: 'Stir in, no vortex',
  },
]

const finishSteps: readonly Step[] = [
  {
    id: 'adjust-ph',
    phase: 'finish',
    vessel: 'main',
    kind: 'adjust',
    property: 'pH',
    line: 'citric-acid-20',
    check: 'ph',
    portionUg: g(4),
    waitMinutes: 2,
    title: 'Bring the pH to 5.0–5.3, in portions',
  },
  {
    id: 'adjust-viscosity',
    phase: 'finish',
    vessel: 'main',
    kind: 'adjust',
    property: 'viscosity',
    line: 'sodium-chloride',
    check: 'viscosity',
    portionUg: g(2),
    waitMinutes: 5,
    title: 'Salt, in portions, to 2,000–6,000 mPa·s',
    instruction: 'Wait for the bubbles; past its maximum, salt thins',
  },
  ...part.finishing('read-ph', 'Rinse with plenty of water: a wet floor is slippery'),
  { id: 'rest', phase: 'finish', vessel: 'main', kind: 'rest', hours: 24, title: 'Rest the sample jars' },
  { id: 'ph-next-day', phase: 'finish', vessel: 'main', kind: 'measure', check: 'ph-rested' },
  { id: 'viscosity-next-day', phase: 'finish', vessel: 'main', kind: 'measure', check: 'viscosity-rested' },
  { id: 'appearance-next-day', phase: 'finish', vessel: 'main', kind: 'measure', check: 'appearance' },
]

export const shampooProcedure: readonly Step[] = [
  ...conditioningSteps,
  ...surfactantSteps,
  ...preservingSteps,
  ...fragranceSteps,
  ...finishSteps,
]
