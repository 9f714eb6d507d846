import { useLayoutEffect } from 'preact/hooks'
import type { BatchHeader } from '../../batch/header'

/** What stands at the head of every printed page. */
export const paperLine = ({ code, formulaCode, revision }: BatchHeader): string =>
  `Batch record ${code}, ${formulaCode} revision ${revision.number}`

/** A text as CSS writes one; also safe inside a style element. */
export const cssString = (text: string): string =>
  `"${text.replace(/["\\<\p{Cc}]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 0).toString(16)} `)}"`

/** Hands the line to the margins of the printed page, which only see the root's properties, while a record is open. */
export function usePaperLine(header: BatchHeader | undefined): void {
  useLayoutEffect(() => {
    if (header === undefined) return
    const { style } = document.documentElement
    style.setProperty('--paper-line', cssString(paperLine(header)))
    return () => void style.removeProperty('--paper-line')
  }, [header])
}
