-- DropTable: nothing was ever written to it.
DROP TABLE "Setting";

-- CreateTable: one row at most.
CREATE TABLE "ProgramSettings" (
    "id" TEXT NOT NULL PRIMARY KEY CHECK ("id" = 'program'),
    "body" JSONB NOT NULL,
    "revision" INTEGER NOT NULL,
    "changedById" TEXT NOT NULL,
    "changedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "ProgramSettings_changedById_fkey" FOREIGN KEY ("changedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "ProgramSettings_changedById_idx" ON "ProgramSettings"("changedById");
