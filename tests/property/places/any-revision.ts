import fc from 'fast-check'
import type { Check, Line, Revision, SharedLimit, VesselNeed } from '../../../src/batch/formula'
import type { Step } from '../../../src/batch/step'

/** Shares as a person types them: up to five decimals of a percent. */
const fraction = fc.integer({ min: 0, max: 10_000_000 }).map(shareOf)
const text = fc.stringMatching(/^[A-Za-z][A-Za-z0-9 ,.-]{0,16}[A-Za-z0-9]$/)
const massUg = fc.integer({ min: 1, max: 5_000_000_000 })
const celsius = fc.integer({ min: -1000, max: 4000 }).map((tenths) => tenths / 10)
const minutes = fc.integer({ min: 0, max: 43_200 })
const yes = fc.constant(true as const)

/** Two ends in order. */
const ends = (end: fc.Arbitrary<number>) =>
  fc.tuple(end, end).map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) }))

/** The required fields always, each of the others now and then. */
const some = <R extends object, O extends object>(
  required: { [K in keyof R]: fc.Arbitrary<R[K]> },
  optional: { [K in keyof O]: fc.Arbitrary<O[K]> },
) =>
  fc.record({ ...required, ...optional } as Record<string, fc.Arbitrary<unknown>>, {
    requiredKeys: Object.keys(required),
  }) as fc.Arbitrary<R & Partial<O>>

const vessel: fc.Arbitrary<Omit<VesselNeed, 'id'>> = some(
  { name: text, kind: fc.constantFrom('vessel' as const, 'cup' as const) },
  { roomFactor: fc.integer({ min: 1, max: 100 }), holds: text, openLifeMinutes: minutes },
)

const check: fc.Arbitrary<Omit<Check, 'id'>> = some(
  {
    property: fc.constantFrom('pH' as const, 'viscosity' as const, 'odour' as const, 'other' as const),
    label: text,
    when: fc.constantFrom('in-process' as const, 'after-rest' as const),
  },
  {
    unit: text,
    method: text,
    expected: text,
    limits: ends(fc.integer({ min: -1000, max: 100_000 })),
    basis: fc.oneof(
      fc.constant({ kind: 'neat' as const }),
      fraction.map((share) => ({ kind: 'dilution' as const, fraction: share })),
    ),
  },
)

const limit: fc.Arbitrary<Omit<SharedLimit, 'id'>> = some(
  {
    name: text,
    max: fraction.map((share) => share / 2 + 0.5).map((share) => shareOf(Math.round(share * 1e7))),
    of: fc.oneof(
      text.map((name) => ({ kind: 'inci' as const, name })),
      fc
        .constantFrom('anionic' as const, 'cationic polymer' as const)
        .map((name) => ({ kind: 'active' as const, class: name })),
      text.map((name) => ({ kind: 'function' as const, function: name })),
    ),
  },
  { min: fc.constant(0.01) },
)

const lineParts = some<object, Partial<Line>>(
  {},
  {
    tolerance: fc.oneof(
      fraction.map((relative) => ({ relative })),
      massUg.map((absoluteUg) => ({ absoluteUg })),
    ),
    range: ends(fraction),
    fixedOrder: yes,
    assayAssumed: fraction,
  },
)

const amount = fc.oneof(
  fraction.map((share) => ({ kind: 'fraction' as const, fraction: share })),
  fc
    .record({ kind: fc.constant('as-needed' as const), expected: fraction, range: ends(fraction) })
    .map(({ kind, expected, range }) => ({ kind, expected, ...range })),
  some({ kind: fc.constant('qs' as const) }, { heldBack: fraction }),
)

type Fields = Readonly<Record<string, fc.Arbitrary<unknown>>>

const step = (kind: Step['kind'], required: Fields = {}, optional: Fields = {}): fc.Arbitrary<object> =>
  fc.record({ kind: fc.constant(kind), ...required, ...optional } as Fields, {
    requiredKeys: ['kind', ...Object.keys(required)],
  })

