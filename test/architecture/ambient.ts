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

const usedName = (node: ts.Node): string | null => {
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

/** Uses of clock, chance, console and the like in one source text. */
export const findAmbientUses = (file: string, text: string): readonly AmbientUse[] => {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const uses: AmbientUse[] = [];
  const visit = (node: ts.Node): void => {
    const what = usedName(node);
    if (what !== null) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
      uses.push({ file, line: line + 1, what });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return uses;
};
