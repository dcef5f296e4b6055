import type { Finding } from "#numeric";
import { formatPath } from "./wire-path.ts";

/**
 * What a JSON text says. A text that breaks off or breaks the grammar is not readable; NaN, Infinity and doubled keys
 * are each a finding, and the rest is still read, so that everything wrong can be said at once.
 */
export type JsonReading =
  | { readonly readable: true; readonly value: unknown; readonly findings: readonly Finding[] }
  | { readonly readable: false; readonly findings: readonly Finding[] };

/** Deeper than any document of this program by far; a deeper one is refused before it can exhaust the stack. */
const deepest = 64;
/** More single values than any input of this program needs; invented, ten times the largest known case. */
const mostValues = 200_000;
/** Findings of one text are cut here; the caller is told how many there were by the last one. */
const mostFindings = 200;

const quote = 34;
const backslash = 92;
const numberToken = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const notFinite = /-?(?:NaN|Infinity)\b/y;
const wordToken = /[A-Za-z_][A-Za-z0-9_]*/y;

class Unreadable extends Error {
  readonly finding: Finding;
  constructor(finding: Finding) {
    super(finding.code);
    this.finding = finding;
  }
}

class Reader {
  readonly findings: Finding[] = [];
  private readonly text: string;
  private readonly path: (string | number)[] = [];
  private at = 0;
  private values = 0;

  constructor(text: string) {
    this.text = text;
  }

  readDocument(): unknown {
    this.skipSpace();
    if (this.at === this.text.length) throw new Unreadable(emptyText);
    const value = this.readValue();
    this.skipSpace();
    if (this.at < this.text.length) throw this.broken("the end of the text", "One JSON value stands alone.");
    return value;
  }

  private readValue(): unknown {
    this.values++;
    if (this.values > mostValues) throw this.tooMany();
    const letter = this.text[this.at];
    if (letter === "{") return this.nested(() => this.readObject());
    if (letter === "[") return this.nested(() => this.readList());
    if (letter === '"') return this.readText();
    if (letter === "-" || (letter !== undefined && letter >= "0" && letter <= "9")) return this.readNumber();
    return this.readWord();
  }

  private nested<T>(read: () => T): T {
    if (this.path.length >= deepest) {
      throw new Unreadable({
        code: "too-deep",
        path: "",
        got: `more than ${deepest} levels of brackets`,
        needed: `at most ${deepest} levels`,
        hint: `It begins at ${this.place()}.`,
      });
    }
    return read();
  }

  private readObject(): Record<string, unknown> {
    const object: Record<string, unknown> = {};
    this.at++;
    this.skipSpace();
    if (this.take("}")) return object;
    for (;;) {
      this.skipSpace();
      if (this.text[this.at] !== '"') throw this.broken("a key in double quotes", this.hintAtKey());
      const key = this.readText();
      this.skipSpace();
      if (!this.take(":")) throw this.broken("a colon after the key", "");
      this.skipSpace();
      this.path.push(key);
      if (Object.hasOwn(object, key)) this.note("duplicate-key", "the key a second time", "each key once", "Keep one.");
      setOwn(object, key, this.readValue());
      this.path.pop();
      this.skipSpace();
      if (this.take("}")) return object;
      if (!this.take(",")) throw this.broken("a comma or }", "");
    }
  }

  private readList(): unknown[] {
    const list: unknown[] = [];
    this.at++;
    this.skipSpace();
    if (this.take("]")) return list;
    for (;;) {
      this.skipSpace();
      this.path.push(list.length);
      list.push(this.readValue());
      this.path.pop();
      this.skipSpace();
      if (this.take("]")) return list;
      if (!this.take(",")) throw this.broken("a comma or ]", "");
    }
  }

  private readText(): string {
    const from = this.at;
    let escaped = false;
    for (let i = from + 1; i < this.text.length; i++) {
      const code = this.text.charCodeAt(i);
      if (code === quote) {
        this.at = i + 1;
        const token = this.text.slice(from, this.at);
        return escaped ? this.unescape(token, from) : token.slice(1, -1);
      }
      if (code === backslash) {
        escaped = true;
        i++;
      } else if (code < 32) {
        this.at = i;
        throw this.broken("text on one line", "Write a line end inside text as \\n.");
      }
    }
    throw this.broken(
      "a closing double quote",
      `The text that begins at ${this.place()} never ends.`,
      "the end of the text",
    );
  }

