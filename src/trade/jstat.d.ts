/** What is used of it; the package has no types of its own. */
declare module 'jstat' {
  const jStat: { readonly studentt: { readonly inv: (p: number, degreesOfFreedom: number) => number } }

  export = jStat
}
