import ts from "typescript";

/** A use of something that lies around everywhere and makes a result differ from run to run. */
export interface AmbientUse {
  readonly file: string;
  readonly line: number;
  readonly what: string;
}

const bannedNames = new Set([
  "Date",
  "performance",
  "console",
  "crypto",
  "process",
  "globalThis",
  "setTimeout",
  "setInterval",
  "setImmediate",
  "queueMicrotask",
  "fetch",
  "eval",
]);
const bannedMembers = new Set(["Math.random"]);

/** True where the identifier is a use of the global, not a key, a member, a declaration or an import of that name. */
const namesGlobal = (node: ts.Identifier): boolean => {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isShorthandPropertyAssignment(parent)) return true;
  if (ts.isQualifiedName(parent)) return parent.left === node;
  if ("name" in parent && parent.name === node) return false;
  return !ts.isPropertyAssignment(parent) || parent.initializer === node;
};

/** True for `new Date(...)` of a stated moment, its type and Date.UTC: the same on every run. */
const isFixedDate = (node: ts.Identifier): boolean => {
  const { parent } = node;
  if (ts.isNewExpression(parent)) return (parent.arguments?.length ?? 0) > 0;
  return ts.isPropertyAccessExpression(parent) && parent.name.text === "UTC";
};

const usedName = (node: ts.Node, fixedDates: boolean): string | null => {
  if (fixedDates && ts.isIdentifier(node) && node.text === "Date" && isFixedDate(node)) return null;
  if (ts.isIdentifier(node) && bannedNames.has(node.text) && namesGlobal(node)) return node.text;
  if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) {
    const member = `${node.expression.text}.${node.name.text}`;
    return bannedMembers.has(member) ? member : null;
  }
  if (ts.isElementAccessExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === "Math") {
    return "Math[...]";
  }
  if (ts.isVariableDeclaration(node) && node.initializer?.getText() === "Math") return "Math as a value";
  return null;
};

/** Names a file declares itself; they are its own and not the ones that lie around. */
const declaredNames = (source: ts.SourceFile): ReadonlySet<string> => {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    const declares = ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node);
    if (declares && ts.isIdentifier(node.name)) names.add(node.name.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return names;
};

/** Uses of clock, chance, console and the like in one source text; `fixedDates` lets dates of a stated moment be. */
export const findAmbientUses = (file: string, text: string, fixedDates = false): readonly AmbientUse[] => {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const own = declaredNames(source);
  const uses: AmbientUse[] = [];
  const visit = (node: ts.Node): void => {
    const what = usedName(node, fixedDates);
    if (what !== null && !own.has(what)) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
      uses.push({ file, line: line + 1, what });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return uses;
};