  private unescape(token: string, from: number): string {
    try {
      return JSON.parse(token) as string;
    } catch (problem) {
      if (!(problem instanceof SyntaxError)) throw problem;
      this.at = from;
      throw this.broken("text with JSON's own escapes only", 'Allowed: \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u0000.');
    }
  }

  private readNumber(): number {
    const odd = this.match(notFinite);
    if (odd !== null) return this.notANumber(odd);
    const token = this.match(numberToken);
    if (token === null) throw this.broken("a number", "");
    const next = this.text[this.at];
    if (next !== undefined && /[0-9A-Za-z_.+]/.test(next)) {
      throw this.broken("the end of the number", "JSON numbers are written like -0.5, 12 or 1.5e-3.");
    }
    const value = Number(token);
    if (Number.isFinite(value)) return value;
    this.note("number-too-large", token.slice(0, 40), "a number below 1.8e308", "Check the exponent.");
    return value;
  }

  private readWord(): unknown {
    const odd = this.match(notFinite);
    if (odd !== null) return this.notANumber(odd);
    const from = this.at;
    const word = this.match(wordToken);
    if (word === "true") return true;
    if (word === "false") return false;
    if (word === "null") return null;
    this.at = from;
    throw this.broken("a value", this.hintAtValue());
  }

  private notANumber(token: string): number {
    this.note("not-a-number", token, "a finite number", "Leave the key out where the figure is not known.");
    return Number(token);
  }

  private match(pattern: RegExp): string | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found === null) return null;
    this.at += found[0].length;
    return found[0];
  }

  private take(letter: string): boolean {
    if (this.text[this.at] !== letter) return false;
    this.at++;
    return true;
  }

  private skipSpace(): void {
    for (;;) {
      const code = this.text.charCodeAt(this.at);
      if (code !== 32 && code !== 10 && code !== 13 && code !== 9) return;
      this.at++;
    }
  }

  private place(): string {
    const before = this.text.slice(0, this.at);
    const line = before.split("\n").length;
    return `line ${line}, column ${this.at - before.lastIndexOf("\n")}`;
  }

  private hintAtKey(): string {
    const letter = this.text[this.at];
    if (letter === "}") return "A comma stands before the closing bracket.";
    if (letter === "'") return "JSON uses double quotes.";
    return "";
  }

  private hintAtValue(): string {
    const letter = this.text[this.at];
    if (letter === "]" || letter === "}") return "A comma or colon stands before the closing bracket.";
    if (letter === "'") return "JSON uses double quotes.";
    if (letter === "/") return "JSON has no comments.";
    if (letter === "+" || letter === ".") return "JSON numbers are written like -0.5, 12 or 1.5e-3.";
    return "";
  }

  private broken(needed: string, hint: string, came?: string): Unreadable {
    const letter = this.text[this.at];
    const got = came ?? (letter === undefined ? "the end of the text" : JSON.stringify(letter));
    return new Unreadable({
      code: "not-json",
      path: formatPath(this.path),
      got: `${got} at ${this.place()}`,
      needed,
      hint,
    });
  }

  private tooMany(): Unreadable {
    return new Unreadable({
      code: "too-many-values",
      path: formatPath(this.path.slice(0, 1)),
      got: `more than ${mostValues} values`,
      needed: `at most ${mostValues} values in one input`,
      hint: "Ask in several smaller inputs.",
    });
  }

  private note(code: string, got: string, needed: string, hint: string): void {
    if (this.findings.length < mostFindings)
      this.findings.push({ code, path: formatPath(this.path), got, needed, hint });
  }
}

/** Sets an own key even where its name is one that plain assignment would treat as the prototype. */
const setOwn = (object: Record<string, unknown>, key: string, value: unknown): void => {
  if (key === "__proto__") {
    Object.defineProperty(object, key, { value, enumerable: true, configurable: true, writable: true });
  } else object[key] = value;
};

const emptyText: Finding = {
  code: "no-input",
  path: "",
  got: "nothing",
  needed: "one JSON value",
  hint: "",
};

/** Reads a JSON text strictly (RFC 8259; a byte order mark is skipped), with findings that say where and what. */
export const readJson = (text: string): JsonReading => {
  const reader = new Reader(text.startsWith("\uFEFF") ? text.slice(1) : text);
  try {
    const value = reader.readDocument();
    return { readable: true, value, findings: reader.findings };
  } catch (stopped) {
    if (!(stopped instanceof Unreadable)) throw stopped;
    return { readable: false, findings: [...reader.findings, stopped.finding] };
  }
};
