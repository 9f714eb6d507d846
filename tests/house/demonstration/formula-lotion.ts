import type { Formula, Phase } from '../../../src/batch/formula.ts'
import type { Step } from '../../../src/batch/step.ts'
import * as part from './formula-parts.ts'
import { g } from './mass.ts'

const { line, weigh } = part

const phases: readonly Phase[] = [
  {
    letter: 'A',
    name: 'Water phase',
    lines: [
      part.water([{ step: 'a-water', rest: true }]),
      line('sodium-phytate-50', 0.2),
      line('propanediol', 4, { range: { min: part.percent(3.8), max: part.percent(4.2) }, locksAfter: 'a-hydrate' }),
      line('sclerotium-gum', 0.4, {
        tolerance: { relative: 0.02 },
        range: { min: part.percent(0.38), max: part.percent(0.42) },
        fixedOrder: true,
        locksAfter: 'a-hydrate',
      }),
      line('colloidal-oat', 1, { range: { min: part.percent(0.9), max: part.percent(1.1) }, locksAfter: 'a-heat' }),
    ],
  },
  {
    letter: 'B',
    name: 'Oil phase',
    lines: [
      line('caprylic-capric-triglyceride', 7, { locksAfter: 'b-homogenise' }),
      line('squalane', 3, { locksAfter: 'b-homogenise' }),
      line('shea-butter', 2, { locksAfter: 'b-homogenise' }),
      line('glyceryl-stearate-peg-100', 3.5, {
        range: { min: part.percent(3.4), max: part.percent(3.6) },
        locksAfter: 'b-homogenise',
      }),
      line('cetearyl-alcohol', 2.5, { locksAfter: 'b-homogenise' }),
    ],
  },
  {
    letter: 'C',
    name: 'Cool-down',
    lines: [
      line('panthenol-75', 1.33, { assayAssumed: 0.75 }),
      line('phenoxyethanol-ehg', 1, { range: { min: part.percent(0.9), max: part.percent(1.1) } }),
      line('tocopherol', 0.3, { tolerance: { relative: 0.02 } }),
      part.asNeeded('lactic-acid-10', { expected: 0.5, min: 0, max: 1.5 }),
    ],
  },
]

const waterSteps: readonly Step[] = [
  weigh('a-water', 'A', 'aqua', 'main'),
  weigh('a-phytate', 'A', 'sodium-phytate-50', 'main'),
  weigh('a-propanediol', 'A', 'propanediol', 'slurry'),
  weigh('a-gum', 'A', 'sclerotium-gum', 'slurry', { instruction: 'Dust it onto the propanediol, then stir smooth' }),
  {
    id: 'a-slurry-in',
    phase: 'A',
    vessel: 'main',
    kind: 'charge',
    cup: 'slurry',
    rate: 'stream',
    rinse: true,
    after: ['a-propanediol', 'a-gum'],
    title: 'Stir the slurry in',
    instruction: 'Stream it into moving water until no lumps show',
  },
  {
    id: 'a-hydrate',
    phase: 'A',
    vessel: 'main',
    kind: 'hydrate',
    minutes: 20,
    shear: 'low: propeller, 200–300 rpm',
    startsWhen: 'the slurry is all in and no lumps show',
    title: 'Hydrate the gum',
  },
  weigh('a-oat', 'A', 'colloidal-oat', 'main', { instruction: 'Sift it in over a minute' }),
  {
    id: 'a-heat',
    phase: 'A',
    vessel: 'main',
    kind: 'heat',
    targetC: 75,
    covered: true,
    holdMinutes: 10,
    title: 'Heat A, covered',
    caution: 'Steam: lift the lid away from you',
  },
]

const oilSteps: readonly Step[] = [
  weigh('b-triglyceride', 'B', 'caprylic-capric-triglyceride', 'oil'),
  weigh('b-squalane', 'B', 'squalane', 'oil'),
  weigh('b-shea', 'B', 'shea-butter', 'oil'),
  weigh('b-emulsifier', 'B', 'glyceryl-stearate-peg-100', 'oil'),
  weigh('b-cetearyl', 'B', 'cetearyl-alcohol', 'oil'),
  {
    id: 'b-melt',
    phase: 'B',
    vessel: 'oil',
    kind: 'heat',
    targetC: 75,
    title: 'Melt B',
    caution: 'Hot oil burns, and water in it spits: bath or plate, never a flame',
  },
  {
    id: 'b-into-a',
    phase: 'B',
    vessel: 'main',
    kind: 'combine',
    from: 'oil',
    maxDifferenceC: 5,
    bothAtLeastC: 70,
    after: ['a-heat', 'b-melt'],
    title: 'B into A',
    instruction: 'A steady stream into the stirred water phase',
    caution: 'Hot: heat gloves on',
  },
  {
    id: 'b-homogenise',
    phase: 'B',
    vessel: 'main',
    kind: 'mix',
    tool: 'rotor-stator',
    rpm: { min: 3000, max: 5000 },
    minutes: 3,
    title: 'Homogenise',
    caution: 'Rotating tool: hair and sleeves tied back',
  },
]

