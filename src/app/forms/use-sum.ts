import { useEffect, useState } from 'preact/hooks'
import { isSum, splitUnit } from '../../trade/number-text.ts'
import { useApp } from '../app.ts'
import { showNumber } from './show-fields.ts'

/** What a typed sum comes to, as "= 10"; null where the text is none, or cannot be worked out. */
export function useSum(text: string): string | null {
  const mark = useApp().settings.decimalMark.value
  const { number } = splitUnit(text)
  const sum = isSum(number) ? number : null
  const [known, setKnown] = useState<{ readonly sum: string; readonly worth: string | null } | null>(null)
  useEffect(() => {
    if (sum === null) return
    let here = true
    void import('../../trade/typed-sum.ts')
      .then(({ evaluateSum }) => evaluateSum(sum))
      .then((worth) => {
        if (here) setKnown({ sum, worth: worth.ok ? `= ${showNumber(worth.value, mark)}` : null })
      })
    return () => {
      here = false
    }
  }, [sum, mark])
  return sum !== null && known?.sum === sum ? known.worth : null
}
