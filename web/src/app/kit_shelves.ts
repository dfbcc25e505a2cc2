// The shelves of the kit: what is kept of each thing, how it is typed and how it is said.

import type { Kit } from "../wire/api";
import { type Shown, shownWords } from "./shown_unit";

export type ShelfName = Exclude<keyof Kit, "remarks">;
export type Thing = { uid?: string; revision?: string; [field: string]: unknown };

export interface Field {
  /** Where it is in the thing: "hardness.reading". */
  at: string;
  label: string;
  unit?: string;
  /** Where the thing says the unit; `unit` until it does. */
  unitAt?: string;
  /** An angle per side: between 0 and 90. */
  angle?: true;
  /** Absent: text. names: several, with commas; steel and grit: looked up while they are typed. */
  as?: "number" | "names" | "steel" | "grit" | { [value: string]: string };
  hint?: string;
  needed?: boolean;
  /** Of a number that may be typed as a range: where its half width is kept. */
  spreadAt?: string;
  /** A number that may be typed with ± before it. */
  plusMinus?: true;
}

export interface Shelf {
  name: ShelfName;
  many: string;
  one: string;
  /** "a blade", "an edge" */
  a: "a" | "an";
  fields: Field[];
  /** Of a shelf with nothing on it. */
  empty: string;
  /** What a new one begins with. */
  begin: Thing;
}

const note: Field = { at: "note", label: "Note" };
const inScale = { unit: "HRC", unitAt: "hardness.scale" };
const perSide = { unit: "° per side", as: "number", angle: true } as const;
const hardness: Field[] = [
  {
    at: "hardness.reading",
    label: "Hardness",
    ...inScale,
    as: "number",
    spreadAt: "hardness.error",
    hint: "58, or a range: 58-60",
  },
  { at: "hardness.scale", label: "Scale", as: { HRC: "HRC", HV: "HV" }, needed: true },
  { at: "hardness.error", label: "Plus or minus", ...inScale, as: "number", plusMinus: true },
  {
    at: "hardness.how_known",
    label: "How it is known",
    as: {
      measured: "measured",
      mill_sheet: "from the mill sheet",
      declared_by_maker: "declared by its maker",
    },
  },
];

export const shelves: Shelf[] = [
  {
    name: "blades",
    many: "Blades",
    one: "blade",
    a: "a",
    empty: "No blade yet. A name is enough to begin with.",
    begin: { name: "" },
    fields: [
      { at: "name", label: "Name", needed: true },
      { at: "steel", label: "Steel, by AISI or EN designation", as: "steel" },
      ...hardness,
      { at: "specimens", label: "Specimens", as: "names", hint: "as marked: I, II, III" },
    ],
  },
  {
    name: "edges",
    many: "Edges",
    one: "edge",
    a: "an",
    empty: "No edge yet. An edge by name spares typing its angles again.",
    begin: { name: "", edge: {} },
    fields: [
      { at: "name", label: "Name", needed: true },
      { at: "edge.bevel_angle_per_side_deg", label: "Bevel", ...perSide },
      { at: "edge.apex_angle_per_side_deg", label: "Micro-bevel", ...perSide },
      { at: "edge.finish", label: "Finish, with its grit’s system", as: "grit" },
      {
        at: "edge.thickness_behind_edge_mm",
        label: "Thickness behind the edge",
        unit: "mm",
        as: "number",
      },
      note,
    ],
  },
  {
    name: "media",
    many: "Media",
    one: "medium",
    a: "a",
    empty: "Nothing to cut yet: rope, card, matting, by the name you call it.",
    begin: { name: "" },
    fields: [
      { at: "name", label: "Name", needed: true },
      { at: "condition", label: "Condition", hint: "dry, wet, dusty" },
    ],
  },
  {
    name: "lots",
    many: "Lots of a medium",
    one: "lot",
    a: "a",
    empty: "No lot yet. Another roll or bale may cut otherwise; naming it keeps that visible.",
    begin: { medium: "", name: "" },
    fields: [
      { at: "medium", label: "Medium", needed: true },
      { at: "name", label: "Lot", needed: true, hint: "roll 3" },
      { at: "condition", label: "Condition" },
      { at: "length_m", label: "Length", unit: "m", as: "number" },
      note,
    ],
  },
  {
    name: "threads",
    many: "Threads, cords and cards",
    one: "thread",
    a: "a",
    empty: "Nothing to read with yet. Readings with another thread are never compared.",
    begin: { kind: "thread_push", name: "" },
    fields: [
      { at: "kind", label: "Kind of reading", needed: true },
      { at: "name", label: "Name", needed: true, hint: "0.25 mm polyester" },
      { at: "lot", label: "Lot" },
    ],
  },
  {
    name: "kinds",
    many: "Kinds of reading",
    one: "kind of reading",
    a: "a",
    empty: "None of your own yet.",
    begin: { name: "", words: "", unit: "", keener_when: "lower" },
    fields: [
      { at: "name", label: "Name in tables", needed: true, hint: "flank_wear" },
      { at: "words", label: "Name in sentences", needed: true, hint: "flank wear" },
      { at: "unit", label: "Unit", needed: true },
      {
        at: "keener_when",
        label: "Keener when",
        as: { lower: "lower", higher: "higher" },
        needed: true,
      },
    ],
  },
  {
    name: "stones",
    many: "Stones, plates and wheels",
    one: "stone",
    a: "a",
    empty: "No stone yet. A grit is kept with its system: a bare 1000 is three sizes.",
    begin: { name: "" },
    fields: [
      { at: "name", label: "Name", needed: true },
      { at: "abrasive", label: "Abrasive", hint: "fused alumina, silicon carbide, CBN, diamond" },
      { at: "grit", label: "Grit, with its system", as: "grit", hint: "FEPA-F 220, 45 µm" },
      note,
    ],
  },
];

