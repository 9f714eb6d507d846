import { expect } from 'vitest'

/** Within a relative difference of the expected number. */
export function expectRelative(got: number, expected: number, tolerance: number, what: string): void {
  expect(Math.abs(got - expected), `${what}: ${got}, expected ${expected}`).toBeLessThanOrEqual(
    tolerance * Math.abs(expected),
  )
}

/** Within an absolute difference of the expected number. */
export function expectAbsolute(got: number, expected: number, tolerance: number, what: string): void {
  expect(Math.abs(got - expected), `${what}: ${got}, expected ${expected}`).toBeLessThanOrEqual(tolerance)
}
