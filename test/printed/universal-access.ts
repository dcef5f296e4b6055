import type { Element, MarkedPage, TaggedFile } from "./structure-tree.ts";

/**
 * Conditions of ISO 14289-1 (clauses from memory; ISO 32000-1 where it says so) a machine can check on the files printed
 * here. What only a person can judge (whether a text says what a drawing shows) is not among them.
 */
export function findBarriers(file: TaggedFile): readonly string[] {
  return [
    ...documentSays(file),
    ...contentIsTagged(file),
    ...parentsAgree(file),
    ...knownTypes(file),
    ...figuresHaveText(file),
    ...headingsInOrder(file),
    ...tablesHaveHeads(file),
    ...fontsAreWhole(file),
  ];
}

const demand = (clause: string, holds: boolean, said: string): readonly string[] =>
  holds ? [] : [`${clause}: ${said}`];

function documentSays({ raw, objects, catalog, pages }: TaggedFile): readonly string[] {
  const dictionaryAt = (key: string): string => {
    const id = new RegExp(`/${key} (\\d+) 0 R`).exec(catalog)?.[1];
    return id === undefined ? "" : (objects.get(Number(id))?.dictionary ?? "");
  };
  return [
    ...demand("7.1", /\/Marked true/.test(dictionaryAt("MarkInfo")), "the file is not marked as tagged"),
    ...demand("5", raw.includes("<pdfuaid:part>1</pdfuaid:part>"), "its metadata do not name the part of the standard"),
    ...demand("7.1", /<dc:title>[\s\S]*\S[\s\S]*<\/dc:title>/.test(raw), "its metadata have no title"),
    ...demand("7.1", /\/DisplayDocTitle true/.test(dictionaryAt("ViewerPreferences")), "its title is not displayed"),
    ...demand("7.2", /\/Lang \([a-z]{2}(?:-[A-Z]{2})?\)/.test(catalog), "it names no language"),
    ...pages.flatMap(({ dictionary }) =>
      demand("7.18.3", !dictionary.includes("/Annots") || /\/Tabs \/S\b/.test(dictionary), "notes without an order"),
    ),
  ];
}

function contentIsTagged({ pages }: TaggedFile): readonly string[] {
  return pages.flatMap(({ sequences }, page) =>
    sequences.flatMap(({ tag, number, depth, draws }) => {
      const where = `page ${page + 1}, ${tag ?? "no tag"}`;
      return [
        ...demand("7.1", !(draws && tag === null), `${where}: drawn outside every tag`),
        ...demand("7.1", depth === 0 || number === null, `${where}: tagged content inside other content`),
        ...demand("7.1", tag === null || tag === "Artifact" || number !== null, `${where}: belongs to no element`),
      ];
    }),
  );
}

/** ISO 32000-1, 14.7.4.4: the tree of parents leads from each marked sequence of a page back to its element. */
function parentsAgree({ root, elements, pages }: TaggedFile): readonly string[] {
  const clause = "ISO 32000-1 14.7.4.4";
  const tree = new Map(
    [...root.matchAll(/(\d+) \[((?:\d+ 0 R\s*)*)\]/g)].map(([, key, list = ""]) => [
      Number(key),
      [...list.matchAll(/(\d+) 0 R/g)].map(([, id]) => Number(id)),
    ]),
  );
  const onPage = (page: MarkedPage): readonly string[] => {
    const parents = page.structParents === null ? undefined : tree.get(page.structParents);
    if (parents === undefined) return [`${clause}: page ${page.id} has no list of parents`];
    const numbers = page.sequences.flatMap(({ number }) => (number === null ? [] : [number]));
    return [
      ...demand(clause, new Set(numbers).size === numbers.length, `page ${page.id}: a number stands twice`),
      ...numbers.flatMap((number) => {
        const element = elements.get(parents[number] ?? -1);
        const own = element?.marked.includes(number) === true && element.page === page.id;
        return demand(clause, own, `page ${page.id}, sequence ${number}: its parent does not hold it`);
      }),
    ];
  };
  const adopted = [...elements.values()].flatMap(({ id, parent, children }) => [
    ...demand(
      clause,
      !elements.has(parent) || (elements.get(parent)?.children.includes(id) ?? false),
      `element ${id} is none of its parent's`,
    ),
    ...children.flatMap((child) =>
      demand(clause, elements.get(child)?.parent === id, `element ${child} has another parent`),
    ),
  ]);
  return [...pages.flatMap(onPage), ...adopted];
}

