import { expect, test } from "vitest";
import type { LookSheet, StoredDocumentSheet, WireBody } from "#contract";
import type { Shelf } from "./browser-shelf.ts";
import { documentKey, type UnsentDocument, type UnsentEntry } from "./entry.ts";
import { createOutbox, type OutboxParts } from "./outbox.ts";
import type { DocumentAnswer } from "./send-entries.ts";

const shelfOf = (entries = new Map<string, UnsentEntry>()): Shelf & { readonly entries: Map<string, UnsentEntry> } => ({
  entries,
  load: () => new Map(entries),
  keep: (key, entry) => {
    entries.set(key, entry);
    return true;
  },
  drop: (key) => void entries.delete(key),
});

const enquiry = (words: string): WireBody<"enquiry"> => ({ words, symptoms: [], use: null });
const KEY = documentKey("enquiry", "visit-1");

const storedAs = ({ kind, id, by, body, version }: UnsentDocument): StoredDocumentSheet => ({
  kind,
  id,
  by,
  at: "2031-05-14T09:00:00Z",
  version: version + 1,
  document: body,
});

const look = (id: string): LookSheet => ({
  id,
  car: "car-1",
  visit: "visit-1",
  place: "front-left/pads/thickness",
  content: { kind: "nothing-seen" },
  load_state: "hanging",
  instrument: null,
  photo: null,
  note: null,
  who: "MK",
  at: "2031-05-14T09:00:00Z",
});

const outboxOf = (parts: Partial<OutboxParts>, shelf = shelfOf()) => {
  const retries: (() => void)[] = [];
  const outbox = createOutbox({
    shelf,
    sendDocument: async (entry) => ({ kind: "stored", document: storedAs(entry) }),
    sendLooks: async (entries) => ({
      kind: "answered",
      answers: entries.map(({ look: sent }, index) => ({
        id: sent.id,
        outcome: "stored",
        look: { ...sent, sequence: index + 1, received_at: sent.at, clock_off: false },
      })),
    }),
    sendPhoto: async () => ({ kind: "stored" }),
    forgetPhoto: () => undefined,
    later: (_turn, run) => void retries.push(run),
    ...parts,
  });
  return { outbox, shelf, retries };
};

const typed = (words: string) =>
  ({ kind: "enquiry", id: "visit-1", by: "MK", over: null, body: enquiry(words) }) as const;

test("an entry leaves the browser only once the store has acknowledged it", async () => {
  const { outbox, shelf } = outboxOf({});
  outbox.putDocument(typed("it pulls"));
  expect(shelf.entries.has(KEY)).toBe(true);
  await outbox.send();
  expect(shelf.entries.size).toBe(0);
  expect(outbox.state().documents.get(KEY)?.document).toEqual(enquiry("it pulls"));
});

test("while the store is silent entries stay, and are sent when it answers again", async () => {
  let silent = true;
  const { outbox, shelf, retries } = outboxOf({
    sendDocument: async (entry): Promise<DocumentAnswer> =>
      silent ? { kind: "later", findings: [] } : { kind: "stored", document: storedAs(entry) },
  });
  outbox.putDocument(typed("it pulls"));
  await outbox.send();
  expect(outbox.state().trouble).toEqual([]);
  expect(shelf.entries.size).toBe(1);
  silent = false;
  retries.at(-1)?.();
  await outbox.send();
  expect(outbox.state().trouble).toBeNull();
  expect(shelf.entries.size).toBe(0);
});

test("what is typed while a version is on its way is sent over that version", async () => {
  const seen: number[] = [];
  let typeMore: (() => void) | null = null;
  const { outbox } = outboxOf({
    sendDocument: async (entry) => {
      seen.push(entry.version);
      const type = typeMore;
      typeMore = null;
      type?.();
      return { kind: "stored", document: storedAs(entry) };
    },
  });
  typeMore = () => outbox.putDocument(typed("it pulls left"));
  outbox.putDocument(typed("it pulls"));
  await outbox.send();
  expect(seen).toEqual([0, 1]);
  expect(outbox.state().documents.get(KEY)?.document).toEqual(enquiry("it pulls left"));
});

