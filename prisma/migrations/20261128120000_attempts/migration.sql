-- AlterTable: a stone that is in the exercise for those alone who were granted a retake on it.
ALTER TABLE "ExerciseStone" ADD COLUMN "isRetake" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "Retake" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "exerciseStoneId" TEXT NOT NULL,
    "replacesId" TEXT NOT NULL,
    "studentId" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "grantedById" TEXT NOT NULL,
    "grantedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Retake_exerciseStoneId_fkey" FOREIGN KEY ("exerciseStoneId") REFERENCES "ExerciseStone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Retake_replacesId_fkey" FOREIGN KEY ("replacesId") REFERENCES "ExerciseStone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Retake_studentId_fkey" FOREIGN KEY ("studentId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Retake_grantedById_fkey" FOREIGN KEY ("grantedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Retake_exerciseStoneId_studentId_idx" ON "Retake"("exerciseStoneId", "studentId");

-- CreateIndex
CREATE INDEX "Retake_replacesId_studentId_idx" ON "Retake"("replacesId", "studentId");

-- CreateIndex
CREATE INDEX "Retake_studentId_idx" ON "Retake"("studentId");

-- CreateIndex
CREATE INDEX "Retake_grantedById_idx" ON "Retake"("grantedById");
