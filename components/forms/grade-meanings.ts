/**
 * What a grade means, in our own words, for the grades of the default scales. Clarity: the trade's abbreviations
 * spelled out; how hard each is to see is common practice, no source. Colour: the names of the International Diamond
 * Council's Rule Book 3.1. A grade that a school adds has no words here.
 */
import type { GradedProperty } from "@/lib/plot/grades";

const MEANINGS: Readonly<Partial<Record<GradedProperty, Readonly<Record<string, string>>>>> = {
  clarity: {
    "Loupe-clean": "nothing inside to be seen through the 10x loupe",
    VVS1: "very, very small: very hard to find with the loupe",
    VVS2: "very, very small: hard to find with the loupe, a little less so",
    VS1: "very small: not easy to find with the loupe",
    VS2: "very small: found with the loupe after some looking",
    SI1: "small: easy to find with the loupe",
    SI2: "small: very easy to find with the loupe",
    P1: "pronounced: at once with the loupe, hard with the bare eye",
    P2: "pronounced: easy with the bare eye",
    P3: "pronounced: at once with the bare eye, and it dulls the stone",
  },
  colour: {
    D: "exceptional white +",
    E: "exceptional white",
    F: "rare white +",
    G: "rare white",
    H: "white",
    I: "slightly tinted white +",
    J: "slightly tinted white",
    K: "tinted white +",
    L: "tinted white",
    "M-Z": "tinted colour",
  },
};

/** The words for a grade, or null where there are none. */
export function findGradeMeaning(property: GradedProperty, grade: string): string | null {
  return MEANINGS[property]?.[grade] ?? null;
}
