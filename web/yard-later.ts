/** What the yard page shows once there are boards on the pile; fetched apart, so that the page opens quickly. */
import './elements/outbox-notice.ts'
import './elements/yard-answer.ts'
import './elements/yard-buying.ts'
import './elements/yard-defects.ts'
import './elements/yard-pile.ts'
