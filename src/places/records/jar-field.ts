import type { Format } from '../../app/format'
import type { Measure } from '../../batch/stability-plan'
import type { JarEntryModel, OpenJar } from './jar-entry-model'
import { shownFigure } from './stability-words'

/** The number that the pad types into. */
export interface JarField {
  readonly key: string
  readonly name: string
}

export interface JarRowProps {
  jar: OpenJar
  measure: Measure
  model: JarEntryModel
  format: Format
  /** What is wrong with the text of that key. */
  wrongAt: (key: string) => string | undefined
  /** Null where the pad has nothing to type into. */
  onField: (field: JarField | null) => void
  onEnter: () => void
}

/** Where our own pad stands beside the fields, the tablet's keyboard stays away. */
export const keyboardBesidePad = (): 'none' | 'decimal' =>
  matchMedia('(min-width: 1000px)').matches ? 'none' : 'decimal'

export function hintOf(measure: Measure, format: Format): string | undefined {
  const { min, max } = measure.limits ?? {}
  const limits =
    min !== undefined && max !== undefined
      ? `good from ${shownFigure(min, measure, format)} to ${shownFigure(max, measure, format)}`
      : min !== undefined
        ? `at least ${shownFigure(min, measure, format)}`
        : max === undefined
          ? ''
          : `at most ${shownFigure(max, measure, format)}`
  return [measure.method, limits].filter(Boolean).join('; ') || undefined
}
