import type { Format } from '../../app/format'
import type { Say } from '../../batch/entry-phrases'
import type { BatchRecord } from '../../batch/record'

/** What every part of the paper is made from. */
export interface PaperProps {
  record: BatchRecord
  format: Format
  say: Say
}
