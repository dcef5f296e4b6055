import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, inject } from "vitest";
import type { FaultQuestion } from "#casework";
import { formatComplianceQuestion, parseFamily } from "#contract";
import { FAMILY, TORN_BUSH } from "./sheets.ts";

const demo = join(fileURLToPath(new URL("../../", import.meta.url)), `src/demo/families/${FAMILY}.json`);

/** The family's file under another id, with the rates of the bush in question times a factor. */
export const sheetWith = (id: string, name: string, factor: number) => {
  const sheet = JSON.parse(readFileSync(demo, "utf8"));
  const joint = sheet.rear.links.find((link: { readonly name: string }) => link.name === "trailing-link").inner_joint;
  joint.radial_n_per_mm *= factor;
  joint.axial_n_per_mm *= factor;
  return { ...sheet, id, name };
};

/** Saves a family and returns its version. */
export const saveSheet = async (
  sheet: { readonly id: string },
  condition: Readonly<Record<string, string>>,
): Promise<string> => {
  const response = await fetch(`${inject("address")}/api/families/${sheet.id}`, {
    method: "PUT",
    headers: { "content-type": "application/json", ...condition },
    body: JSON.stringify(sheet),
  });
  expect(response.ok).toBe(true);
  return response.headers.get("etag") ?? "";
};

const QUESTION: FaultQuestion = {
  corner: "rear-left",
  position: TORN_BUSH,
  fault: { kind: "torn", grade: 3 },
  condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
};

const askToe = async (sheet: unknown, factor: number | null): Promise<number> => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  const response = await fetch(`${inject("address")}/api/calc/linkage.compliance`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(formatComplianceQuestion(parsed.family, QUESTION, factor)),
  });
  const { output } = (await response.json()) as {
    readonly output: { readonly states: readonly { readonly toe_deg: number }[] };
  };
  return output.states[0]?.toe_deg ?? Number.NaN;
};

/** What the door says the torn bush does, with the middle (geometric mean) of its torn share, as it is shown. */
export const doorSays = async (sheet: ReturnType<typeof sheetWith>): Promise<string> => {
  const [low, high] = sheet.rear.defaults.torn_share.repair_first;
  const difference = (await askToe(sheet, Math.sqrt(low * high))) - (await askToe(sheet, null));
  return `${Math.abs(difference).toFixed(2)}°`;
};
