type Triple = readonly [number, number, number];

const AXES = ["x", "y", "z"] as const;

/** The slips of one figure a person makes, likeliest first: a metre, a sign, a digit too many or too few, another unit. */
const slips: readonly { readonly words: string; readonly undo: (typed: number) => number }[] = [
  { words: "a metre too much", undo: (typed) => (Math.abs(typed) > 500 ? typed - 1000 * Math.sign(typed) : typed) },
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

/** One slip a person may have made in a place, in words, and the place they meant. */
export interface Slip {
  readonly words: string;
  readonly meant: Triple;
}

/** Every single slip that could have made this place, likeliest first. */
export function slipsOf(place: Triple): readonly Slip[] {
  return [
    ...slips.flatMap(({ words, undo }) =>
      ([2, 0, 1] as const).flatMap((axis): Slip[] => {
        const typed = place[axis];
        const meant = Number(undo(typed).toPrecision(12));
        return meant === typed
          ? []
          : [
              {
                words: `Is it ${words}? ${AXES[axis]} ${meant} in place of ${typed} would do.`,
                meant: withFigure(place, axis, meant),
              },
            ];
      }),
    ),
    ...swaps.map(
      ([one, other]): Slip => ({
        words: `Were ${AXES[one]} and ${AXES[other]} exchanged?`,
        meant: withFigure(withFigure(place, one, place[other]), other, place[one]),
      }),
    ),
  ];
}

/**
 * The likeliest single slip that would explain a place where no such point can lie, as a hint; `fits` says whether a
 * place can. "Check the numbers" where no single slip explains it.
 */
export function likelySlip(place: Triple, fits: (place: Triple) => boolean): string {
  return (
    slipsOf(place).find(({ meant }) => fits(meant))?.words ??
    "Check the numbers of this point, and those of the wheel centre."
  );
}

function withFigure(place: Triple, axis: 0 | 1 | 2, figure: number): Triple {
  return [axis === 0 ? figure : place[0], axis === 1 ? figure : place[1], axis === 2 ? figure : place[2]];
}
