/** What the yard page shows once there are boards on the pile; fetched apart, so that the page opens quickly. */
import './elements/yard-answer.ts'
import './elements/yard-pile.ts'
