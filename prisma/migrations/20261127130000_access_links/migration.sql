-- AlterTable: a column is added, so the table and what stands on it are kept as they are.
ALTER TABLE "User" ADD COLUMN "erasedAt" DATETIME;

-- CreateTable
CREATE TABLE "AccessLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdById" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    CONSTRAINT "AccessLink_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "AccessLink_createdById_fkey" FOREIGN KEY ("createdById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "AccessLink_tokenHash_key" ON "AccessLink"("tokenHash");

-- CreateIndex
CREATE INDEX "AccessLink_userId_idx" ON "AccessLink"("userId");

-- CreateIndex
CREATE INDEX "AccessLink_createdById_idx" ON "AccessLink"("createdById");

-- Nobody comes back from erasure: the row keeps saying so, under the name that it was given.
CREATE TRIGGER "User_stays_erased" BEFORE UPDATE ON "User"
WHEN OLD."erasedAt" IS NOT NULL AND (NEW."erasedAt" IS NOT OLD."erasedAt" OR NEW."name" IS NOT OLD."name"
  OR NEW."login" IS NOT OLD."login" OR NEW."passwordHash" IS NOT OLD."passwordHash" OR NEW."active")
BEGIN SELECT RAISE(ABORT, 'an erased account is never brought back'); END;

-- The doors that erasing somebody needs, each as narrow as it can be. In the trail a name may become the words for an
-- erased person, and a detail may become empty, in entries by or about somebody who is erased; what was done, to what
-- and when stays as it is.
DROP TRIGGER "TrailEntry_no_update";
CREATE TRIGGER "TrailEntry_no_update" BEFORE UPDATE ON "TrailEntry"
WHEN NEW."id" IS NOT OLD."id" OR NEW."at" IS NOT OLD."at" OR NEW."actorId" IS NOT OLD."actorId"
  OR NEW."action" IS NOT OLD."action" OR NEW."subjectKind" IS NOT OLD."subjectKind" OR NEW."subjectId" IS NOT OLD."subjectId"
  OR (NEW."actorName" IS NOT OLD."actorName" AND (NEW."actorName" <> 'Erased student'
    OR NOT EXISTS (SELECT 1 FROM "User" WHERE "id" = OLD."actorId" AND "erasedAt" IS NOT NULL)))
  OR (NEW."detail" IS NOT OLD."detail" AND NEW."detail" <> '')
  OR NOT EXISTS (SELECT 1 FROM "User" WHERE "id" IN (OLD."actorId", OLD."subjectId") AND "erasedAt" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'the trail is append-only'); END;

-- Notes that were sent to the bench of somebody who is erased may go.
DROP TRIGGER "BenchNote_no_delete";
CREATE TRIGGER "BenchNote_no_delete" BEFORE DELETE ON "BenchNote"
WHEN NOT EXISTS (SELECT 1 FROM "Sitting" JOIN "User" ON "User"."id" = "Sitting"."studentId"
  WHERE "Sitting"."id" = OLD."sittingId" AND "User"."erasedAt" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'a note that was sent is never deleted'); END;
