/**
 * CSV of texts, as spreadsheets take it: with a semicolon between the cells where the decimal mark is a comma. A text
 * that a spreadsheet would run as a sum is kept from it by an apostrophe, which reading takes off again.
 */
export async function writeSeparated(rows: readonly (readonly string[])[], mark: '.' | ','): Promise<string> {
  const { unparse } = (await import('papaparse')).default
  const cells = rows.map((row) => row.map(neutral))
  return `\ufeff${unparse(cells, { delimiter: mark === ',' ? ';' : ',', newline: '\r\n' })}\r\n`
}

const neutral = (text: string): string => (/^'*[=+\-@\t\r]/.test(text) ? `'${text}` : text)

/** The text as it was before `writeSeparated` kept it from being run. */
export const withoutNeutral = (text: string): string => (/^'+[=+\-@\t\r]/.test(text) ? text.slice(1) : text)
