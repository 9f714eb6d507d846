import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { formSentenceOf } from '../../app/refusals/forms'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Caution, Notice } from '../../parts/notice'

/** What the app is for, and what nobody should take it for. */
export function About() {
  return (
    <>
      <Card labelledBy="setup-about" class="setup-card">
        <h2 id="setup-about">Pannikin</h2>
        <p class="setup-says">
          A pannikin is a small enamel cup. This one walks a formulator through a batch: targets, weighings, timers,
          deviations and what can be done about them, and a record at the end. It works without a network, asks no
          server, and sends nothing anywhere.
        </p>
        <p class="setup-hint">Open source under the MIT licence.</p>
      </Card>
      <Card labelledBy="setup-cautions" class="setup-card">
        <h2 id="setup-cautions">Cautions</h2>
        <Caution text="The app is not a safety assessment. A cosmetic needs one, by a qualified assessor, before anybody uses it." />
        <ul class="setup-list">
          <li>Preservation is proved by a challenge test of the finished product, not by a percentage.</li>
          <li>Local law rules: on ingredients, limits, labels, and on who may make and sell.</li>
          <li>
            Hazards and what to wear are what you wrote from your own safety data sheets. Where they are missing, the
            app knows of none.
          </li>
          <li>
            The record takes the model of 21 CFR 211.188 and ISO 22716. No certification is claimed, and none is
            replaced.
          </li>
          <li>Whether it is right for your work is for you to check: weigh a batch of water with it first.</li>
        </ul>
      </Card>
      <Demonstration />
    </>
  )
}

function Demonstration() {
  const app = useApp()
  const [state, setState] = useState<'rest' | 'loading' | string>('rest')
  const load = async () => {
    setState('loading')
    const refusal = await app.loadDemonstration()
    setState(refusal === null ? 'rest' : formSentenceOf(refusal))
  }
  return (
    <Card labelledBy="setup-demonstration" class="setup-card">
      <h2 id="setup-demonstration">The demonstration</h2>
      <p class="setup-says">
        Quillwort Studio, its people, suppliers and lots are invented. Its four formulas are illustrative and were not
        tried at a bench: do not make them.
      </p>
      {app.hasDemonstration.value ? (
        <p class="setup-hint">It is on this tablet.</p>
      ) : (
        <div class="setup-buttons">
          <Button
            icon="flask"
            label={state === 'loading' ? 'Setting it out' : 'Load the demonstration'}
            disabled={state === 'loading'}
            onPress={() => void load()}
          />
        </div>
      )}
      {state !== 'rest' && state !== 'loading' && <Notice kind="over" title={state} live />}
    </Card>
  )
}
