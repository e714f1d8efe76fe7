/** The models of prisma/schema.prisma as far as the tests compare them with the database. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

const SCHEMA = join(import.meta.dirname, "../../prisma/schema.prisma");

export interface Model {
  readonly name: string;
  /** The columns; fields that stand for a relation are none. */
  readonly fields: readonly { readonly name: string; readonly isRequired: boolean }[];
  /** The names of each unique key's columns. */
  readonly unique: readonly (readonly string[])[];
}

const COLUMN_TYPES = ["String", "Int", "Float", "Boolean", "DateTime", "Json", "Role"];

function readModel(name: string, body: string): Model {
  const fields: { name: string; isRequired: boolean }[] = [];
  const unique: string[][] = [];
  for (const line of body.split("\n").map((one) => one.trim())) {
    const key = /^@@unique\(\[([^\]]+)\]\)/.exec(line)?.[1];
    if (key !== undefined) unique.push(key.split(",").map((one) => one.trim()));
    const field = /^(\w+)\s+(\w+)(\?|\[\])?(.*)$/.exec(line);
    if (field === null || !COLUMN_TYPES.includes(field[2] ?? "")) continue;
    const [, column = "", , optional, attributes = ""] = field;
    fields.push({ name: column, isRequired: optional !== "?" });
    if (/@unique\b/.test(attributes)) unique.push([column]);
  }
  return { name, fields, unique };
}

/** All models, in the order of the file. */
export function readModels(): Model[] {
  const text = readFileSync(SCHEMA, "utf8");
  return [...text.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)].map(([, name = "", body = ""]) =>
    readModel(name, body),
  );
}
