/** Thrown at a line longer than any that this program writes. */
export class TooLong extends Error {}

const longestLineCharacters = 1024 * 1024

/** The lines of a UTF-8 file, read in chunks. Bytes that are no UTF-8 throw a TypeError; an empty end is no line. */
export async function* readLines(file: Blob): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  const reader = file.stream().getReader()
  let rest = ''
  try {
    for (;;) {
      const { done, value } = await reader.read()
      rest += done ? decoder.decode() : decoder.decode(value, { stream: true })
      const lines = rest.split('\n')
      rest = lines.pop() ?? ''
      for (const line of lines) yield checked(line)
      checked(rest)
      if (done) break
    }
    if (rest !== '') yield rest
  } finally {
    reader.releaseLock()
  }
}

function checked(line: string): string {
  if (line.length > longestLineCharacters) throw new TooLong()
  return line
}
