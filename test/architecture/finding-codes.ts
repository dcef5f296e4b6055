import { join } from "node:path";
import ts from "typescript";
import { listFiles, repository } from "./source-files.ts";

/** A code as it stands in the source. */
export interface CodeUse {
  readonly code: string;
  readonly file: string;
}

/** The program's sources with types: codes reach findings through functions of other files. */
const openProgram = (): ts.Program => {
  const { config } = ts.readConfigFile(join(repository, "tsconfig.base.json"), ts.sys.readFile);
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, repository);
  const files = listFiles(join(repository, "src"), repository)
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file))
    .map((file) => join(repository, file));
  return ts.createProgram(files, { ...options, jsx: ts.JsxEmit.ReactJSX, types: ["node"] });
};

/** The words an expression can come to: itself, or both sides of a choice. */
const wordsOf = (expression: ts.Expression): readonly string[] => {
  if (ts.isStringLiteralLike(expression)) return [expression.text];
  if (ts.isParenthesizedExpression(expression)) return wordsOf(expression.expression);
  if (ts.isAsExpression(expression) || ts.isSatisfiesExpression(expression)) return wordsOf(expression.expression);
  return ts.isConditionalExpression(expression)
    ? [...wordsOf(expression.whenTrue), ...wordsOf(expression.whenFalse)]
    : [];
};

/** True for an object that is (part of) a finding: it says what was needed, or stands where a finding is expected. */
const isFinding = (object: ts.ObjectLiteralExpression, checker: ts.TypeChecker): boolean => {
  const named = object.properties.some(
    (property) => property.name !== undefined && property.name.getText() === "needed",
  );
  return named || checker.getContextualType(object)?.getProperty("needed") !== undefined;
};

/** Names of the parameters of what is called: as written where its function stands, else as the types have it. */
const parametersOf = (call: ts.CallExpression, checker: ts.TypeChecker): readonly string[] => {
  const named = ts.isIdentifier(call.expression) ? checker.getSymbolAtLocation(call.expression) : undefined;
  const meant = named !== undefined && named.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(named) : named;
  const declared = meant?.valueDeclaration;
  const written = declared !== undefined && ts.isVariableDeclaration(declared) ? declared.initializer : declared;
  return written !== undefined && ts.isFunctionLike(written)
    ? written.parameters.map(({ name }) => name.getText())
    : (checker.getResolvedSignature(call)?.parameters.map(({ name }) => name) ?? []);
};

const codesIn = (node: ts.Node, checker: ts.TypeChecker): readonly string[] => {
  if (ts.isPropertyAssignment(node) && node.name.getText() === "code" && isFinding(node.parent, checker)) {
    return wordsOf(node.initializer);
  }
  if (!ts.isCallExpression(node)) return [];
  const words = node.arguments.map(wordsOf);
  // Which function a call means takes most of a whole type check: only where a word is handed over.
  if (words.every(({ length }) => length === 0)) return [];
  const parameters = parametersOf(node, checker);
  return words.flatMap((said, index) => (parameters[index] === "code" ? said : []));
};

/** Every finding code the source can say: written into a finding, or handed to a parameter named code. */
export const findCodeUses = (): readonly CodeUse[] => {
  const program = openProgram();
  const checker = program.getTypeChecker();
  const uses: CodeUse[] = [];
  for (const source of program.getSourceFiles()) {
    if (source.isDeclarationFile || source.fileName.includes("/node_modules/")) continue;
    const visit = (node: ts.Node): void => {
      uses.push(...codesIn(node, checker).map((code) => ({ code, file: source.fileName.slice(repository.length) })));
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return uses;
};
