import type { QuantityName } from "#vehicle";
import type { LoadState, SignName, StoredLook } from "./look.ts";

/** One reading that counts, with who took it and when. */
export interface CountedReading {
  readonly quantity: QuantityName;
  readonly point: string | null;
  readonly value: number;
  readonly u: number;
  readonly loadState: LoadState | null;
  readonly look: StoredLook;
}

/** Everything that counts at one place in one visit. */
export interface PlaceLooks {
  readonly place: string;
  /** The last reading of every quantity and point. */
  readonly readings: readonly CountedReading[];
  readonly signs: readonly SignName[];
  /** Somebody looked: a reading, a sign or "nothing seen". */
  readonly seen: boolean;
  /** Asked for and said not to be taken. */
  readonly notTaken: boolean;
  readonly looks: readonly StoredLook[];
}

/** Looks that still count: a withdrawn one and its withdrawal do not. */
export function countingLooks(looks: readonly StoredLook[]): readonly StoredLook[] {
  const withdrawn = new Set(looks.flatMap((l) => (l.content.kind === "withdrawn" ? [l.content.look] : [])));
  return looks.filter((l) => l.content.kind !== "withdrawn" && !withdrawn.has(l.id));
}

/** Sorts looks by place; at each place a later "nothing seen" takes back earlier signs, a later sign list replaces one. */
export function groupByPlace(looks: readonly StoredLook[]): ReadonlyMap<string, PlaceLooks> {
  const places = new Map<string, StoredLook[]>();
  for (const look of countingLooks(looks)) {
    const at = places.get(look.place) ?? [];
    at.push(look);
    places.set(look.place, at);
  }
  return new Map([...places].map(([place, at]) => [place, readPlace(place, at)]));
}

function readPlace(place: string, looks: readonly StoredLook[]): PlaceLooks {
  const readings = new Map<string, CountedReading>();
  let signs: readonly SignName[] = [];
  let seen = false;
  let notTaken = false;
  for (const look of [...looks].sort((a, b) => a.sequence - b.sequence)) {
    const { content } = look;
    if (content.kind === "reading") {
      readings.set(`${content.quantity}/${content.point ?? ""}`, {
        quantity: content.quantity,
        point: content.point,
        value: content.value,
        u: content.u,
        loadState: look.loadState,
        look,
      });
      seen = true;
    } else if (content.kind === "signs") {
      signs = content.signs;
      seen = seen || content.signs.some((s) => s !== "cannot-reach");
    } else if (content.kind === "nothing-seen") {
      signs = [];
      seen = true;
    } else if (content.kind === "not-taken" && content.quantity !== null) notTaken = true;
  }
  return { place, readings: [...readings.values()], signs, seen, notTaken: notTaken && !seen, looks };
}
