/** Tables of ratings from the literature, shared by the tests of lib/agreement. */

/** Krippendorff 2011, 4 observers, 12 units, missing data (check values 4.3; also in Gwet 2014). Places 0..4 stand for 1..5. */
const KRIPPENDORFF_TEXT = `
1 2 3 3 2 1 4 1 2 . . .
1 2 3 3 2 2 4 1 2 5 . .
. 3 3 3 2 3 4 2 2 5 1 3
1 2 3 3 2 4 4 1 2 5 1 .`;

export const KRIPPENDORFF_FOUR_OBSERVERS: readonly (readonly (number | null)[])[] = KRIPPENDORFF_TEXT.trim()
  .split("\n")
  .map((line) => line.split(" ").map((text) => (text === "." ? null : Number(text) - 1)));

/** Fleiss 1971, 30 patients, 6 raters: depression, personality, schizophrenia, neurosis, other (check values 4.2). */
const FLEISS_TEXT = `
1:0 0 0 6 0    2:0 3 0 0 3    3:0 1 4 0 1    4:0 0 0 0 6    5:0 3 0 3 0
6:2 0 4 0 0    7:0 0 4 0 2    8:2 0 3 1 0    9:2 0 0 4 0   10:0 0 0 0 6
11:1 0 0 5 0  12:1 1 0 4 0   13:0 3 3 0 0   14:1 0 0 5 0   15:0 2 0 3 1
16:0 0 5 0 1  17:3 0 0 1 2   18:5 1 0 0 0   19:0 2 0 4 0   20:1 0 2 0 3
21:0 0 0 0 6  22:0 1 0 5 0   23:0 2 0 1 3   24:2 0 0 4 0   25:1 0 0 4 1
26:0 5 0 1 0  27:4 0 0 0 2   28:0 2 0 4 0   29:1 0 5 0 0   30:0 0 0 0 6`;

export const FLEISS_DIAGNOSES: readonly (readonly number[])[] = [
  ...FLEISS_TEXT.matchAll(/\d+:(\d) (\d) (\d) (\d) (\d)/g),
].map((match) => match.slice(1).map(Number));

/** Cohen 1960 and 1968: proportions of 200 (check values 4.1). */
export const COHEN_PROPORTIONS: readonly (readonly number[])[] = [
  [0.44, 0.07, 0.09],
  [0.05, 0.2, 0.05],
  [0.01, 0.03, 0.06],
].map((row) => row.map((share) => Math.round(share * 200)));

/** Fleiss, Cohen and Everitt 1969: counts, n = 200, and agreement weights (check values 4.1). */
export const EVERITT_COUNTS = [
  [106, 10, 4],
  [22, 28, 10],
  [2, 12, 6],
] as const;

export const EVERITT_WEIGHTS = [
  [1, 0, 0.4444],
  [0, 1, 0.6667],
  [0.4444, 0.6667, 1],
] as const;

/** Two raters, 100 units (check values 4.4). */
export const TWO_RATER_COUNTS = [
  [13, 0, 0],
  [0, 20, 7],
  [0, 4, 56],
] as const;

/** Shrout and Fleiss 1979, 6 targets x 4 judges (check values 4.5). */
export const SHROUT_SCORES = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
] as const;

/** LSAT section 6, 1000 persons, 5 items (Bock and Lieberman 1970; check values 7.1): pattern and frequency. */
const LSAT_TEXT = `
00000 3|00001 6|00010 2|00011 11|00100 1|00101 1|00110 3|00111 4|01000 1|01001 8|01011 16|01101 3|01110 2|01111 15|
10000 10|10001 29|10010 14|10011 81|10100 3|10101 28|10110 15|10111 80|11000 16|11001 56|11010 21|11011 173|
11100 11|11101 61|11110 28|11111 298`;

/** One row of five answers, 1 right and 0 wrong, for each person. */
export const LSAT_SIX: readonly (readonly (0 | 1)[])[] = [...LSAT_TEXT.matchAll(/([01]{5}) (\d+)/g)].flatMap(
  ([, pattern = "", frequency]) =>
    Array.from({ length: Number(frequency) }, () => [...pattern].map((c): 0 | 1 => (c === "1" ? 1 : 0))),
);
