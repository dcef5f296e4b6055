import { useNavigate } from "@tanstack/react-router";
import { useState } from "react";
import { correctedSilhouette, type Finding, formatFamily, type SilhouetteSheet } from "#contract";
import { type LoadedFamily, saveFamily } from "../server/families.ts";
import { beginFamily } from "../server/silhouettes.ts";

/** How far keeping the entries has come. */
export type Making =
  | { readonly kind: "none" | "busy" | "silent" | "superseded" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

type Kept = { readonly kind: "kept"; readonly id: string } | Exclude<Making, { readonly kind: "none" | "busy" }>;

const correct = async ({ family, version }: LoadedFamily, sheet: SilhouetteSheet): Promise<Kept> => {
  const made = correctedSilhouette(family, sheet);
  if ("findings" in made) return { kind: "refused", findings: made.findings };
  const text = `${JSON.stringify(formatFamily(made.family), null, 2)}\n`;
  const saved = await saveFamily(family.id, text, version);
  return saved.kind === "kept" ? { kind: "kept", id: family.id } : saved;
};

const begin = async (sheet: SilhouetteSheet): Promise<Kept> => {
  const begun = await beginFamily(sheet);
  return begun.kind === "answer" ? { kind: "kept", id: begun.body } : begun;
};

interface MakingOptions {
  /** The car line that is corrected; null: a new one is begun. */
  readonly corrected: LoadedFamily | null;
  /** The visit whose car it is begun for. */
  readonly visit: string | undefined;
  /** Told once the entries are on the disk. */
  readonly onKept: () => void;
}

/** Keeps the entries as a new car line, or in the place of the one that is corrected, and goes on to it. */
export const useMaking = ({ corrected, visit, onKept }: MakingOptions) => {
  const [making, setMaking] = useState<Making>({ kind: "none" });
  const navigate = useNavigate();
  const make = async (sheet: SilhouetteSheet): Promise<void> => {
    setMaking({ kind: "busy" });
    const kept = corrected === null ? await begin(sheet) : await correct(corrected, sheet);
    if (kept.kind !== "kept") return setMaking(kept);
    onKept();
    const params = { familyId: kept.id };
    if (corrected !== null) await navigate({ to: "/families/$familyId", params });
    else if (visit === undefined) await navigate({ to: "/families/$familyId/underside", params });
    else await navigate({ to: "/cases/$visit/car", params: { visit }, search: { family: kept.id } });
  };
  return { making, make };
};
