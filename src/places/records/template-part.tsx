import { useState } from 'preact/hooks'
import type { StabilityPlan } from '../../batch/stability-plan'
import type { KeptTemplate } from '../../batch/stability-templates'
import { Button } from '../../parts/button'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import type { OwnTemplates } from './own-templates'
import type { PlanForm } from './stability-plan-form'

interface TemplatePartProps {
  form: PlanForm
  templates: OwnTemplates
}

interface Said {
  readonly kind: 'good' | 'over'
  readonly text: string
  /** Removed just now. */
  readonly gone?: KeptTemplate
}

/** It comes under the buttons, where the foot of the sheet may hide it. */
const intoSight = (said: HTMLElement | null): void => said?.scrollIntoView({ block: 'nearest' })

/** The plan as it stands, kept under a name for other batches; the one it was begun with is changed, renamed or removed. */
export function TemplatePart({ form, templates }: TemplatePartProps) {
  const { name, template } = form.draft.value
  const [typed, setTyped] = useState<string | null>(null)
  const [said, setSaid] = useState<Said | null>(null)
  const own = templates.all.value.find(({ id }) => id === template)
  const shownName = typed ?? own?.name ?? name
  const settle = (what: string, kept: Awaited<ReturnType<OwnTemplates['keep']>>) => {
    if ('refused' in kept) return setSaid({ kind: 'over', text: kept.refused })
    const { archived, ...changed } = kept.template
    form.change({ template: archived ? '' : changed.id })
    setTyped(null)
    setSaid({ kind: 'good', text: `${what}: ${changed.name}.`, ...(archived ? { gone: kept.template } : {}) })
  }
  const keep = async (write: (plan: StabilityPlan) => ReturnType<OwnTemplates['keep']>) => {
    const plan = form.read()
    if (plan !== null) settle('Kept as a template', await write(plan))
  }
  return (
    <fieldset class="plan-part">
      <legend>For other batches</legend>
      <TextField
        label="Name of the template"
        value={shownName}
        onChange={(text) => {
          setTyped(text)
          setSaid(null)
        }}
      />
      <div class="plan-more">
        <Button
          icon="plus"
          label="Keep as a template"
          onPress={() => void keep((plan) => templates.keep(shownName, plan))}
        />
        {own && (
          <>
            <Button
              icon="check"
              label="Change to this plan"
              name={`Change to this plan: the template ${own.name}`}
              onPress={() => void keep((plan) => templates.change(own, plan))}
            />
            <Button
              icon="pencil"
              label="Rename"
              name={`Rename the template ${own.name}`}
              onPress={async () => settle('Renamed', await templates.rename(own, shownName))}
            />
            <Button
              icon="trash"
              label="Remove"
              name={`Remove the template ${own.name}`}
              onPress={async () => settle('Removed', await templates.remove(own))}
            />
          </>
        )}
      </div>
      {said && (
        <div ref={intoSight}>
          <Notice kind={said.kind} title={said.text} live>
            {said.gone && (
              <Button
                icon="undo"
                label="Put it back"
                onPress={async () => said.gone && settle('Put back', await templates.putBack(said.gone))}
              />
            )}
          </Notice>
        </div>
      )}
    </fieldset>
  )
}
