/** What to mind, said wherever the danger is. The lathe’s and the finish’s makers come first. */
export const cautions = {
  clothing: 'No gloves, loose sleeves or jewellery; hair tied back, face shield on.',
  start: 'Speed down first, turn it by hand, rest clear, stand aside when it starts.',
  restStopped: 'The rest is moved only with the lathe stopped.',
  corners: 'Corners fly past unseen: rest clear of the farthest corner, fingers behind it.',
  springCalipers:
    'Only spring calipers with rounded tips on a turning piece; all others with the lathe stopped.',
  dust: 'Sanding dust harms the lungs: mask and extraction; tool rest taken away, small paper, no cloth.',
  dustByHand: 'Sanding dust harms the lungs: mask and extraction by hand too.',
  oilyRags: 'Oily rags ignite by themselves: flat outdoors or in water.',
  finishOnLathe: 'A pad, never a cloth that can wind up; the finish maker’s instructions come first.',
  film: 'Vapour and spray: ventilate, keep from flame; the finish maker’s instructions come first.',
  glue: 'Clamped 24 h or as the glue’s maker says before it is turned: a joint that opens at speed flies apart.',
  glueLine:
    'A glue line runs through both centres: the spur’s points go across the glue line, never along it, or a cup centre drives; at the tail a cup too.',
  glueLineHeld:
    'A glue line runs through both centres: a cup at the tail, for a pointed centre wedges it open.',
  shortBlank:
    'Too short for jointer and planer: by hand, held in the vice; the machine maker’s minimum comes first.',
  shortStock:
    'Too short for jointer, planer and saw: plane longer strips and crosscut last; the machine maker’s minimum comes first.',
  openMortise: 'An open mortise catches the tool and fingers: keep the rest clear and the speed low.',
  slender: 'Slender: light cuts, sharp tools, a steady rest on the journal; chatter means slow down.',
  slenderHand:
    'Lathe stopped while the rest is taken away; then light cuts only, for nothing steadies it but the hand.',
  unbalanced: 'Out of balance: start at the lathe’s slowest and raise the speed only while nothing shakes.',
  parting:
    'Parting tool level and clear of its sides; hands away from the chuck, never grab a part that still turns.',
  oneEnd: 'Held at one end only: light cuts, towards what holds it.',
  jam: 'Held by friction: light cuts towards the chuck, tail centre up as long as it can be.',
  guard: 'Local code and licensed practice come first: the thinnest place between the rails rules the gap.',
}

/**
 * The single warnings of an operation's caution, so that a list can say each of them once.
 *
 * @example cautionSentences('Lathe stopped. Mask on.') // ['Lathe stopped.', 'Mask on.']
 */
export const cautionSentences = (caution: string | undefined): string[] =>
  caution ? caution.split(/(?<=[.!]) +(?=\p{Lu})/u) : []
