import type { Adjuster, Buffer, Species } from './mixture'
import type { Random } from './random'

/** What is on the bench before the first addition, per kg of batch; the window's middle, and how wide it may be. */
export interface Recipe {
  readonly waterFraction: number
  /** mmol per kg of batch. */
  readonly buffers: readonly (Omit<Buffer, 'mol'> & { readonly perKg: number })[]
  readonly startPh: number
  readonly middlePh: number
  readonly adjuster: Omit<Adjuster, 'wTrue'> & { readonly w: number; readonly dir: -1 | 1 }
}

/** The kinds of batches that are brought to a pH, each with its buffers and its usual adjusters. */
export const families: Readonly<Record<string, (random: Random) => Recipe>> = {
  'body lotion': (random) => {
    const isAcidified = random.even() < 0.5
    return {
      waterFraction: random.between(0.6, 0.82),
      buffers: [
        { name: 'thickener', sp: polymer(random.normal(5.6, 0.2), 0.7), perKg: random.scaled(3, 30) },
        { name: 'benzoate', sp: weak(random, 0, 4.2), perKg: random.between(0, 30) },
        { name: 'citrate', sp: weak(random, 0, 3.13, 4.76, 6.4), perKg: random.scaled(0.2, 8) },
      ],
      startPh: isAcidified ? random.between(6, 7.6) : random.between(3.8, 4.7),
      middlePh: isAcidified ? random.between(5, 5.6) : random.between(5.2, 6),
      adjuster: isAcidified ? anAcid(random) : aBase(random),
    }
  },
  'hair rinse': (random) => ({
    waterFraction: random.between(0.82, 0.93),
    buffers: [
      { name: 'carbonate', sp: weak(random, 0, 6.35, 10.33), perKg: random.scaled(0.2, 3) },
      { name: 'sorbate', sp: weak(random, 0, 4.76), perKg: random.between(0, 25) },
      { name: 'phosphate', sp: weak(random, 0, 2.15, 7.2, 12.35), perKg: random.scaled(0.05, 2) },
      { name: 'amine', sp: weak(random, 1, random.normal(9.2, 0.4)), perKg: random.between(0, 15) },
    ],
    startPh: random.between(5.6, 7.8),
    middlePh: random.between(3.8, 4.6),
    adjuster: anAcid(random),
  }),
  'carbomer gel': (random) => ({
    waterFraction: random.between(0.88, 0.96),
    buffers: [
      {
        name: 'carbomer',
        sp: polymer(random.normal(5.4, 0.2), random.between(0.6, 1)),
        perKg: random.scaled(15, 110),
      },
      { name: 'carbonate', sp: weak(random, 0, 6.35, 10.33), perKg: random.scaled(0.05, 1) },
    ],
    startPh: random.between(2.8, 3.5),
    middlePh: random.between(5.6, 6.6),
    adjuster: aBase(random),
  }),
  'sarcosinate wash': (random) => ({
    waterFraction: random.between(0.7, 0.88),
    buffers: [
      {
        name: 'sarcosinate',
        sp: polymer(random.normal(5.2, 0.2), 0.35),
        perKg: random.scaled(40, 300),
      },
      { name: 'amphoacetate', sp: weak(random, 1, 4.6, 8.8), perKg: random.scaled(30, 200) },
      { name: 'benzoate', sp: weak(random, 0, 4.2), perKg: random.between(0, 35) },
      { name: 'phosphate', sp: weak(random, 0, 2.15, 7.2, 12.35), perKg: random.scaled(0.1, 5) },
    ],
    startPh: random.between(6.6, 8.6),
    middlePh: random.between(4.9, 5.6),
    adjuster: anAcid(random),
  }),
  'acid serum': (random) => ({
    waterFraction: random.between(0.75, 0.95),
    buffers: [
      { name: 'lactate', sp: weak(random, 0, 3.86), perKg: random.scaled(60, 600) },
      { name: 'citrate', sp: weak(random, 0, 3.13, 4.76, 6.4), perKg: random.scaled(0.5, 30) },
    ],
    startPh: random.between(2.1, 3),
    middlePh: random.between(3.6, 4.2),
    adjuster: random.even() < 0.5 ? sodiumHydroxide(random) : arginine(random),
  }),
  'alkaline start': (random) => ({
    waterFraction: random.between(0.7, 0.92),
    buffers: [
      { name: 'carbonate', sp: weak(random, 0, 6.35, 10.33), perKg: random.scaled(1, 30) },
      { name: 'phosphate', sp: weak(random, 0, 2.15, 7.2, 12.35), perKg: random.scaled(0.2, 15) },
      { name: 'thickener', sp: polymer(random.normal(5.6, 0.3), 0.6), perKg: random.scaled(0.5, 40) },
    ],
    startPh: random.between(8.5, 10.2),
    middlePh: random.between(5.2, 6.2),
    adjuster: anAcid(random),
  }),
  'low-buffer mist': (random) => {
    const isAcidified = random.even() < 0.6
    return {
      waterFraction: random.between(0.9, 0.99),
      buffers: [
        { name: 'citrate', sp: weak(random, 0, 3.13, 4.76, 6.4), perKg: random.scaled(0.02, 1) },
        { name: 'carbonate', sp: weak(random, 0, 6.35, 10.33), perKg: random.scaled(0.05, 0.6) },
        {
          name: 'benzoate',
          sp: weak(random, 0, 4.2),
          perKg: random.even() < 0.4 ? random.between(2, 30) : 0,
        },
      ],
      startPh: isAcidified ? random.between(6.2, 7.8) : random.between(3.6, 4.4),
      middlePh: isAcidified ? random.between(4.8, 5.8) : random.between(5, 6),
      adjuster: isAcidified
        ? citricAcid(random.oneOf(0.1, 0.1, 0.2))
        : random.even() < 0.5
          ? { ...sodiumHydroxide(random), w: 0.1 }
          : arginine(random),
    }
  },
}

