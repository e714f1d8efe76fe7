-- AlterTable
ALTER TABLE "Sitting" ADD COLUMN "reviewRevision" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Result" ADD COLUMN "reviewRevision" INTEGER NOT NULL DEFAULT 0;

-- CreateTable
CREATE TABLE "Overrule" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sittingId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "ruling" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "referenceVersion" INTEGER NOT NULL,
    "authorId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "endedAt" DATETIME,
    "endedById" TEXT,
    CONSTRAINT "Overrule_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Overrule_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Overrule_endedById_fkey" FOREIGN KEY ("endedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReviewComment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sittingId" TEXT NOT NULL,
    "subject" TEXT,
    "text" TEXT NOT NULL,
    "authorId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "editedAt" DATETIME,
    "deletedAt" DATETIME,
    CONSTRAINT "ReviewComment_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ReviewComment_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReviewStep" (
    "sittingId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,

    PRIMARY KEY ("sittingId", "revision"),
    CONSTRAINT "ReviewStep_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ReviewStep_byId_fkey" FOREIGN KEY ("byId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Overrule_authorId_idx" ON "Overrule"("authorId");

-- CreateIndex
CREATE INDEX "Overrule_endedById_idx" ON "Overrule"("endedById");

-- CreateIndex
CREATE UNIQUE INDEX "Overrule_sittingId_revision_key" ON "Overrule"("sittingId", "revision");

-- CreateIndex
CREATE INDEX "ReviewComment_sittingId_idx" ON "ReviewComment"("sittingId");

-- CreateIndex
CREATE INDEX "ReviewComment_authorId_idx" ON "ReviewComment"("authorId");

-- CreateIndex
CREATE INDEX "ReviewStep_byId_idx" ON "ReviewStep"("byId");

-- What was ruled stays as it was ruled. It may end, once; and its reason may become empty, for good, where its student is
-- erased.
CREATE TRIGGER "Overrule_no_update" BEFORE UPDATE ON "Overrule"
WHEN NEW."id" IS NOT OLD."id" OR NEW."sittingId" IS NOT OLD."sittingId" OR NEW."revision" IS NOT OLD."revision"
  OR NEW."ruling" IS NOT OLD."ruling" OR NEW."referenceVersion" IS NOT OLD."referenceVersion"
  OR NEW."authorId" IS NOT OLD."authorId" OR NEW."madeAt" IS NOT OLD."madeAt"
  OR (OLD."endedAt" IS NOT NULL AND (NEW."endedAt" IS NOT OLD."endedAt" OR NEW."endedById" IS NOT OLD."endedById"))
  OR (NEW."reason" IS NOT OLD."reason" AND (NEW."reason" <> ''
    OR NOT EXISTS (SELECT 1 FROM "Sitting" JOIN "User" ON "User"."id" = "Sitting"."studentId"
      WHERE "Sitting"."id" = OLD."sittingId" AND "User"."erasedAt" IS NOT NULL)))
BEGIN SELECT RAISE(ABORT, 'an overrule is never changed: undo it'); END;
CREATE TRIGGER "Overrule_no_delete" BEFORE DELETE ON "Overrule"
BEGIN SELECT RAISE(ABORT, 'an overrule is never deleted: undo it'); END;

CREATE TRIGGER "ReviewStep_no_update" BEFORE UPDATE ON "ReviewStep"
BEGIN SELECT RAISE(ABORT, 'the steps of a review are append-only'); END;
CREATE TRIGGER "ReviewStep_no_delete" BEFORE DELETE ON "ReviewStep"
BEGIN SELECT RAISE(ABORT, 'the steps of a review are append-only'); END;
