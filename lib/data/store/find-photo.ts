import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import { whereStoneOpened } from "@/lib/data/store/find-own-label";
import type { Prisma } from "@/prisma/generated/client";

const enrolled = (now: Date) =>
  ({
    stone: {
      include: {
        tray: { select: { ownerId: true } },
        exerciseStones: {
          where: { ...whereStoneOpened(now), exercise: { opensAt: { lte: now } } },
          select: {
            isRetake: true,
            retakes: { select: { studentId: true } },
            exercise: { select: { section: { select: { enrolments: { select: { studentId: true } } } } } },
          },
        },
      },
    },
  }) satisfies Prisma.StonePhotoInclude;

export type PhotoRow = Prisma.StonePhotoGetPayload<{ include: ReturnType<typeof enrolled> }>;

export interface FoundPhoto extends Resource {
  readonly row: PhotoRow;
}

/**
 * Looks a photograph up by id; null when there is none. Students count as enrolled only where it is shown, and the
 * exercise and the stone in it have opened.
 */
export async function findPhoto(database: Transaction, photoId: string): Promise<FoundPhoto | null> {
  const row = await database.stonePhoto.findUnique({
    where: { id: photoId },
    include: enrolled(new Date()),
  });
  if (row === null) return null;
  const studentIds = row.stone.exerciseStones.flatMap(({ exercise, isRetake, retakes }) =>
    (isRetake ? retakes : exercise.section.enrolments).map(({ studentId }) => studentId),
  );
  return { row, ownerId: row.stone.tray.ownerId, studentIds: row.isShown ? studentIds : [] };
}
