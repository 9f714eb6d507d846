import type { Format } from '../../app/format'
import { torqueIsOff } from '../../batch/how-read'
import type { Bodies } from '../../batch/kinds'
import { type StandardReading, standardOf, unlike, unlikeWords } from '../../batch/read-unlike'
import { verdictOf } from '../../batch/record-results'
import { Mark } from '../../parts/mark'
import { Notice } from '../../parts/notice'
import { replicatesOf } from '../../trade/replicates'
import { figure } from './figure'
import type { RestedRow } from './rested-row'

interface SoFarProps {
  row: RestedRow
  /** What the row comes to; null while it cannot be read or is empty. */
  result: Bodies['measured'] | null
  format: Format
  /** How the batch itself was read, beside what the check's method states. */
  standard?: StandardReading | undefined
}

/** Mean and spread of what was read so far, beside the limits; and what makes a reading worth less. */
export function RestedSoFar({ row, result, format, standard = standardOf(row.check?.method) }: SoFarProps) {
  if (result === null) return null
  const told = replicatesOf(result.readings ?? [])
  const value = told?.mean ?? result.value
  const otherwise = unlikeWords(unlike(standard, result), { number: (each) => figure(each, format) })
  const verdict = verdictOf({ ...result, ...(value === undefined ? {} : { value }) }, row.check)
  return (
    <>
      <p class="rested-sofar">
        {verdict !== 'none' && <Mark kind={verdict === 'within' ? 'within' : 'over'} size={22} />}
        <span>
          {value === undefined
            ? result.text
            : `${figure(Number(value.toPrecision(6)), format)} ${result.unit ?? ''}`.trim()}
          {told?.spread &&
            `, ${told.spread.kind} ${figure(Number(told.spread.value.toPrecision(3)), format)}, n ${told.n}`}
          {verdict === 'under' && ': below its limits'}
          {(verdict === 'over' && (result.value === undefined ? ': not as it should be' : ': above its limits')) || ''}
        </span>
      </p>
      {otherwise !== '' && (
        <Notice kind="caution" title={`Read ${otherwise}. Beside the others it can be compared only with care.`} />
      )}
      {result.how && torqueIsOff(result.how) && (
        <Notice
          kind="caution"
          title="Torque outside 10–100 %: the viscometer does not read well there. Take another spindle or speed, or keep it so."
        />
      )}
    </>
  )
}
