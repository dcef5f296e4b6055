import { fieldWords, inWords } from "./field-words.ts";
import { isKeyed } from "./sheet-value.ts";
import { formatTyped } from "./typed-number.ts";

const figure = (entry: Readonly<Record<string, unknown>>, key: string): string | null => {
  const value = entry[key];
  if (typeof value !== "number") return null;
  const { unit } = fieldWords(key);
  return unit === "" ? formatTyped(value) : `${formatTyped(value)} ${unit}`;
};

const keyWith = (entry: Readonly<Record<string, unknown>>, start: string): string | undefined =>
  Object.keys(entry).find((key) => key === start || key.startsWith(`${start}_`));

/** The ends of a limit: "22.4 mm at least". */
const limitWords = (entry: Readonly<Record<string, unknown>>): string => {
  const [lower, upper] = ["lower", "upper"].map((end) => figure(entry, keyWith(entry, end) ?? ""));
  const ends =
    lower != null && upper != null
      ? `${lower} to ${upper}`
      : lower != null
        ? `${lower} at least`
        : upper != null
          ? `${upper} at most`
          : "";
  return [ends, entry.owner, entry.axle].filter((part) => typeof part === "string" && part !== "").join(", ");
};

const stagesWords = (stages: unknown): string =>
  Array.isArray(stages)
    ? stages
        .filter(isKeyed)
        .map((stage) => figure(stage, "torque_nm") ?? figure(stage, "angle_deg") ?? "")
        .join(", then ")
    : "torque not on file";

/** What a row of a list says of its entry beside its name; "" where there is nothing short to say. */
export const entrySummary = (entry: unknown): string => {
  if (!isKeyed(entry)) return formatTyped(entry);
  if ("quantity" in entry) return limitWords(entry);
  if ("policy" in entry) return `${inWords(String(entry.policy))}; ${stagesWords(entry.stages)}`;
  if ("torque_nm" in entry || "angle_deg" in entry)
    return figure(entry, "torque_nm") ?? figure(entry, "angle_deg") ?? "";
  if ("hours" in entry) return `${formatTyped(entry.hours)} h, ${inWords(formatTyped(entry.scope))}`;
  if ("kind" in entry && "id" in entry) {
    const { price_cents: cents } = entry;
    return `${inWords(formatTyped(entry.kind))}; ${typeof cents === "number" ? formatTyped(cents / 100) : "price not on file"}`;
  }
  if ("middle_km" in entry) return `half gone by ${formatTyped(entry.middle_km)} km`;
  if (Array.isArray(entry.cures)) return `cures ${entry.cures.length}`;
  if (Array.isArray(entry.choices)) return `${entry.choices.length} choices`;
  if ("sign" in entry) return formatTyped(entry.sign);
  if ("owner" in entry) return formatTyped(entry.owner);
  return "";
};
