import type { Format } from '../../app/format'
import type { FinishedRow } from '../../batch/deviation'
import { decimalsApart } from '../../trade/apart'

/** With how many decimals the limits of a row are told apart, and a share that is past one from it. */
export const decimalsOf = ({ after, low, high, breaks }: FinishedRow): number =>
  decimalsApart(breaks ? [after, low, high] : [low, high])

/** Percentages of one row, none of which looks like another one that it is not. */
export const percentsOf = (row: FinishedRow, format: Format): ((fraction: number) => string) => {
  const decimals = decimalsOf(row)
  return (fraction) => format.percent(fraction, decimals)
}

/** The figure of a percentage alone. */
export const bareOf = (percent: string): string => percent.replace(/\s*%$/, '')
