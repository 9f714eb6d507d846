import type { PaperProps } from './paper-props'

/** Everything that was taken out of a vessel to be kept or read. */
export function PaperSamples({ record, format }: PaperProps) {
  const { samples } = record.mass
  if (samples.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Sampling</h2>
      <ul class="paper-notes">
        {samples.map((sample) => {
          const jars = sample.jars === 1 ? '1 jar' : `${sample.jars} jars`
          const what = `${format.massWithUnit(sample.massUg)} from ${sample.vessel}${sample.jars > 0 ? `, ${jars}` : ''}, for ${sample.purpose}`
          return (
            <li key={sample.entry} id={`entry-${sample.entry}`}>
              <span class="paper-quiet">
                {format.dateTime(sample.atMs)}, {sample.by}
              </span>{' '}
              {sample.struck ? <s>{what}</s> : what}
              {sample.struck &&
                `, struck ${format.time(sample.struck.atMs)} ${sample.struck.by}, ${sample.struck.reason}`}
              .
            </li>
          )
        })}
      </ul>
    </section>
  )
}
