-- CreateTable
CREATE TABLE "BenchNote" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sittingId" TEXT NOT NULL,
    "authorId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "sentAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "seenAt" DATETIME,
    CONSTRAINT "BenchNote_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "BenchNote_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "BenchNote_sittingId_sentAt_idx" ON "BenchNote"("sittingId", "sentAt");

-- CreateIndex
CREATE INDEX "BenchNote_authorId_idx" ON "BenchNote"("authorId");

-- What was sent stays as it was sent; only that it was seen is added, once.
CREATE TRIGGER "BenchNote_no_update" BEFORE UPDATE ON "BenchNote"
WHEN OLD."seenAt" IS NOT NULL OR NEW."seenAt" IS NULL OR NEW."id" IS NOT OLD."id" OR NEW."sittingId" IS NOT OLD."sittingId"
  OR NEW."authorId" IS NOT OLD."authorId" OR NEW."text" IS NOT OLD."text" OR NEW."sentAt" IS NOT OLD."sentAt"
BEGIN SELECT RAISE(ABORT, 'a note that was sent is never changed'); END;
CREATE TRIGGER "BenchNote_no_delete" BEFORE DELETE ON "BenchNote"
BEGIN SELECT RAISE(ABORT, 'a note that was sent is never deleted'); END;
