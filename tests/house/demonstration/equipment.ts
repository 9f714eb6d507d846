import type { Balance, KeptVessel, Person } from '../../../src/batch/catalogue.ts'
import { g, kg } from './mass.ts'

export const people: readonly Person[] = [
  { id: 'person-rk', initials: 'RK', name: 'Rhona Kestevan' },
  { id: 'person-mo', initials: 'MO', name: 'Milo Ormerand' },
  { id: 'person-jt', initials: 'JT', name: 'Juno Tallis' },
]

export const balances: readonly Balance[] = [
  {
    id: 'balance-1',
    name: 'Balance 1',
    stepUg: g(0.001),
    capacityUg: g(220),
    repeatabilityUg: g(0.001),
    linearityUg: g(0.002),
    checkEveryHours: 24,
  },
  {
    id: 'balance-2',
    name: 'Balance 2',
    stepUg: g(0.01),
    capacityUg: kg(2.2),
    repeatabilityUg: g(0.01),
    linearityUg: g(0.02),
    checkEveryHours: 24,
  },
  {
    id: 'balance-3',
    name: 'Balance 3',
    stepUg: g(0.1),
    capacityUg: kg(12),
    repeatabilityUg: g(0.1),
    linearityUg: g(0.2),
    checkEveryHours: 168,
  },
  {
    id: 'balance-4',
    name: 'Balance 4',
    stepUg: g(1),
    capacityUg: kg(32),
    repeatabilityUg: g(1),
    linearityUg: g(2),
    checkEveryHours: 168,
  },
]

export const vessels: readonly KeptVessel[] = [
  {
    id: 'vessel-beaker-800',
    name: 'Beaker 800 mL',
    tareUg: g(312.46),
    capacityUg: g(800),
    stirsUg: { min: g(150), max: g(720) },
  },
  {
    id: 'vessel-beaker-600',
    name: 'Beaker 600 mL',
    tareUg: g(241.83),
    capacityUg: g(600),
    stirsUg: { min: g(100), max: g(540) },
  },
  { id: 'vessel-beaker-250', name: 'Beaker 250 mL', tareUg: g(98.21), capacityUg: g(250) },
  { id: 'vessel-beaker-100', name: 'Beaker 100 mL', tareUg: g(49.35), capacityUg: g(100) },
  { id: 'vessel-slurry-cup', name: 'Steel cup 120 mL', tareUg: g(41.07), capacityUg: g(120) },
  { id: 'vessel-small-cup', name: 'Steel cup 60 mL', tareUg: g(36.52), capacityUg: g(60) },
  {
    id: 'vessel-jug-2',
    name: 'Steel jug 2 L',
    tareUg: g(688.9),
    capacityUg: kg(2),
    stirsUg: { min: g(400), max: kg(1.8) },
  },
  {
    id: 'vessel-pot-5',
    name: 'Steel pot 5 L',
    tareUg: g(1412.6),
    capacityUg: kg(5),
    stirsUg: { min: kg(1), max: kg(4.5) },
  },
]
