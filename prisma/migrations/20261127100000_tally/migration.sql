-- CreateTable
CREATE TABLE "ResultTally" (
    "resultId" TEXT NOT NULL PRIMARY KEY,
    "sittingId" TEXT NOT NULL,
    "exerciseId" TEXT NOT NULL,
    "exerciseStoneId" TEXT NOT NULL,
    "studentId" TEXT NOT NULL,
    "attempt" INTEGER NOT NULL,
    "handedInAt" DATETIME NOT NULL,
    "totalHundredths" INTEGER NOT NULL,
    "clarityGap" INTEGER,
    "counts" JSONB NOT NULL,
    "outcome" JSONB NOT NULL,
    CONSTRAINT "ResultTally_resultId_fkey" FOREIGN KEY ("resultId") REFERENCES "Result" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ResultTally_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ResultTally_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ResultTally_exerciseStoneId_fkey" FOREIGN KEY ("exerciseStoneId") REFERENCES "ExerciseStone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ResultTally_studentId_fkey" FOREIGN KEY ("studentId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TallySum" (
    "exerciseId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "counts" JSONB NOT NULL,

    PRIMARY KEY ("exerciseId", "kind", "key"),
    CONSTRAINT "TallySum_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "ResultTally_sittingId_key" ON "ResultTally"("sittingId");

-- CreateIndex
CREATE INDEX "ResultTally_exerciseId_idx" ON "ResultTally"("exerciseId");

-- CreateIndex
CREATE INDEX "ResultTally_exerciseStoneId_idx" ON "ResultTally"("exerciseStoneId");

-- CreateIndex
CREATE INDEX "ResultTally_studentId_idx" ON "ResultTally"("studentId");

-- CreateIndex
CREATE INDEX "TallySum_kind_key_idx" ON "TallySum"("kind", "key");
