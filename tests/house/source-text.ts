/** Source code cut into what the compiler reads and what only people read. */
export interface Piece {
  readonly kind: 'code' | 'comment' | 'text'
  readonly text: string
  readonly at: number
}

/** Pieces in order; joined, they are the source again. Code inside a template string counts as code. */
export const pieces = (source: string): readonly Piece[] => {
  const found: Piece[] = []
  let codeFrom = 0
  let at = 0
  // Braces open inside each template expression that is being read, innermost last.
  const templates: number[] = []

  const put = (kind: Piece['kind'], from: number, to: number): void => {
    if (from > codeFrom) found.push({ kind: 'code', text: source.slice(codeFrom, from), at: codeFrom })
    if (to > from) found.push({ kind, text: source.slice(from, to), at: from })
    codeFrom = to
    at = to
  }
  const templateText = (from: number): void => {
    let to = from + 1
    while (to < source.length && source[to] !== '`') {
      if (source.startsWith('${', to)) {
        templates.push(0)
        put('text', from, to + 2)
        return
      }
      to += source[to] === '\\' ? 2 : 1
    }
    put('text', from, to + 1)
  }

  while (at < source.length) {
    const rest = source.slice(at, at + 2)
    const depth = templates.at(-1)
    if (rest === '//') put('comment', at, endOf(source, '\n', at))
    else if (rest === '/*') put('comment', at, endOf(source, '*/', at) + 2)
    else if (rest[0] === "'" || rest[0] === '"') put('text', at, endOfString(source, at))
    else if (rest[0] === '`') templateText(at)
    else if (rest[0] === '/' && startsPattern(source, at)) put('text', at, endOfPattern(source, at))
    else if (rest[0] === '{' && depth !== undefined) {
      templates[templates.length - 1] = depth + 1
      at += 1
    } else if (rest[0] === '}' && depth === 0) {
      templates.pop()
      templateText(at)
    } else if (rest[0] === '}' && depth !== undefined) {
      templates[templates.length - 1] = depth - 1
      at += 1
    } else at += 1
  }
  put('code', source.length, source.length)
  return found
}

/** The code alone; what was cut out leaves a space. */
export const codeOnly = (source: string): string =>
  pieces(source)
    .map(({ kind, text }) => (kind === 'code' ? text : ' '))
    .join('')

const endOf = (source: string, mark: string, from: number): number => {
  const found = source.indexOf(mark, from)
  return found === -1 ? source.length : found
}

const endOfString = (source: string, from: number): number => {
  let to = from + 1
  while (to < source.length && source[to] !== source[from] && source[to] !== '\n') to += source[to] === '\\' ? 2 : 1
  return to + 1
}

/** A slash begins a pattern where no value stands before it. In JSX, `</p>` and `/>` are no patterns. */
const startsPattern = (source: string, at: number): boolean => {
  const before = source.slice(Math.max(0, at - 40), at).trimEnd()
  return /(?:[([{,;=:?!&|>+\-*%~^]|\b(?:return|typeof|case|in|of))$/.test(before) && source[at + 1] !== '>'
}

const endOfPattern = (source: string, from: number): number => {
  let to = from + 1
  let inSet = false
  while (to < source.length && source[to] !== '\n' && (inSet || source[to] !== '/')) {
    if (source[to] === '[') inSet = true
    if (source[to] === ']') inSet = false
    to += source[to] === '\\' ? 2 : 1
  }
  return to + 1
}
