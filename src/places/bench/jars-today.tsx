import { useFormat } from '../../app/format'
import { jarAddress, jarParts } from '../../app/jar-address'
import type { JarDue } from '../../app/jars-due'
import { Icon } from '../../parts/icon'

/** The jars that are to be pulled, a line a batch: in time, or late and still worth it. */
export function JarsToday({ jars, nowMs }: { jars: readonly JarDue[]; nowMs: number }) {
  const batches = [...new Set(jars.map(({ batch }) => batch.id))]
  return (
    <>
      {batches.map((id) => (
        <BatchJars key={id} jars={jars.filter(({ batch }) => batch.id === id)} nowMs={nowMs} />
      ))}
    </>
  )
}

function BatchJars({ jars, nowMs }: { jars: readonly JarDue[]; nowMs: number }) {
  const format = useFormat()
  const [first] = jars
  if (first === undefined) return null
  const isLate = jars.some(({ pull }) => pull.untilMs < nowMs)
  const until = `${isLate ? 'late since' : 'until'} ${format.date(first.pull.untilMs)}`
  return (
    <li>
      <a class="check check-due" href={jarAddress(first.batch.id, jarParts.today)}>
        <Icon name="calendar-clock" size={28} />
        <span class="check-words">
          <strong>
            {first.batch.shortName}: {jars.length === 1 ? '1 jar' : `${jars.length} jars`} to pull
          </strong>
          <span class="check-sub">{`${jars.map(({ pull }) => pull.jar).join(' · ')}, ${until}`}</span>
        </span>
      </a>
    </li>
  )
}
