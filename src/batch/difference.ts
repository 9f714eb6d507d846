/** Where two versions of one thing first differ, as a path such as `body.readings.1`; null where they do not. */
export function firstDifference(one: unknown, other: unknown): string | null {
  if (!isNested(one) || !isNested(other)) return Object.is(one, other) ? null : ''
  for (const key of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const within = firstDifference(valueAt(one, key), valueAt(other, key))
    if (within !== null) return within === '' ? key : `${key}.${within}`
  }
  return null
}

const isNested = (value: unknown): value is object => typeof value === 'object' && value !== null

const valueAt = (thing: object, key: string): unknown => Object.getOwnPropertyDescriptor(thing, key)?.value
