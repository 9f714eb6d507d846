/**
 * The headers file that common static hosts read: a path pattern at the start of a line (`*` stands for anything),
 * and below it, indented, one header a line.
 */
export type HeaderRule = { readonly pattern: string; readonly headers: readonly Header[] }
export type Header = { readonly name: string; readonly value: string }

/** Throws, naming the line, where the text is neither a path nor a header. */
export const parseHeaders = (text: string): readonly HeaderRule[] => {
  const rules: { pattern: string; headers: Header[] }[] = []
  text.split('\n').forEach((line, index) => {
    if (line.trim() === '' || line.startsWith('#')) return
    if (!/^\s/.test(line)) {
      rules.push({ pattern: line.trim(), headers: [] })
      return
    }
    const header = /^\s+([\w-]+):\s*(.+?)\s*$/.exec(line)
    const rule = rules.at(-1)
    if (header?.[1] === undefined || header[2] === undefined || rule === undefined) {
      throw new Error(`Line ${index + 1} of the headers file is neither a path nor a header of one: ${line}`)
    }
    rule.headers.push({ name: header[1], value: header[2] })
  })
  return rules
}

/** The headers of one path: those of every rule that fits it. Hosts join a header given twice, so none may be. */
export const headersFor = (rules: readonly HeaderRule[], path: string): readonly Header[] =>
  rules.filter((rule) => fits(rule.pattern, path)).flatMap((rule) => rule.headers)

const fits = (pattern: string, path: string): boolean => {
  const source = pattern
    .split('*')
    .map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'))
    .join('.*')
  return new RegExp(`^${source}$`).test(path)
}
