import { existsSync, readdirSync } from "node:fs";
import { type CaseStore, type FamilyStore, loadIsInvented } from "#casework";
import { formatFamily, parseFamily, settingsId } from "#contract";
import { type DemoDocument, demoFamilies, demoFamilySheets, demoWorkshop } from "#demo";

/** What a data folder holds: an invented workshop or somebody's own; never both. */
export type WorkshopKind = "invented" | "own";

/** True where nothing lies in a data folder yet, or it is not there. */
export const isFresh = (folder: string): boolean => !existsSync(folder) || readdirSync(folder).length === 0;

const saveNew = (cases: CaseStore, document: DemoDocument): Promise<unknown> => {
  const { kind, id, body, by, at } = document;
  return cases.saveDocument(kind, id, body, { expectedVersion: 0, by, at });
};

/** Puts what is missing of the demo workshop of a day into the store; what is there already stays as it is. */
export const loadDemoWorkshop = async (cases: CaseStore, families: FamilyStore, today: string): Promise<void> => {
  const workshop = demoWorkshop(today, demoFamilies(parseFamily));
  const [settings, ...rest] = workshop.documents;
  if (settings !== undefined) await saveNew(cases, settings);
  for (const family of workshop.families)
    await families.save(family.id, `${JSON.stringify(formatFamily(family), null, 2)}\n`, null);
  for (const visit of new Set(workshop.looks.map((look) => look.visit))) {
    const made = workshop.looks.filter((look) => look.visit === visit);
    await cases.appendLooks(made, made.at(-1)?.at ?? today);
  }
  for (const document of rest) await saveNew(cases, document);
};

/**
 * Makes a workshop ready: a fresh folder becomes the demo workshop unless it was asked to begin empty; any other is left
 * as it is, and where an earlier build left no settings its first car says what it is. The settings of the demo are saved first and its last car last, so that a loading that was broken off is
 * taken up again on the day it began.
 */
export const openWorkshop = async (
  stores: { readonly cases: CaseStore; readonly families: FamilyStore },
  how: { readonly fresh: boolean; readonly empty: boolean; readonly today: string },
): Promise<WorkshopKind> => {
  const { cases, families } = stores;
  const settings = await cases.loadDocument("settings", settingsId);
  if (settings === null) {
    if (!how.fresh || how.empty) return (await loadIsInvented(cases)) === true ? "invented" : "own";
    await loadDemoWorkshop(cases, families, how.today);
    return "invented";
  }
  if (!settings.body.invented) return "own";
  const [first] = await cases.loadHistory("settings", settingsId);
  const began = (first ?? settings).at.slice(0, 10);
  const last = demoWorkshop(began, demoFamilies(parseFamily)).documents.at(-1);
  if (last !== undefined && (await cases.loadDocument(last.kind, last.id)) === null)
    await loadDemoWorkshop(cases, families, began);
  return "invented";
};

/** Families that come with the program and cars may be of, by the kind of workshop: no real car is of an invented one. */
export const givenFamilies = (kind: WorkshopKind): Readonly<Record<string, unknown>> =>
  kind === "invented" ? demoFamilySheets : {};

/** Families that come with the program to be looked at only: the invented ones, in a workshop of one's own. */
export const exampleFamilies = (kind: WorkshopKind): Readonly<Record<string, unknown>> =>
  kind === "own" ? demoFamilySheets : {};
