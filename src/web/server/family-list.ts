import type { Finding } from "#contract";
import type { LayoutName, Rung } from "../car.ts";
import { type Answer, askServer } from "./ask-server.ts";

interface AxleLine {
  readonly layout: LayoutName;
  readonly rung: Rung;
}

/** One line of the list: a family, or a file that cannot be read with what is wrong in it. */
export type FamilyLine =
  | {
      readonly id: string;
      readonly version: string;
      readonly name: string;
      readonly read_only: boolean;
      readonly invented: boolean;
      readonly from_year?: number;
      readonly to_year?: number;
      readonly front: AxleLine;
      readonly rear: AxleLine;
    }
  | {
      readonly id: string;
      readonly version: string;
      readonly name: string;
      readonly read_only: boolean;
      readonly findings: readonly Finding[];
    };

/** Every family this program knows: those that come with it, and the workshop's own. */
export const listFamilies = (): Promise<Answer<readonly FamilyLine[]>> =>
  askServer("/api/families", {}, async (response) => {
    const body: { readonly families: readonly FamilyLine[] } = await response.json();
    return body.families;
  });
