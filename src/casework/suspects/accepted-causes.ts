import type { FamilyWork } from "#vehicle";
import type { PlaceFinding } from "../cases/place-finding.ts";
import { remedyIdFor } from "../cases/remedies.ts";
import { causes } from "./cause-table.ts";
import type { CarSuspect } from "./visit-suspects.ts";

/** A cause somebody accepted that brings no work into the plan, and why. */
export interface UnplannedCause {
  readonly cause: string;
  readonly label: string;
  readonly why: string;
}

/** What accepted causes come to where nothing was found at their places. */
export interface AcceptedCauses {
  /** Places taken as the cause without a finding, so that their remedy enters the plan. */
  readonly assumed: readonly PlaceFinding[];
  readonly unplanned: readonly UnplannedCause[];
}

/** A cause that can sit at more remedies than this is not planned for: nobody knows which of them. */
const MOST_REMEDIES = 2;

const nameOf = ({ axle, side, label }: PlaceFinding): string =>
  `${side === null ? axle : `${axle} ${side}`}, ${label.toLowerCase()}`;

/** Why a cause without a place is not planned for: it is a reading nobody took, or no single part. */
const withoutPlace = (suspect: CarSuspect): string =>
  (causes.find(({ id }) => id === suspect.cause)?.about ?? []).length > 0
    ? "nothing of it was read; read it, and what lies out of its limits brings its remedy"
    : "it is no single part of the underside, and no remedy for it is on file";

/**
 * What the causes somebody accepted ask for beyond the findings: the places where they would sit, those nobody has looked
 * at first, with the remedy on file; where there is none, or nobody can tell which, why.
 */
export function assumeAccepted(
  suspects: readonly CarSuspect[],
  findings: readonly PlaceFinding[],
  work: FamilyWork,
): AcceptedCauses {
  const assumed: PlaceFinding[] = [];
  const unplanned: UnplannedCause[] = [];
  for (const suspect of suspects) {
    if (suspect.word?.word !== "accepted") continue;
    const { cause, label, places } = suspect;
    const leave = (why: string) => unplanned.push({ cause, label, why });
    const own = findings.filter(({ place }) => places.includes(place));
    const found = own.filter(({ grade }) => (grade ?? 0) > 0);
    if (own.length === 0) leave(withoutPlace(suspect));
    else if (found.length > 0) {
      if (found.every((finding) => remedyIdFor(work, finding) === null))
        leave(`what was found at ${found.map(nameOf).join("; ")} has no remedy on file`);
    } else {
      const unseen = own.filter(({ grade }) => grade === null);
      const pool = unseen.length > 0 ? unseen : own;
      const curable = pool.filter((finding) => remedyIdFor(work, finding) !== null);
      const remedies = new Set(curable.map((finding) => remedyIdFor(work, finding)));
      if (curable.length === 0) leave(`no remedy is on file for ${pool.map(nameOf).join("; ")}`);
      else if (remedies.size > MOST_REMEDIES)
        leave(
          `it can sit at ${curable.length} places, and nobody said which: look at them, or say in Enquiry at which axle it is felt`,
        );
      else assumed.push(...curable.map((finding) => assume(finding, suspect)));
    }
  }
  return { assumed, unplanned };
}

/** A place taken as the cause: watched, since nothing was seen there. */
const assume = (finding: PlaceFinding, { label }: CarSuspect): PlaceFinding => ({
  ...finding,
  grade: 1,
  closeToCall: false,
  notKnown: false,
  found: `taken as the cause (${label.charAt(0).toLowerCase()}${label.slice(1)}); nothing was found here`,
  reasons: [],
  limitWords: null,
  howSure: "accepted by somebody, not seen",
  caveat: null,
});
