-- CreateTable
CREATE TABLE "Rescore" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "exerciseId" TEXT NOT NULL,
    "rubricVersionId" TEXT NOT NULL,
    "ground" JSONB NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'working',
    "total" INTEGER NOT NULL,
    "done" INTEGER NOT NULL DEFAULT 0,
    "failed" INTEGER NOT NULL DEFAULT 0,
    "summary" JSONB,
    "startedById" TEXT NOT NULL,
    "startedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "endedById" TEXT,
    "endedAt" DATETIME,
    CONSTRAINT "Rescore_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Rescore_rubricVersionId_fkey" FOREIGN KEY ("rubricVersionId") REFERENCES "RubricVersion" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Rescore_startedById_fkey" FOREIGN KEY ("startedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Rescore_endedById_fkey" FOREIGN KEY ("endedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- AlterTable: a column is added, so the table and what stands on it are kept as they are.
ALTER TABLE "Result" ADD COLUMN "rescoreId" TEXT CONSTRAINT "Result_rescoreId_fkey" REFERENCES "Rescore" ("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- CreateIndex
CREATE UNIQUE INDEX "Result_rescoreId_handInId_key" ON "Result"("rescoreId", "handInId");

-- CreateIndex
CREATE INDEX "Rescore_exerciseId_idx" ON "Rescore"("exerciseId");

-- CreateIndex
CREATE INDEX "Rescore_rubricVersionId_idx" ON "Rescore"("rubricVersionId");

-- CreateIndex
CREATE INDEX "Rescore_startedById_idx" ON "Rescore"("startedById");

-- CreateIndex
CREATE INDEX "Rescore_endedById_idx" ON "Rescore"("endedById");

-- At most one rescore of an exercise that is under way or waits to be applied.
CREATE UNIQUE INDEX "Rescore_one_open_key" ON "Rescore"("exerciseId") WHERE "state" IN ('working', 'ready');
