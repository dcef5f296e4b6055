import type { Finding } from "#contract";
import type { LayoutName, Rung } from "../car.ts";
import { type Answer, askServer } from "./ask-server.ts";

interface AxleLine {
  readonly layout: LayoutName;
  readonly rung: Rung;
  readonly tyre_size: string;
}

interface ListedFamily {
  readonly id: string;
  readonly version: string;
  readonly name: string;
  readonly read_only: boolean;
  /** True where it was taken off the list; it can be put back, and what refers to it still opens. */
  readonly off_list: boolean;
}

/** One line of the list: a family, or a file that cannot be read with what is wrong in it. */
export type FamilyLine =
  | (ListedFamily & {
      readonly invented: boolean;
      readonly from_year?: number;
      readonly to_year?: number;
      readonly wheelbase_mm: number;
      readonly kerb_mass_kg: number;
      readonly front: AxleLine;
      readonly rear: AxleLine;
    })
  | (ListedFamily & { readonly findings: readonly Finding[] });

/** Families by what they are for. */
export interface ListedFamilies {
  /** Those a car of this workshop may be of. */
  readonly families: readonly FamilyLine[];
  /** Invented ones to look at only, where the workshop is somebody's own. */
  readonly examples: readonly FamilyLine[];
}

/** Every family this program shows. */
export const listShownFamilies = (): Promise<Answer<ListedFamilies>> =>
  askServer("/api/families", {}, async (response) => {
    const { families, examples }: ListedFamilies = await response.json();
    return { families, examples };
  });

/** Every family a car of this workshop may be of: the workshop's own, and in an invented workshop the invented ones. */
export const listFamilies = async (): Promise<Answer<readonly FamilyLine[]>> => {
  const answer = await listShownFamilies();
  return answer.kind === "answer" ? { kind: "answer", body: answer.body.families } : answer;
};
