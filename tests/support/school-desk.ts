/** What some tests need of the school besides: a rescore that waits, a desk in use, a review, and its sums. */
import { getDatabase } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { RubricSchema } from "@/lib/plot/rubric";
import { addPhoto } from "@/lib/workflows/add-photo";
import { judgeStoneChecks } from "@/lib/workflows/judge-stone-checks";
import { overrule } from "@/lib/workflows/overrule";
import { runRescore } from "@/lib/workflows/run-rescore";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";
import { startRescore } from "@/lib/workflows/start-rescore";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";
import { writeComment } from "@/lib/workflows/write-comment";
import { makePicture } from "@/tests/support/make-picture";
import type { School } from "@/tests/support/school";
import { LENIENT_RUBRIC, SEEN } from "@/tests/support/school-marks";

/** The same school with a second version of the first exercise's rubric, and a rescore by it that waits. */
export async function addRescore(school: School): Promise<School> {
  const { exerciseId, iris } = school;
  const body = toColumn(RubricSchema, LENIENT_RUBRIC);
  await getDatabase().rubricVersion.create({
    data: { exerciseId, version: 2, body, authorId: iris.userId },
  });
  const { rescoreId } = await startRescore(iris, { exerciseId });
  await runRescore(rescoreId);
  return { ...school, rescoreId };
}

async function review({ iris, adaScored: sittingId }: School) {
  const { revision } = await overrule(iris, {
    sittingId,
    baseRevision: 0,
    ruling: { kind: "grade", property: "clarity", credit: 0.5 },
    reason: "overrule-secret",
  });
  const { commentId } = await writeComment(iris, {
    sittingId,
    baseRevision: revision,
    commentId: null,
    subject: null,
    text: "comment-secret",
  });
  const { id } = await getDatabase().overrule.findFirstOrThrow({ where: { sittingId } });
  return { overruleId: id, commentId };
}

/**
 * The same school with a photograph of the first stone, hidden, a check that Ada sent of it, and Iris's review of Ada's
 * scored plot.
 */
export async function addDesk(school: School): Promise<School> {
  const { photoId } = await addPhoto(school.iris, {
    stoneId: school.stoneIds[0],
    bytes: await makePicture(),
  });
  const [exerciseStoneId] = school.exerciseStoneIds;
  const { checkId } = await sendStoneCheck(school.ada, { exerciseStoneId, evidence: SEEN });
  await judgeStoneChecks();
  return { ...school, photoId, checkId, ...(await review(school)) };
}

/** Makes the sums that the first reader would make: what is derived is then no write of the call that is watched. */
export async function addSums(school: School): Promise<School> {
  const exercises = await getDatabase().exercise.findMany({ select: { id: true } });
  await ensureTallySums(exercises.map(({ id }) => id));
  return school;
}