const coolSteps: readonly Step[] = [
  {
    id: 'c-cool',
    phase: 'C',
    vessel: 'main',
    kind: 'cool',
    targetC: 40,
    by: 'bath',
    title: 'Cool, stirring',
    instruction: 'Propeller at 150–200 rpm; scrape the wall',
  },
  weigh('c-panthenol', 'C', 'panthenol-75', 'cool-cup'),
  weigh('c-preservative', 'C', 'phenoxyethanol-ehg', 'cool-cup', { secondPerson: true }),
  weigh('c-tocopherol', 'C', 'tocopherol', 'cool-cup'),
  {
    id: 'c-in',
    phase: 'C',
    vessel: 'main',
    kind: 'charge',
    cup: 'cool-cup',
    rate: 'stream',
    rinse: true,
    after: ['c-panthenol', 'c-preservative', 'c-tocopherol'],
    title: 'C in, below 40 °C',
  },
  {
    id: 'c-mix',
    phase: 'C',
    vessel: 'main',
    kind: 'mix',
    tool: 'propeller',
    rpm: { min: 150, max: 250 },
    minutes: 5,
    noVortex: true,
    title: 'Stir C in',
  },
]

const finishSteps: readonly Step[] = [
  {
    id: 'adjust-ph',
    phase: 'finish',
    vessel: 'main',
    kind: 'adjust',
    property: 'pH',
    line: 'lactic-acid-10',
    check: 'ph',
    portionUg: g(0.8),
    waitMinutes: 2,
    title: 'Bring the pH to 4.9–5.3',
    instruction: 'Sample below 30 °C; stir two minutes after each portion',
  },
  ...part.finishing('read-ph', 'Wipe the wax out with paper first: none of it down the sink', 3, g(100)),
  { id: 'rest', phase: 'finish', vessel: 'main', kind: 'rest', hours: 24, title: 'Rest the sample jars' },
  { id: 'ph-next-day', phase: 'finish', vessel: 'main', kind: 'measure', check: 'ph-rested' },
  { id: 'viscosity-next-day', phase: 'finish', vessel: 'main', kind: 'measure', check: 'viscosity' },
  { id: 'appearance-next-day', phase: 'finish', vessel: 'main', kind: 'measure', check: 'appearance' },
]

export const lotion: Formula = {
  id: 'formula-lotion',
  code: 'QW-LOT-01',
  name: 'Oat barrier body lotion',
  nickname: 'Lotion',
  contact: 'leave-on',
  revisions: [
    {
      number: 3,
      note: 'Gum up from 0.30 to 0.40 % for less run-off at 40 °C. Illustrative: not tried at a bench.',
      approvedBy: 'MO',
      approvedAt: '2026-06-02T16:20:00+01:00',
      usualSizeUg: g(500),
      phases,
      procedure: [...waterSteps, ...oilSteps, ...coolSteps, ...finishSteps],
      specification: [
        ...part.phChecks({ min: 4.9, max: 5.3 }, 10),
        {
          id: 'viscosity',
          property: 'viscosity',
          label: 'Viscosity, rested',
          unit: 'mPa·s',
          method: 'spindle 4, 12 rpm, 25 °C, after 60 s',
          limits: { min: 8000, max: 16000 },
          when: 'after-rest',
        },
        part.looks('white, even, no grain'),
        part.smells('faint, of oats'),
      ],
      vessels: [
        part.vessel('main', 'Main beaker', 1.5, 'propeller'),
        part.vessel('oil', 'Oil beaker', 1.5),
        part.cup('slurry', 'Slurry cup'),
        part.cup('cool-cup', 'C cup', 120),
      ],
      sharedLimits: [part.constituent('Phenoxyethanol', 1)],
      lossAllowance: 0.01,
      restHours: 24,
      preflight: part.preflight('Water bath on at 80 °C', 'Mask and extraction for the gum and the oat'),
    },
  ],
}
