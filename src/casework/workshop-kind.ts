import type { CaseStore } from "./case-ports.ts";

/**
 * Whether the workshop on record is an invented one: what its settings say, else what its first car says.
 * @returns null where neither is on record, so that the first one saved decides
 */
export async function loadIsInvented(cases: CaseStore): Promise<boolean | null> {
  const [settings] = await cases.listDocuments("settings");
  if (settings !== undefined) return settings.body.invented;
  const [car] = await cases.listDocuments("car");
  return car?.body.invented ?? null;
}
