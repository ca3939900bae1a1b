/** What the yard page shows once the boards are enough: those that go back, and the buying of the others. */
import './elements/yard-buying.ts'
import './elements/yard-put-back.ts'