test("a document somebody else has saved meanwhile stays with both versions until it is settled", async () => {
  const theirs: StoredDocumentSheet = {
    ...storedAs({
      ...typed("theirs"),
      what: "document",
      version: 3,
      before: null,
      confirmed: false,
      state: { kind: "waiting" },
    }),
    by: "other",
  };
  let overtaken = true;
  const { outbox, shelf } = outboxOf({
    sendDocument: async (entry): Promise<DocumentAnswer> =>
      overtaken ? { kind: "overtaken", latest: theirs } : { kind: "stored", document: storedAs(entry) },
  });
  outbox.putDocument(typed("mine"));
  await outbox.send();
  const entry = shelf.entries.get(KEY);
  expect(entry?.state).toEqual({ kind: "overtaken", latest: theirs });
  overtaken = false;
  outbox.settle<"enquiry">(KEY, enquiry("mine and theirs"));
  await outbox.send();
  expect(outbox.state().documents.get(KEY)).toMatchObject({ version: 5, document: enquiry("mine and theirs") });
  expect(shelf.entries.size).toBe(0);
});

test("a refused look stays with its findings and goes once it is confirmed", async () => {
  const { outbox, shelf } = outboxOf({
    sendLooks: async (entries) => ({
      kind: "answered",
      answers: entries.map(({ look: sent, confirmed }) =>
        confirmed
          ? { id: sent.id, outcome: "stored", look: { ...sent, sequence: 1, received_at: sent.at, clock_off: false } }
          : {
              id: sent.id,
              outcome: "refused",
              findings: [{ code: "reading-implausible", path: "", got: "85", needed: "0 to 20", hint: "" }],
            },
      ),
    }),
  });
  outbox.putLooks([{ look: look("a"), confirmed: false }]);
  await outbox.send();
  expect(shelf.entries.get("look.a")?.state.kind).toBe("refused");
  outbox.confirm("look.a");
  await outbox.send();
  expect(shelf.entries.size).toBe(0);
  expect(outbox.state().looks.has("a")).toBe(true);
});

test("a new window takes up what an earlier one left", async () => {
  const { outbox: first, shelf } = outboxOf({ sendLooks: async () => ({ kind: "later", findings: [] }) });
  first.putLooks([{ look: look("a"), confirmed: false }]);
  await first.send();
  const { outbox: second } = outboxOf({}, shelf);
  await second.send();
  expect(shelf.entries.size).toBe(0);
  expect([...second.state().looks.keys()]).toEqual(["a"]);
});

test("a photo waits with its bytes while the store is silent, is sent when it answers, and its bytes go then", async () => {
  let silent = true;
  const forgotten: string[] = [];
  const { outbox, shelf, retries } = outboxOf({
    sendPhoto: async () => (silent ? { kind: "later", findings: [] } : { kind: "stored" }),
    forgetPhoto: (hash) => void forgotten.push(hash),
  });
  outbox.putPhoto({ hash: "ab12", name: "boot.jpg" }, true);
  await outbox.send();
  expect([...shelf.entries.keys()]).toEqual(["photo.ab12"]);
  expect(forgotten).toEqual([]);
  expect(outbox.state()).toMatchObject({ trouble: [], keeps: true });
  silent = false;
  retries.at(-1)?.();
  await outbox.send();
  expect(shelf.entries.size).toBe(0);
  expect(forgotten).toEqual(["ab12"]);
});

test("a photo whose bytes do not outlive the page is said not to be kept", () => {
  const { outbox } = outboxOf({});
  outbox.putPhoto({ hash: "ab12", name: "boot.jpg" }, false);
  expect(outbox.state().keeps).toBe(false);
});
