import { describe, expect, inject, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, tablet } from "../browser-setup/launch.ts";
import { OWNERS_WORDS, WORN_PLACE, walkToFindings } from "./cases-first-half.ts";
import { Entries } from "./entries.ts";
import { listenForComplaints } from "./open-sheet.ts";

/** Of the forty entries from the owner's words to the printed page, the first half may take so many. */
const MOST_ENTRIES = 24;

interface Recorded {
  readonly car: { readonly document: { readonly family: string | null } };
  readonly visits: readonly {
    readonly visit: {
      readonly id: string;
      readonly document: { readonly done: readonly string[]; readonly odometer_km: number };
    };
    readonly enquiry: { readonly document: { readonly words: string; readonly symptoms: readonly unknown[] } };
  }[];
  readonly looks: readonly { readonly place: string; readonly content: { readonly kind: string } }[];
}

const load = async <T>(path: string): Promise<T> => (await (await fetch(`${inject("address")}${path}`)).json()) as T;

/** Everything on record about the car of a visit. */
const recordOf = async (visit: string): Promise<Recorded> => {
  const { document } = await load<{ readonly document: { readonly car: string } }>(`/api/documents/visit/${visit}`);
  return load<Recorded>(`/api/cars/${document.car}`);
};

describe("an unknown car from its owner's words to what was seen", () => {
  it.each([desk, tablet])(
    "takes at most 24 entries at $width x $height, and all of it is on record",
    async (screen) => {
      const page = await openPage(screen);
      const complaints = listenForComplaints(page);
      const entries = new Entries(page);
      await walkToFindings(entries);
      expect(entries.count).toBeLessThanOrEqual(MOST_ENTRIES);

      const visit = /\/cases\/([^/]+)\//.exec(page.url())?.[1] ?? "";
      const { car, visits, looks } = await recordOf(visit);
      const own = visits.find((one) => one.visit.id === visit);
      expect(car.document.family).not.toBeNull();
      expect(own?.enquiry.document.words).toBe(OWNERS_WORDS);
      expect(own?.enquiry.document.symptoms).toEqual([
        expect.objectContaining({ symptom: "pulls-under-braking", side: "left", axle: "front" }),
      ]);
      expect(own?.visit.document.odometer_km).toBe(128_440);
      expect(own?.visit.document.done).toEqual(["enquiry", "car", "readings", "underside"]);
      const kinds = (kind: string) => looks.filter(({ content }) => content.kind === kind);
      expect(kinds("not-taken").length).toBeGreaterThan(20);
      expect(kinds("signs").map(({ place }) => place)).toEqual([WORN_PLACE]);
      const nothing = kinds("nothing-seen").map(({ place }) => place);
      expect(nothing.length).toBeGreaterThan(10);
      expect(new Set(nothing).size).toBe(nothing.length);
      expect(nothing.every((place) => place.startsWith("rear-left/"))).toBe(true);
      expect(complaints).toEqual([]);
    },
  );
});