/** Every kind of step but those that weigh a line, which the lines bring. */
const bareStep = fc.oneof(
  step(
    'charge',
    { cup: fc.constant('v1'), rate: fc.constantFrom('sprinkle', 'stream', 'portions', 'all at once') },
    { rinse: yes },
  ),
  step(
    'combine',
    { from: fc.constant('v1') },
    { maxDifferenceC: fc.integer({ min: 0, max: 100 }), bothAtLeastC: celsius, rinse: yes },
  ),
  step('heat', { targetC: celsius }, { covered: yes, holdMinutes: minutes }),
  step('cool', { targetC: celsius, by: fc.constantFrom('air', 'bath') }),
  step('hold', { minutes }, { startsWhen: text }),
  step('hydrate', { minutes, shear: text }, { startsWhen: text }),
  step('mix', { tool: text, minutes }, { rpm: ends(minutes), noVortex: yes }),
  step('deaerate', { by: fc.constantFrom('stand', 'vacuum'), minutes }),
  step('measure', { check: fc.constant('c0') }),
  step(
    'adjust',
    { property: fc.constantFrom('pH', 'viscosity'), line: fc.constant('l0'), check: fc.constant('c0') },
    { portionUg: massUg, waitMinutes: minutes },
  ),
  step('make-up', { line: fc.constant('l0') }),
  step('rest', { hours: fc.integer({ min: 0, max: 8760 }) }),
  step('sample', { jars: fc.integer({ min: 1, max: 1000 }), eachUg: massUg }),
  step('fill', {}, { units: fc.integer({ min: 1, max: 1000 }), eachUg: massUg }),
  step('clean'),
  step('note', { text }),
)

const everyStep = some(
  { vessel: fc.constantFrom('v0', 'v1'), phase: fc.constantFrom('A', 'B', 'finish') },
  { title: text, instruction: text, secondPerson: yes, caution: text, after: fc.constant(['s0']) },
)

const head = some<object, Partial<Revision>>(
  {},
  {
    note: text,
    lossAllowance: fraction,
    restHours: fc.integer({ min: 0, max: 8760 }),
    readingAgeMinutes: fc.integer({ min: 1, max: 1440 }),
  },
)

/** Any revision that the schema knows, whether it could be weighed or not: every field is there now and then. */
export const anyRevision: fc.Arbitrary<Revision> = fc
  .record({
    head,
    usualSizeUg: massUg,
    lines: fc.array(fc.record({ parts: lineParts, amount, portion: fc.option(fraction), lock: fc.boolean() }), {
      minLength: 1,
      maxLength: 6,
    }),
    steps: fc.array(fc.record({ own: bareStep, every: everyStep }), { maxLength: 8 }),
    vessels: fc.tuple(vessel, vessel),
    checks: fc.array(check, { minLength: 1, maxLength: 3 }),
    limits: fc.array(limit, { maxLength: 2 }),
    preflight: fc.array(text, { maxLength: 3 }),
  })
  .map(({ head: parts, usualSizeUg, lines, steps, vessels, checks, limits, preflight }) => {
    const phaseOf = (at: number) => (at % 2 === 0 ? 'A' : 'B')
    const weighings = lines.map(
      (_, at): Step => ({ id: `s${at}`, vessel: 'v0', phase: phaseOf(at), kind: 'weigh', line: `l${at}` }),
    )
    const others = steps.map(({ own, every }, at) => ({ ...every, ...own, id: `t${at}` }) as unknown as Step)
    const written = lines.map(({ parts: line, amount: share, portion, lock }, at): Line => {
      const own = portion === null ? { step: `s${at}`, rest: true as const } : { step: `s${at}`, fraction: portion }
      return {
        ...line,
        ...(lock ? { locksAfter: 's0' } : {}),
        id: `l${at}`,
        materialId: `m${at % 3}`,
        amount: share.kind === 'qs' ? { ...share, portions: [own] } : share,
      }
    })
    return {
      ...parts,
      number: 1,
      usualSizeUg,
      phases: ['A', 'B'].map((letter, phase) => ({
        letter,
        name: `Phase ${letter}`,
        lines: written.filter((_, at) => at % 2 === phase),
      })),
      procedure: [...weighings, ...others],
      specification: checks.map((each, at) => ({ ...each, id: `c${at}` })),
      vessels: vessels.map((each, at) => ({ ...each, id: `v${at}` })),
      preflight,
      ...(limits.length > 0 ? { sharedLimits: limits.map((each, at) => ({ ...each, id: `x${at}` })) } : {}),
    }
  })

/** As many digits as a double keeps of a typed decimal. */
function shareOf(hundredThousandths: number): number {
  return Number((hundredThousandths / 1e5 / 100).toPrecision(15))
}
