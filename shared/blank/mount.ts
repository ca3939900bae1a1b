/** How the blank is held at the driven end. */
export type Mount = 'spur' | 'cup' | 'chuck' | 'screw' | 'jam'
