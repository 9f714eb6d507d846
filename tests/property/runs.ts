/** How often each property is tried: 200 times by default, more where PROPERTY_RUNS says so. */
export const propertyRuns = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) } as const
