-- CreateTable
CREATE TABLE "Allowance" (
    "exerciseId" TEXT NOT NULL,
    "studentId" TEXT NOT NULL,
    "extraMinutes" INTEGER NOT NULL DEFAULT 0,
    "dueAt" DATETIME,
    "closesAt" DATETIME,
    "extraAttempts" INTEGER NOT NULL DEFAULT 0,
    "reason" TEXT NOT NULL DEFAULT '',
    "grantedById" TEXT NOT NULL,
    "grantedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,

    PRIMARY KEY ("exerciseId", "studentId"),
    CONSTRAINT "Allowance_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Allowance_studentId_fkey" FOREIGN KEY ("studentId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Allowance_grantedById_fkey" FOREIGN KEY ("grantedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- AlterTable: columns are added, so the tables keep their triggers.
ALTER TABLE "Sitting" ADD COLUMN "endsAt" DATETIME;
ALTER TABLE "Sitting" ADD COLUMN "limitMs" INTEGER;
ALTER TABLE "HandIn" ADD COLUMN "timedOut" BOOLEAN NOT NULL DEFAULT false;

-- CreateIndex
CREATE INDEX "Allowance_studentId_idx" ON "Allowance"("studentId");

-- CreateIndex
CREATE INDEX "Allowance_grantedById_idx" ON "Allowance"("grantedById");

-- CreateIndex
CREATE INDEX "Sitting_endsAt_idx" ON "Sitting"("endsAt");
