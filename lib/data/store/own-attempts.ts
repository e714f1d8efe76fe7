import { parseColumn } from "@/lib/data/store/parse-column";
import { type AttemptGround, countAttemptsLeft } from "@/lib/plot/count-attempts";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import type { Prisma } from "@/prisma/generated/client";

/** What of a stone of an exercise says how often one student may sit it, attempts oldest first. */
export const ownAttemptParts = (studentId: string) =>
  ({
    retakes: { where: { studentId }, orderBy: { grantedAt: "asc" } },
    sittings: {
      where: { studentId },
      orderBy: { attempt: "asc" },
      select: {
        id: true,
        attempt: true,
        openedAt: true,
        handIn: { select: { id: true } },
        releases: { where: { withdrawnAt: null }, select: { id: true } },
      },
    },
  }) satisfies Prisma.ExerciseStoneInclude;

interface AttemptRow {
  readonly isRetake: boolean;
  readonly retakes: readonly { readonly grantedAt: Date }[];
  readonly sittings: readonly {
    readonly openedAt: Date;
    readonly handIn: object | null;
    readonly releases: readonly object[];
  }[];
}

/** How many more attempts the student whose rows these are may begin on the stone now. */
export function countOwnAttemptsLeft(
  row: AttemptRow,
  exercise: { readonly rules: unknown; readonly allowances: readonly { readonly extraAttempts: number }[] },
): number {
  const { attempts } = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
  const ground: AttemptGround = {
    attempts,
    extraAttempts: exercise.allowances[0]?.extraAttempts ?? 0,
    isRetake: row.isRetake,
    grantedAt: row.retakes.map(({ grantedAt }) => grantedAt),
    begun: row.sittings.map(({ openedAt, handIn, releases }) => ({
      openedAt,
      isHandedIn: handIn !== null,
      isReleased: releases.length > 0,
    })),
  };
  return countAttemptsLeft(ground);
}
