import { type Format, useFormat } from '../../app/format'
import { Card } from '../../parts/card'
import type { ComparedLine } from './compare'
import { Fields, HowMark } from './compare-marks'

interface ComparedLinesProps {
  lines: readonly ComparedLine[]
  /** Numbers of the two revisions. */
  was: number
  is: number
}

/** Every line of both revisions with both its shares and the difference between them. */
export function ComparedLines({ lines, was, is }: ComparedLinesProps) {
  const format = useFormat()
  return (
    <Card label="Lines" class="formula-card-flat">
      <h2>Lines</h2>
      <table class="lines compare-lines">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" class="lines-number">
              r{was} %
            </th>
            <th scope="col" class="lines-number">
              r{is} %
            </th>
            <th scope="col" class="lines-number">
              by
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id} class={`compare-${line.how}`}>
              <th scope="row">
                <span class="letter">{line.phase}</span>
                {line.label} <HowMark how={line.how} />
                <Fields fields={line.fields} />
              </th>
              <td class="lines-number">{shareText(line.was, format)}</td>
              <td class="lines-number">{shareText(line.is, format)}</td>
              <td class="lines-number">{differenceText(line, format)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Card>
  )
}

const shareText = (share: number | null, format: Format): string =>
  share === null ? '' : format.number(share * 100, 3)

function differenceText({ was, is }: ComparedLine, format: Format): string {
  const by = Number((((is ?? 0) - (was ?? 0)) * 100).toFixed(3))
  return by === 0 ? '' : `${by > 0 ? '+' : ''}${format.number(by, 3)}`
}
