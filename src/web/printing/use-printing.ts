import { useState } from "react";
import type { Finding } from "#contract";
import type { Answer } from "../server/ask-server.ts";
import { type PrintedSheet, saveSheet } from "../server/printed-sheet.ts";

/** How the printing of a sheet stands. */
export type Printing =
  | { readonly kind: "idle" | "busy" | "silent" }
  | { readonly kind: "printed"; readonly address: string; readonly fileName: string }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

/** Prints on asking, and not again while it does; what came is handed to the browser as a file. */
export const usePrinting = (print: () => Promise<Answer<PrintedSheet>>) => {
  const [printing, setPrinting] = useState<Printing>({ kind: "idle" });
  const run = async () => {
    setPrinting({ kind: "busy" });
    const answer = await print();
    setPrinting(
      answer.kind === "answer"
        ? { kind: "printed", address: saveSheet(answer.body), fileName: answer.body.fileName }
        : answer.kind === "refused"
          ? { kind: "refused", findings: answer.findings }
          : { kind: "silent" },
    );
  };
  const start = () => {
    if (printing.kind !== "busy") void run();
  };
  return { printing, start };
};
