import jStat from 'jstat'

/** The p quantile of Student's t with `degreesOfFreedom`. The library comes with it: import this file lazily. */
export const studentQuantile = (p: number, degreesOfFreedom: number): number => jStat.studentt.inv(p, degreesOfFreedom)
