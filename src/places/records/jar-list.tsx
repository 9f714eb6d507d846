import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { jarAddress } from '../../app/jar-address'
import type { PullState } from '../../batch/stability'
import { jarName } from '../../batch/stability-plan'
import { Mark } from '../../parts/mark'
import { standingWords } from './stability-words'

/** Every jar of a plan with its day and where it stands; each leads to its entry. */
export function JarList({ batch, pulls }: { batch: string; pulls: readonly PullState[] }) {
  const format = useFormat()
  // A new minute is soon enough for what is told in days.
  const nowMs = Math.floor(useApp().nowMs.value / 60_000) * 60_000
  return (
    <section aria-labelledby="jars">
      <h2 id="jars">Pulls</h2>
      <ul class="jar-list">
        {pulls.map((pull) => {
          const { kind, word } = standingWords(pull, nowMs)
          return (
            <li key={pull.id}>
              <a class="jar" href={jarAddress(batch, pull.id)}>
                <Mark kind={kind} size={24} />
                <span class="jar-words">
                  <strong>{jarName(pull.condition, pull.at)}</strong>
                  <span class={`jar-sub jar-${kind}`}>
                    {format.date(pull.dueAtMs)}, {word}
                  </span>
                </span>
              </a>
            </li>
          )
        })}
      </ul>
    </section>
  )
}
