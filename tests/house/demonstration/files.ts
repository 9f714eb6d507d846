import { demonstrationCatalogue } from './catalogue.ts'

/** The catalogue as JSON with one document a line: short, and a change shows where it is. */
export function catalogueText(): string {
  const { format, version, ...lists } = demonstrationCatalogue
  const parts = Object.entries(lists).map(([name, documents]) => {
    const lines = documents.map((document) => `    ${JSON.stringify(document)}`)
    return `  ${JSON.stringify(name)}: [\n${lines.join(',\n')}\n  ]`
  })
  return `{\n  "format": ${JSON.stringify(format)},\n  "version": ${version},\n${parts.join(',\n')}\n}\n`
}
