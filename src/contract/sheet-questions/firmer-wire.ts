import { z } from "zod";
import type { FirmerRubber } from "#casework";
import type { Finding } from "#numeric";

/** How firm a part is, as it stands in JSON: how many times its rates are, or the hardness of both parts. */
export const firmnessKeys = {
  factor: z.number().positive().optional(),
  old_hardness_shore_a: z.number().optional(),
  new_hardness_shore_a: z.number().optional(),
};

const firmness = z.strictObject(firmnessKeys);
type FirmnessWire = z.infer<typeof firmness>;

/** Exactly one way of saying it; said of a document that may be wrong elsewhere. */
export function checkFirmerWire(raw: unknown, path: string): readonly Finding[] {
  if (typeof raw !== "object" || raw === null) return [];
  const has = (key: keyof FirmnessWire): boolean => Object.hasOwn(raw, key);
  const byHardness = has("new_hardness_shore_a") || has("old_hardness_shore_a");
  if (has("factor") !== byHardness && (has("factor") || has("new_hardness_shore_a"))) return [];
  return [
    {
      code: "one-of-two",
      path: `${path}.factor`,
      got: has("factor") ? "both factor and a hardness" : "neither factor nor new_hardness_shore_a",
      needed: "exactly one of factor and new_hardness_shore_a",
      hint: "The factor says more than a hardness; old_hardness_shore_a may be left out where the family sheet holds it.",
    },
  ];
}

/** A firmer part from what checkFirmerWire has let pass. */
export const readFirmer = ({ factor, old_hardness_shore_a, new_hardness_shore_a }: FirmnessWire): FirmerRubber =>
  factor === undefined
    ? { kind: "firmer", hardness: { from: old_hardness_shore_a ?? null, to: new_hardness_shore_a ?? null } }
    : { kind: "firmer", factor };

/** The same as it is sent. */
export const formatFirmer = (firmer: FirmerRubber): FirmnessWire => {
  if (!("hardness" in firmer)) return { factor: firmer.factor };
  const { from, to } = firmer.hardness;
  return {
    ...(from === null ? {} : { old_hardness_shore_a: from }),
    ...(to === null ? {} : { new_hardness_shore_a: to }),
  };
};
