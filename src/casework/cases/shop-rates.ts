import type { ShopRates } from "#vehicle";
import type { SettingsDocument } from "./documents.ts";

export type { ShopRates } from "#vehicle";

/** Rates until a workshop has set its own (invented). */
const startRates: ShopRates = {
  workshop: "",
  currency: "EUR",
  labourCentsPerHour: 9000,
  taxShare: 0.2,
  visitCents: 2500,
};

/** The rates a workshop works with; pages say where they are not its own. */
export const ratesOf = (settings: SettingsDocument | null): ShopRates =>
  settings === null
    ? startRates
    : {
        workshop: settings.workshop,
        currency: settings.currency,
        labourCentsPerHour: settings.labourCentsPerHour,
        taxShare: settings.taxShare,
        visitCents: settings.visitCents,
      };
