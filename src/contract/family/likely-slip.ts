type Triple = readonly [number, number, number];

const AXES = ["x", "y", "z"] as const;

/** The slips of one figure a person makes, likeliest first: a metre, a sign, a digit too many or too few, another unit. */
const slips: readonly { readonly words: string; readonly undo: (typed: number) => number }[] = [
  { words: "a metre too much", undo: (typed) => (Math.abs(typed) > 1000 ? typed - 1000 * Math.sign(typed) : typed) },
  { words: "the sign", undo: (typed) => -typed },
  { words: "a digit too many", undo: (typed) => typed / 10 },
  { words: "a digit too few", undo: (typed) => typed * 10 },
  { words: "a metre too little", undo: (typed) => typed + 1000 * Math.sign(typed) },
  { words: "another unit", undo: (typed) => typed / 1000 },
  { words: "another unit", undo: (typed) => typed * 1000 },
];

const swaps = [
  [0, 1],
  [1, 2],
  [0, 2],
] as const;

/**
 * The likeliest single slip that would explain a place where no such point can lie, as a hint; `fits` says whether a
 * place can. "Check the numbers" where no single slip explains it.
 */
export function likelySlip(place: Triple, fits: (place: Triple) => boolean): string {
  for (const { words, undo } of slips) {
    for (const axis of [2, 0, 1] as const) {
      const typed = place[axis];
      const meant = Number(undo(typed).toPrecision(12));
      if (meant !== typed && fits(withFigure(place, axis, meant)))
        return `Is it ${words}? ${AXES[axis]} ${meant} in place of ${typed} would do.`;
    }
  }
  for (const [one, other] of swaps) {
    if (fits(withFigure(withFigure(place, one, place[other]), other, place[one])))
      return `Were ${AXES[one]} and ${AXES[other]} exchanged?`;
  }
  return "Check the numbers of this point, and those of the wheel centre.";
}

function withFigure(place: Triple, axis: 0 | 1 | 2, figure: number): Triple {
  return [axis === 0 ? figure : place[0], axis === 1 ? figure : place[1], axis === 2 ? figure : place[2]];
}