/** A species whose pKas are a little off the textbook's, as ionic strength puts them. */
const weak = (random: Random, z0: number, ...pKas: readonly number[]): Species => ({
  z0,
  pKas: pKas.map((pKa) => random.normal(pKa, 0.12)).sort((one, other) => one - other),
})

/** Midpoints of nine equal parts of a normal distribution, in standard deviations. */
const ninths = [-1.593, -0.967, -0.589, -0.282, 0, 0.282, 0.589, 0.967, 1.593]

/** Acid groups that do not give off their protons all at one pH. */
const polymer = (mean: number, deviation: number): Species => ({
  dist: ninths.map((quantile) => mean + quantile * deviation),
})

const citricAcid = (w: number): Recipe['adjuster'] => ({
  name: 'citric acid',
  w,
  mw: 192.12,
  sid: 0,
  sp: { z0: 0, pKas: [3.13, 4.76, 6.4] },
  dir: -1,
})

const lacticAcid = (w: number): Recipe['adjuster'] => ({
  name: 'lactic acid',
  w,
  mw: 90.08,
  sid: 0,
  sp: { z0: 0, pKas: [3.86] },
  dir: -1,
})

const sodiumHydroxide = (random: Random): Recipe['adjuster'] => ({
  name: 'sodium hydroxide',
  w: random.oneOf(0.1, 0.18, 0.2),
  mw: 40,
  sid: 1,
  sp: null,
  dir: 1,
})

const arginine = (random: Random): Recipe['adjuster'] => ({
  name: 'arginine',
  w: random.oneOf(0.1, 0.15),
  mw: 174.2,
  sid: 0,
  sp: { z0: 2, pKas: [2.17, 9.04, 12.48] },
  dir: 1,
})

const triethanolamine = (random: Random): Recipe['adjuster'] => ({
  name: 'triethanolamine',
  w: random.oneOf(0.5, 0.99),
  mw: 149.19,
  sid: 0,
  sp: { z0: 1, pKas: [7.76] },
  dir: 1,
})

const anAcid = (random: Random): Recipe['adjuster'] =>
  random.even() < 0.5 ? citricAcid(random.oneOf(0.1, 0.2, 0.25, 0.5)) : lacticAcid(random.oneOf(0.1, 0.8, 0.85, 0.9))

const aBase = (random: Random): Recipe['adjuster'] =>
  random.oneOf(sodiumHydroxide, sodiumHydroxide, triethanolamine, arginine)(random)
