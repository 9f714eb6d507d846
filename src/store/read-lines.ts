/** Thrown at a line longer than any that this program writes. */
export class TooLong extends Error {}

export const longestLineCharacters = 1024 * 1024

interface Line {
  readonly text: string
  /** False for a last line that no line end follows. */
  readonly ended: boolean
}

/** The lines of a UTF-8 file, read in chunks. Bytes that are no UTF-8 throw a TypeError; an empty end is no line. */
export async function* readLines(file: Blob): AsyncGenerator<Line> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  const reader = file.stream().getReader()
  let rest = ''
  try {
    for (;;) {
      const { done, value } = await reader.read()
      rest += done ? endOf(decoder) : decoder.decode(value, { stream: true })
      const lines = rest.split('\n')
      rest = lines.pop() ?? ''
      for (const line of lines) yield { text: checked(line), ended: true }
      checked(rest)
      if (done) break
    }
    if (rest !== '') yield { text: rest, ended: false }
  } finally {
    reader.releaseLock()
  }
}

/** A letter that was cut in two is told by the sign for letters that are none. */
function endOf(decoder: TextDecoder): string {
  try {
    return decoder.decode()
  } catch {
    return '\ufffd'
  }
}

function checked(line: string): string {
  if (line.length > longestLineCharacters) throw new TooLong()
  return line
}