/** Standard types used here (ISO 32000-1, 14.8.4); any other would need a role map. */
const TYPES = new Set([
  "Document",
  "Sect",
  "H1",
  "H2",
  "H3",
  "P",
  "L",
  "LI",
  "LBody",
  "Lbl",
  "Figure",
  "Table",
  "TR",
  "TH",
  "TD",
  "Caption",
  "Span",
]);

function knownTypes({ elements }: TaggedFile): readonly string[] {
  return [...elements.values()].flatMap(({ type }) => demand("7.1", TYPES.has(type), `${type} is no type used here`));
}

function figuresHaveText({ elements }: TaggedFile): readonly string[] {
  return [...elements.values()]
    .filter(({ type }) => type === "Figure")
    .flatMap(({ id, dictionary }) => [
      ...demand("7.3", /\/Alt \((?!\s*\))/.test(dictionary), `figure ${id} has no text in its place`),
      ...demand("7.3", dictionary.includes("/BBox ["), `figure ${id} does not say where it lies`),
    ]);
}

/** Elements in reading order. */
function inOrder({ root, elements }: TaggedFile): readonly Element[] {
  const walk = (id: number): readonly Element[] => {
    const element = elements.get(id);
    return element === undefined ? [] : [element, ...element.children.flatMap(walk)];
  };
  return [...(/\/K \[([^\]]*)\]\s*>*$/.exec(root.trim())?.[1]?.matchAll(/(\d+) 0 R/g) ?? [])].flatMap(([, id]) =>
    walk(Number(id)),
  );
}

function headingsInOrder(file: TaggedFile): readonly string[] {
  const levels = inOrder(file).flatMap(({ type }) => (/^H[1-6]$/.test(type) ? [Number(type.slice(1))] : []));
  return [
    ...demand("7.4.2", levels[0] === 1, "the first heading is not of level 1"),
    ...levels.flatMap((level, i) =>
      demand("7.4.2", i === 0 || level <= (levels[i - 1] ?? 0) + 1, `heading ${i + 1} skips a level`),
    ),
  ];
}

function tablesHaveHeads(file: TaggedFile): readonly string[] {
  const { elements } = file;
  const childrenOf = (element: Element): readonly Element[] => element.children.flatMap((id) => elements.get(id) ?? []);
  return [...elements.values()].flatMap((element) => {
    if (element.type === "TH")
      return demand(
        "7.5",
        /\/Scope \/(?:Row|Column|Both)\b/.test(element.dictionary),
        `head ${element.id} does not say what it heads`,
      );
    if (element.type === "TR")
      return demand(
        "7.2",
        childrenOf(element).every(({ type }) => type === "TH" || type === "TD"),
        `row ${element.id} holds what is no cell`,
      );
    if (element.type !== "Table") return [];
    const rows = childrenOf(element).filter(({ type }) => type === "TR");
    const lengths = new Set(rows.map(({ children }) => children.length));
    return [
      ...demand(
        "7.5",
        rows.some((row) => childrenOf(row).some(({ type }) => type === "TH")),
        `table ${element.id} has no heads`,
      ),
      ...demand("7.5", lengths.size === 1, `table ${element.id} has rows of different lengths`),
    ];
  });
}

function fontsAreWhole({ objects }: TaggedFile): readonly string[] {
  const all = [...objects].map(([id, { dictionary }]) => ({ id, dictionary }));
  const at = (dictionary: string, key: string): string => {
    const id = new RegExp(`/${key} \\[?(\\d+) 0 R`).exec(dictionary)?.[1];
    return id === undefined ? "" : (objects.get(Number(id))?.dictionary ?? "");
  };
  return all
    .filter(({ dictionary }) => /\/Type \/Font\n/.test(dictionary) && !dictionary.includes("/Subtype /CIDFont"))
    .flatMap(({ id, dictionary }) => {
      const inner = at(dictionary, "DescendantFonts");
      const descriptor = at(inner === "" ? dictionary : inner, "FontDescriptor");
      return [
        ...demand("7.21.4.1", /\/FontFile[23]? /.test(descriptor), `font ${id} is not embedded`),
        ...demand("7.21.7", dictionary.includes("/ToUnicode "), `font ${id} does not say its characters`),
        ...demand("7.21.3.2", inner === "" || inner.includes("/CIDToGIDMap"), `font ${id} does not map its glyphs`),
      ];
    });
}
