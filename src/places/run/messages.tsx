import './messages.css'
import { latePart } from '../../app/late-part'
import type { MessagesProps } from './messages-said'

const Said = latePart(() => import('./messages-said'), 'MessagesSaid')

/** Where a step says what there is to say before its number. Mostly there is nothing, so the words come late. */
export const Messages = (props: MessagesProps) => (
  <div class="messages">
    <Said {...props} />
  </div>
)
