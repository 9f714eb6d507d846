export type DecimalMark = '.' | ','

/** One press on the pad. The decimal mark is said by its meaning, so that both locales share one pad. */
export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'decimal' | '+' | '-' | 'rub-out'

/** No mass anybody weighs, and no sum on one line, is longer. */
const longest = 32

/**
 * The text after one more key: at most one decimal mark in each number of a sum, never two signs in a row (the newer
 * one stands), no plus at the start, and a nought before a leading mark.
 */
export const typeKey = (text: string, key: PadKey, decimalMark: DecimalMark): string => {
  if (key === 'rub-out') return text.slice(0, -1)
  if (text.length >= longest) return text
  const number = text.slice(text.search(/[^-+−]*$/))
  if (key === 'decimal') return /[.,]/.test(number) ? text : `${text}${/\d/.test(number) ? '' : '0'}${decimalMark}`
  if (key === '+' || key === '-') {
    const before = number === '' ? text.slice(0, -1) : text
    return before === '' && key === '+' ? '' : before + key
  }
  return number === '0' ? `${text.slice(0, -1)}${key}` : text + key
}

/** What a key of a hardware keyboard means on the pad, if anything. */
export const padKeyOf = (key: string): PadKey | undefined => {
  if (/^[0-9]$/.test(key)) return key as PadKey
  switch (key) {
    case '.':
    case ',':
    case 'Decimal':
      return 'decimal'
    case '+':
      return '+'
    case '-':
    case '−':
      return '-'
    case 'Backspace':
      return 'rub-out'
    default:
      return undefined
  }
}
