/** A stone's body while it is typed: texts, so that half a number is no error yet. Pure. */
import { z } from "zod";
import { readClockList, toClockText } from "@/components/stone/read-clock-list";
import type { Fault } from "@/lib/base/app-error";
import { CUT_NAMES, type CutName } from "@/lib/gem/cut-name";
import { CUT_RULES, PROPORTION_LABELS, type ProportionKey } from "@/lib/gem/cut-rules";
import type { Solid } from "@/lib/gem/solid";
import { findSolid } from "@/lib/plot/find-plot-faults";
import { IdSchema } from "@/lib/plot/mark";
import { DEFAULT_REFRACTIVE_INDEX, type StoneBody, StoneBodySchema } from "@/lib/plot/stone";
import { toFaults } from "@/lib/plot/to-faults";

const text = z.string().max(4000);

export const StoneDraftSchema = z.strictObject({
  label: text,
  cut: z.enum(CUT_NAMES),
  /** Empty: the cut's standard value. */
  proportions: z.record(z.string(), text),
  weightCt: text,
  /** Length or largest diameter, width or smallest diameter, depth. */
  measurementsMm: z.tuple([text, text, text]),
  refractiveIndex: text,
  prongs: text,
  landmark: text,
});
export type StoneDraft = z.infer<typeof StoneDraftSchema>;

/** The keys of a cut that are single numbers, in the order of forms. */
export function listProportionKeys(cut: CutName): ProportionKey[] {
  return (Object.keys(PROPORTION_LABELS) as ProportionKey[]).filter(
    (key) => CUT_RULES[cut][key] !== undefined,
  );
}

export function createStoneDraft(cut: CutName = "round-brilliant"): StoneDraft {
  return {
    label: "",
    cut,
    proportions: {},
    weightCt: "",
    measurementsMm: ["", "", ""],
    refractiveIndex: String(DEFAULT_REFRACTIVE_INDEX),
    prongs: "",
    landmark: "",
  };
}

/** The draft that reads back as this stone. */
export function toStoneDraft(label: string, body: StoneBody): StoneDraft {
  const { planes: _planes, ...numbers } = body.proportions;
  const mm = body.measurementsMm;
  return {
    label,
    cut: body.cut,
    proportions: Object.fromEntries(Object.entries(numbers).map(([key, value]) => [key, String(value)])),
    weightCt: body.weightCt === undefined ? "" : String(body.weightCt),
    measurementsMm: mm === undefined ? ["", "", ""] : [String(mm[0]), String(mm[1]), String(mm[2])],
    refractiveIndex: String(body.refractiveIndex),
    prongs: body.prongsDeg.map(toClockText).join(", "),
    landmark: body.landmark ?? "",
  };
}

export interface ReadStone {
  readonly label: string;
  /** Null while anything is at fault. */
  readonly body: StoneBody | null;
  /** The solid as far as cut and proportions go; null when they make none. */
  readonly solid: Solid | null;
  readonly faults: readonly Fault[];
}

/** A number as it is typed, with a comma or a point; undefined when empty, null when it is no number. */
function readNumber(typed: string): number | undefined | null {
  const trimmed = typed.trim();
  if (trimmed === "") return undefined;
  const value = Number(trimmed.replace(",", "."));
  return Number.isFinite(value) ? value : null;
}

class FaultList {
  readonly faults: Fault[] = [];
  add(path: string, message: string): void {
    this.faults.push({ path, message });
  }
  number(path: string, typed: string): number | undefined {
    const value = readNumber(typed);
    if (value !== null) return value;
    this.add(path, `“${typed.trim()}” is not a number`);
    return undefined;
  }
}

function readProportions(
  draft: StoneDraft,
  kept: StoneBody | null,
  list: FaultList,
): StoneBody["proportions"] {
  const entries = listProportionKeys(draft.cut).flatMap((key) => {
    const value = list.number(`proportions.${key}`, draft.proportions[key] ?? "");
    return value === undefined ? [] : [[key, value] as const];
  });
  const planes = draft.cut === "custom" ? kept?.proportions.planes : undefined;
  return { ...Object.fromEntries(entries), ...(planes === undefined ? {} : { planes }) };
}

function readMeasurements(draft: StoneDraft, list: FaultList): [number, number, number] | undefined {
  const typed = draft.measurementsMm;
  if (typed.every((one) => one.trim() === "")) return undefined;
  const [length, width, depth] = typed.map((one, i) => list.number(`measurementsMm[${i}]`, one));
  if (length === undefined || width === undefined || depth === undefined) {
    typed.forEach((one, i) => {
      if (one.trim() === "") list.add(`measurementsMm[${i}]`, "give all three measurements, or none");
    });
    return undefined;
  }
  return [length, width, depth];
}

function readProngs(draft: StoneDraft, list: FaultList): number[] {
  const { clockDegs, unread } = readClockList(draft.prongs);
  if (unread.length > 0) {
    list.add(
      "prongsDeg",
      `“${unread.join(", ")}” is no clock position such as 1:30, nor degrees such as 45°`,
    );
  }
  return [...clockDegs];
}

/**
 * Reads a draft as a stone: everything that the schema and the solid refuse, each at its path. `kept` is the body
 * that the draft began as, for what the form does not show (the planes of a custom cut).
 */
export function readStoneDraft(draft: StoneDraft, kept: StoneBody | null = null): ReadStone {
  const list = new FaultList();
  const label = draft.label.trim();
  const id = IdSchema.safeParse(label);
  if (label === "") list.add("label", "give the stone a label, as it stands on its box");
  else if (!id.success) list.add("label", id.error.issues[0]?.message ?? "cannot be a label");
  const proportions = readProportions(draft, kept, list);
  const weightCt = list.number("weightCt", draft.weightCt);
  const measurementsMm = readMeasurements(draft, list);
  const refractiveIndex = list.number("refractiveIndex", draft.refractiveIndex);
  const landmark = draft.landmark.trim();
  const parsed = StoneBodySchema.safeParse({
    cut: draft.cut,
    proportions,
    ...(weightCt === undefined ? {} : { weightCt }),
    ...(measurementsMm === undefined ? {} : { measurementsMm }),
    ...(refractiveIndex === undefined ? {} : { refractiveIndex }),
    prongsDeg: readProngs(draft, list),
    ...(landmark === "" ? {} : { landmark }),
  });
  if (!parsed.success) list.faults.push(...toFaults(parsed.error));
  const shaped = StoneBodySchema.safeParse({ cut: draft.cut, proportions });
  const { solid, faults } = shaped.success ? findSolid(shaped.data, "") : { solid: null, faults: [] };
  list.faults.push(...faults);
  const body = parsed.success && list.faults.length === 0 ? parsed.data : null;
  return { label, body, solid, faults: list.faults };
}

/** The first fault at exactly this path, as a field shows it. */
export function findFaultAt(faults: readonly Fault[], path: string): string | null {
  return faults.find((fault) => fault.path === path)?.message ?? null;
}
