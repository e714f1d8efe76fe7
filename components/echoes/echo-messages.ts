import type { EchoSource, PredictedEcho } from "@/lib/editor/list-echoes";
import type { CutName } from "@/lib/gem/cut-name";
import type { Proportions } from "@/lib/gem/proportions";

/** A stone and its inside marks, to predict echoes for. */
export interface EchoInput {
  readonly cut: CutName;
  readonly proportions: Proportions;
  readonly refractiveIndex: number;
  readonly sources: readonly EchoSource[];
}

/** To the worker. A new request ends the one before; `cancel` ends it without another. */
export type EchoRequest =
  | { readonly kind: "predict"; readonly job: number; readonly input: EchoInput }
  | { readonly kind: "cancel" };

/** From the worker. */
export interface EchoAnswer {
  readonly job: number;
  readonly echoes: readonly PredictedEcho[];
}
