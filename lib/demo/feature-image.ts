import type { Point, View } from "@/lib/gem/point";

/** Where an inside feature of the reference is seen: bounces 0 is the direct image, more are its echoes. */
export interface FeatureImage {
  readonly reference: string;
  readonly view: View;
  readonly at: Point;
  readonly bounces: number;
  /** 0…1. */
  readonly strength: number;
}
