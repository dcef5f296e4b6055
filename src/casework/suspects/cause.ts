import type { AxleName, FindingKind } from "#vehicle";
import type { SignName } from "../cases/look.ts";
import type { ReasonSubject } from "../cases/place-finding.ts";

/** A thing that can be behind a complaint, and where on the car it would sit. */
export interface Cause {
  readonly id: string;
  readonly label: string;
  /** Kinds of place it can be found at; empty: no eye and no reading here tells it. */
  readonly kinds: readonly FindingKind[];
  /** Part of the position's id that tells its place apart from others of the kind; null = any. */
  readonly match: string | null;
  readonly axle: AxleName | null;
  /**
   * The readings out of their limits that tell it. Without signs it is a reading alone, and a car on which nobody took it
   * has no place for it. Absent together with the signs: anything found there.
   */
  readonly about?: readonly ReasonSubject[];
  /** The signs that tell it from other causes at the same place; none: no eye tells it. */
  readonly signs?: readonly SignName[];
}
