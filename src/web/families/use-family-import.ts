import { useRouter } from "@tanstack/react-router";
import { useState } from "react";
import type { Finding } from "#contract";
import type { Family } from "../car.ts";
import { saveFamily } from "../server/families.ts";
import { listFamilies } from "../server/family-list.ts";
import { readFamilyFile } from "./read-family-file.ts";

/** How far the import of a family file has come. */
export type FamilyImport =
  | { readonly kind: "none" | "busy" | "silent" }
  | { readonly kind: "refused"; readonly fileName: string; readonly findings: readonly Finding[] }
  /** A family of this id is there already; a person decides. */
  | { readonly kind: "replaces"; readonly family: Family; readonly text: string; readonly version: string }
  | { readonly kind: "superseded" }
  | { readonly kind: "kept"; readonly family: Family };

export interface FamilyImporting {
  readonly state: FamilyImport;
  readonly read: (file: File) => Promise<void>;
  readonly replace: () => Promise<void>;
  readonly leave: () => void;
}

/** Reading a family file in: findings all at once, a question before anything is replaced, saved whole or not at all. */
export const useFamilyImport = (): FamilyImporting => {
  const [state, setState] = useState<FamilyImport>({ kind: "none" });
  const router = useRouter();

  const keep = async (fileName: string, family: Family, text: string, version: string | null): Promise<void> => {
    const saved = await saveFamily(family.id, text, version);
    if (saved.kind === "kept") {
      setState({ kind: "kept", family });
      await router.invalidate();
    } else if (saved.kind === "refused") setState({ kind: "refused", fileName, findings: saved.findings });
    else setState({ kind: saved.kind });
  };

  return {
    state,
    read: async (file) => {
      setState({ kind: "busy" });
      const read = await readFamilyFile(file);
      if ("findings" in read) {
        setState({ kind: "refused", fileName: file.name, findings: read.findings });
        return;
      }
      const listed = await listFamilies();
      if (listed.kind !== "answer") {
        setState({ kind: "silent" });
        return;
      }
      const own = listed.body.find(({ id, read_only }) => id === read.family.id && !read_only);
      if (own === undefined) return keep(file.name, read.family, read.text, null);
      setState({ kind: "replaces", ...read, version: `"${own.version}"` });
    },
    replace: async () => {
      if (state.kind === "replaces") await keep(`${state.family.id}.json`, state.family, state.text, state.version);
    },
    leave: () => setState({ kind: "none" }),
  };
};
