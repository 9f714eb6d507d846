import { useApp } from '../../app/app'
import type { PullState } from '../../batch/stability'
import { jarName } from '../../batch/stability-plan'
import { JarLink } from './jar-link'
import { standingWords } from './stability-words'

/** Every jar of a plan with its day and where it stands; each leads to its entry. */
export function JarList({ batch, pulls }: { batch: string; pulls: readonly PullState[] }) {
  // A new minute is soon enough for what is told in days.
  const nowMs = Math.floor(useApp().nowMs.value / 60_000) * 60_000
  return (
    <section aria-labelledby="jars">
      <h2 id="jars">Pulls</h2>
      <ul class="jar-list">
        {pulls.map((pull) => (
          <li key={pull.id}>
            <JarLink
              batch={batch}
              pull={pull}
              name={jarName(pull.condition, pull.at)}
              standing={standingWords(pull, nowMs)}
            />
          </li>
        ))}
      </ul>
    </section>
  )
}
