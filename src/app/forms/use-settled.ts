import { useEffect, useState } from 'preact/hooks'
import { splitUnit } from '../../trade/number-text.ts'
import { useApp } from '../app.ts'
import { settleText } from './settle-typed.ts'

/**
 * What a typed sum, or a figure in another unit than the field's, comes to, as "= 90 min"; null where it is neither, or
 * cannot be worked out.
 */
export function useSettled(text: string, unit: string): string | null {
  const mark = useApp().settings.decimalMark.value
  const [known, setKnown] = useState({ text: '', settled: '' })
  useEffect(() => {
    let here = true
    void settleText(text, unit, mark).then((settled) => {
      if (here && settled !== text) setKnown({ text, settled })
    })
    return () => {
      here = false
    }
  }, [text, unit, mark])
  if (text === '' || known.text !== text) return null
  // A mass keeps the unit that was typed with it.
  return splitUnit(known.settled).unit === '' ? `= ${known.settled} ${unit}`.trim() : `= ${known.settled}`
}
