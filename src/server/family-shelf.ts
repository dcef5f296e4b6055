import { createHash } from "node:crypto";
import type { FamilyStore, KeptFamily, SaveOutcome } from "#casework";

/** A family as it is offered: the workshop's own, or one that comes with the program and cannot be changed. */
export interface ShelvedFamily extends KeptFamily {
  readonly readOnly: boolean;
}

/** The workshop's own families beside those that come with the program. */
export interface FamilyShelf {
  /** Families a car of this workshop may be of. */
  list(): Promise<readonly ShelvedFamily[]>;
  load(id: string): Promise<ShelvedFamily | null>;
  /** Invented families to look at beside real ones; no car is ever of one of them, and no appraisal sees them. */
  listExamples(): Promise<readonly ShelvedFamily[]>;
  loadExample(id: string): Promise<ShelvedFamily | null>;
  isReadOnly(id: string): boolean;
  save(id: string, text: string, seen: string | null): Promise<SaveOutcome>;
}

const wellFormedId = /^[a-z0-9]+(-[a-z0-9]+)*$/;

const shelve = (id: string, sheet: unknown): ShelvedFamily => {
  const text = `${JSON.stringify(sheet, null, 2)}\n`;
  return { id, text, version: createHash("sha256").update(text).digest("hex").slice(0, 16), readOnly: true };
};

const shelveAll = (sheets: Readonly<Record<string, unknown>>): ReadonlyMap<string, ShelvedFamily> =>
  new Map(Object.entries(sheets).map(([id, sheet]) => [id, shelve(id, sheet)]));

/**
 * Puts the families that come with the program on one shelf with the stored ones.
 * @param given stand among the workshop's families; where ids agree, the program's own stands
 * @param shown examples to look at only; where ids agree, the stored family stands
 */
export const openFamilyShelf = (
  store: FamilyStore,
  given: Readonly<Record<string, unknown>>,
  shown: Readonly<Record<string, unknown>> = {},
): FamilyShelf => {
  const fixed = shelveAll(given);
  const examples = shelveAll(shown);
  return {
    list: async () => {
      const own = (await store.list()).filter(({ id }) => !fixed.has(id));
      return [...own.map((family) => ({ ...family, readOnly: false })), ...fixed.values()];
    },
    load: async (id) => {
      const demo = fixed.get(id);
      if (demo !== undefined) return demo;
      const own = wellFormedId.test(id) ? await store.load(id) : null;
      return own === null ? null : { ...own, readOnly: false };
    },
    listExamples: async () => {
      const own = new Set((await store.list()).map(({ id }) => id));
      return [...examples.values()].filter(({ id }) => !own.has(id));
    },
    loadExample: async (id) => {
      const example = examples.get(id);
      return example === undefined || (await store.load(id)) !== null ? null : example;
    },
    isReadOnly: (id) => fixed.has(id),
    save: (id, text, seen) => store.save(id, text, seen),
  };
};