export const thingsOn = (kit: Kit, shelf: ShelfName): Thing[] =>
  kit[shelf].map((thing) => ({ ...thing }));

const inside = (value: unknown): Thing | undefined =>
  typeof value === "object" && value !== null ? (value as Thing) : undefined;

export function valueAt(thing: Thing, at: string): unknown {
  return at.split(".").reduce<unknown>((value, part) => inside(value)?.[part], thing);
}

/** An empty value is taken away, and so is what held nothing else. */
export function withValue(thing: Thing, at: string, value: unknown): Thing {
  const [first = "", ...rest] = at.split(".");
  const { [first]: before, ...others } = thing;
  const put = rest.length > 0 ? withValue(inside(before) ?? {}, rest.join("."), value) : value;
  const nothing = put === undefined || put === "";
  return nothing ? others : { ...others, [first]: put };
}

/** As it is sent: a hardness without a reading is none, and has a scale where it is one. */
export function asSent(thing: Thing): Thing {
  const { used_in: _used, own: _own, hardness: known, ...sent } = thing;
  const hard = inside(known);
  if (hard?.reading === undefined) return sent;
  return { ...sent, hardness: { scale: "HRC", ...hard } };
}

const joined = (parts: unknown[]) =>
  parts.filter((part) => part !== undefined && part !== "").join(", ");
const named = (things: unknown) =>
  Array.isArray(things) ? things.map((thing) => inside(thing)?.name).join(", ") : undefined;

function hardnessWords(thing: Thing): string | undefined {
  const hard = inside(thing.hardness);
  if (!hard) return undefined;
  return `${hard.reading}${hard.error ? ` ± ${hard.error}` : ""} ${hard.scale}`;
}

/** What is known of a thing besides its name. */
export function thingWords(shelf: ShelfName, thing: Thing, shown: Shown): string {
  const edge = inside(thing.edge);
  const pieces = named(thing.specimens);
  const used = Array.isArray(thing.used_in) && thing.used_in.length > 0;
  const words: Record<ShelfName, unknown[]> = {
    blades: [thing.steel, hardnessWords(thing), pieces ? `specimens ${pieces}` : undefined],
    edges: [edge?.words, thing.note],
    media: [thing.condition],
    lots: [
      `of ${thing.medium}`,
      thing.condition,
      typeof thing.length_m === "number" ? shownWords(thing.length_m, shown("m")) : undefined,
      thing.note,
    ],
    threads: [String(thing.kind).replaceAll("_", " "), thing.lot && `lot ${thing.lot}`],
    kinds: [
      thing.words,
      thing.unit === "um" ? "µm" : thing.unit,
      `keener when ${thing.keener_when}`,
    ],
    stones: [thing.abrasive, thing.grit, thing.note],
  };
  return joined([
    ...words[shelf],
    used ? `in ${(thing.used_in as string[]).join(", ")}` : undefined,
  ]);
}
