import type { QuantityName } from "#vehicle";

/** In which state of load the thing was looked at; a reading in one is never held against a limit set for another. */
export type LoadState = "standing" | "hanging" | "supported" | "bench" | "driving";

/** Signs an eye or a hand can find; the words on screen and the grades they mean stand in signs.ts. */
export type SignName =
  | "surface-cracks"
  | "deep-cracks"
  | "web-torn"
  | "sleeve-off-centre"
  | "no-spring-back"
  | "oil-trace"
  | "fluid-gone"
  | "separated"
  | "metal-contact"
  | "play-felt"
  | "boot-split"
  | "boot-perished"
  | "film-above-seat"
  | "film-below-seat"
  | "wet-streams"
  | "no-damping"
  | "rebounds-differ"
  | "broken"
  | "crumbled"
  | "seized"
  | "stiff"
  | "cracked-edge"
  | "blue-spots"
  | "deposits"
  | "scored"
  | "lip"
  | "cord-seen"
  | "bulge"
  | "uneven-wear"
  | "feathered"
  | "cupped"
  | "one-shoulder"
  | "corroded"
  | "wet"
  | "chafed"
  | "rough"
  | "loose-bolt"
  | "marks-moved"
  | "hot"
  | "fault-stored"
  | "cannot-reach"
  | "out-of-place";

/** One act of looking or measuring at a place. Append-only: nothing is ever changed or removed, a withdrawal is a look of its own. */
export interface Look {
  /** UUIDv7 made by the client that looked; sending it again changes nothing. */
  readonly id: string;
  readonly car: string;
  readonly visit: string;
  /** A position's id ("rear-left/trailing-link/inner-bush") or a place of reading ("front-left/ride-height"). */
  readonly place: string;
  readonly content: LookContent;
  readonly loadState: LoadState | null;
  /** Key of the instrument table; null where an eye or hand looked. */
  readonly instrument: string | null;
  /** SHA-256 of a kept photo. */
  readonly photo: string | null;
  readonly note: string | null;
  readonly who: string;
  /** By the client's clock, ISO 8601 with offset. */
  readonly at: string;
}

export type LookContent =
  /** A reading in SI; `point` tells apart several of one quantity at one place (disc points 1 to 8, tread inner/middle/outer). */
  | {
      readonly kind: "reading";
      readonly quantity: QuantityName;
      readonly value: number;
      readonly u: number;
      readonly point: string | null;
    }
  | { readonly kind: "signs"; readonly signs: readonly SignName[] }
  /** Looked at, nothing seen. */
  | { readonly kind: "nothing-seen" }
  /** A reading that was asked for and not taken, and why where somebody says so. */
  | { readonly kind: "not-taken"; readonly quantity: QuantityName | null }
  /** Takes back an earlier look: it stays on record and no longer counts. */
  | { readonly kind: "withdrawn"; readonly look: string };

/** What the store adds when it has a look safe on disk. */
export interface StoredLook extends Look {
  /** Rises by one with every stored look. */
  readonly sequence: number;
  /** By the server's clock. */
  readonly receivedAt: string;
  /** The client's clock is off by more than a day: the look is kept, and pages say so. */
  readonly clockOff: boolean;
}
