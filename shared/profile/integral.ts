/** Nodes and weights of the 7-point Gauss and 15-point Kronrod rules on −1…1, positive half. Kronrod 1965; the QUADPACK tables. */
const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
]
const KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
]
const GAUSS = [0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694]

/** Greatest error of a piece over its whole, and how often it and its parts may be halved to get there. */
const RELATIVE_ERROR = 1e-11
const HALVINGS = 2_000

/** A slice of a solid by a parameter, and what it adds: derivatives by the parameter of position and lateral surface. */
export interface Slice {
  x: number
  dx: number
  lateral: number
  /** Area of the section, mm². */
  area: number
}

/** A smooth piece of a solid, run through by a parameter from `start` to `end`. */
export interface Piece {
  start: number
  end: number
  at(parameter: number): Slice
}

/** Volume, its first moment about the foot, and lateral surface: sums of both rules over one stretch of parameter. */
class Sums {
  readonly fine: SolidSums = { volume: 0, moment: 0, lateral: 0 }
  readonly coarse: SolidSums = { volume: 0, moment: 0, lateral: 0 }

  add({ x, dx, area, lateral }: Slice, fine: number, coarse: number): void {
    const volume = area * dx
    this.fine.volume += fine * volume
    this.fine.moment += fine * volume * x
    this.fine.lateral += fine * lateral
    if (coarse === 0) return
    this.coarse.volume += coarse * volume
    this.coarse.moment += coarse * volume * x
    this.coarse.lateral += coarse * lateral
  }
}

/** Volume mm³, its first moment about the foot mm⁴, lateral surface mm². */
export interface SolidSums {
  volume: number
  moment: number
  lateral: number
}

function sumsOver({ at }: Piece, from: number, to: number): Sums {
  const [middle, half] = [(from + to) / 2, (to - from) / 2]
  const sums = new Sums()
  sums.add(at(middle), half * KRONROD[7]!, half * GAUSS[3]!)
  for (let i = 0; i < 7; i++) {
    const [fine, coarse] = [half * KRONROD[i]!, i % 2 === 1 ? half * GAUSS[(i - 1) / 2]! : 0]
    sums.add(at(middle - half * NODES[i]!), fine, coarse)
    sums.add(at(middle + half * NODES[i]!), fine, coarse)
  }
  return sums
}

const agree = ({ fine, coarse }: Sums, whole: SolidSums): boolean =>
  Math.abs(fine.volume - coarse.volume) <= RELATIVE_ERROR * Math.abs(whole.volume) &&
  Math.abs(fine.moment - coarse.moment) <= RELATIVE_ERROR * Math.abs(whole.moment) &&
  Math.abs(fine.lateral - coarse.lateral) <= RELATIVE_ERROR * Math.abs(whole.lateral)

/**
 * Volume, moment and lateral surface of a piece, halved adaptively until each is known to 1e-11 of its whole; the
 * halvings are counted, so that a piece too small for its figures to settle ends all the same.
 */
export function pieceSums(piece: Piece): SolidSums {
  const first = sumsOver(piece, piece.start, piece.end)
  let halvings = HALVINGS
  const settle = (from: number, to: number, sums: Sums): SolidSums => {
    if (agree(sums, first.fine) || halvings-- <= 0) return sums.fine
    const middle = (from + to) / 2
    const low = settle(from, middle, sumsOver(piece, from, middle))
    const high = settle(middle, to, sumsOver(piece, middle, to))
    return {
      volume: low.volume + high.volume,
      moment: low.moment + high.moment,
      lateral: low.lateral + high.lateral,
    }
  }
  return settle(piece.start, piece.end, first)
}
