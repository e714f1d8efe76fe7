/** Random tables whose values were worked out by R packages and are kept in a file; `make-outside.R` makes it again. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { computeCohenKappa } from "@/lib/agreement/cohen-kappa";
import { fitRasch } from "@/lib/agreement/fit-rasch";
import { computeIcc, computeMeanSquares } from "@/lib/agreement/intraclass-correlation";

const table = z.array(z.array(z.number()));
const estimate = z.tuple([z.number(), z.number()]);
const OutsideSchema = z.strictObject({
  made: z.string(),
  kappa: z.array(z.strictObject({ table, unweighted: estimate, linear: estimate, quadratic: estimate })),
  icc: z.array(
    z.strictObject({ scores: table, results: z.array(z.tuple([z.number(), z.number(), z.number()])) }),
  ),
  rasch: z.array(
    z.strictObject({
      answers: z.array(z.array(z.number().nullable())),
      easiness: z.array(z.number()),
      errors: z.array(z.number()),
      logLikelihood: z.number(),
    }),
  ),
});

const file = new URL("../cases/agreement/outside.json", import.meta.url);
const outside = OutsideSchema.parse(JSON.parse(readFileSync(file, "utf8")));

describe("kappa with its standard error (R vcd, Kappa)", () => {
  it.each(outside.kappa.map((one, i) => [i, one] as const))("table %i", (_, one) => {
    const size = one.table.length;
    for (const [kind, key] of [
      ["identity", "unweighted"],
      ["linear", "linear"],
      ["quadratic", "quadratic"],
    ] as const) {
      const [value, error] = one[key];
      expect(computeCohenKappa(one.table, createAgreementWeights(kind, size))).toMatchObject({
        value: expect.closeTo(value, 9),
        standardError: expect.closeTo(error, 9),
      });
    }
  });
});

describe("ICC with its interval (R psych, ICC)", () => {
  it.each(outside.icc.map((one, i) => [i, one] as const))("table %i", (_, { scores, results }) => {
    const squares = computeMeanSquares(scores);
    for (const [i, form] of (["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"] as const).entries()) {
      const [value, low, high] = results[i] ?? [0, 0, 0];
      expect(computeIcc(squares, form)).toEqual({
        value: expect.closeTo(value, 9),
        low: expect.closeTo(low, 7),
        high: expect.closeTo(high, 7),
      });
    }
  });
});

describe("Rasch items by conditional maximum likelihood (R eRm, RM), the last with answers missing by design", () => {
  it.each(outside.rasch.map((one, i) => [i, one] as const))(
    "table %i",
    (_, { answers, easiness, errors, logLikelihood }) => {
      const fit = fitRasch(
        answers.flatMap((row, p) =>
          row.flatMap((answer, i) =>
            answer === null ? [] : [{ person: `${p}`, item: `${i}`, right: answer === 1 }],
          ),
        ),
      );
      expect(fit.logLikelihood).toEqual({ value: expect.closeTo(logLikelihood, 5) });
      expect(fit.items).toHaveLength(easiness.length);
      for (const item of fit.items) {
        const place = Number(item.item);
        // eRm stops at a gradient of 1e-6 and takes a numeric second derivative.
        expect(item.easiness).toMatchObject({
          value: expect.closeTo(easiness[place] ?? 0, 4),
          standardError: expect.closeTo(errors[place] ?? 0, 4),
        });
      }
    },
  );
});
