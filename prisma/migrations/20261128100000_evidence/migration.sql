-- CreateTable
CREATE TABLE "EvidenceDismissal" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "stoneId" TEXT NOT NULL,
    "view" TEXT NOT NULL,
    "x" REAL NOT NULL,
    "y" REAL NOT NULL,
    "students" INTEGER NOT NULL,
    "dismissedById" TEXT NOT NULL,
    "dismissedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "EvidenceDismissal_stoneId_fkey" FOREIGN KEY ("stoneId") REFERENCES "Stone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "EvidenceDismissal_dismissedById_fkey" FOREIGN KEY ("dismissedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SecondReading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "stoneId" TEXT NOT NULL,
    "readerId" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'drawing',
    "revision" INTEGER NOT NULL DEFAULT 1,
    "plot" JSONB NOT NULL,
    "againstVersion" INTEGER,
    "figures" JSONB,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "handedInAt" DATETIME,
    "settledVersion" INTEGER,
    "settledById" TEXT,
    "settledAt" DATETIME,
    CONSTRAINT "SecondReading_stoneId_fkey" FOREIGN KEY ("stoneId") REFERENCES "Stone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SecondReading_readerId_fkey" FOREIGN KEY ("readerId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SecondReading_settledById_fkey" FOREIGN KEY ("settledById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "EvidenceDismissal_stoneId_idx" ON "EvidenceDismissal"("stoneId");

-- CreateIndex
CREATE INDEX "EvidenceDismissal_dismissedById_idx" ON "EvidenceDismissal"("dismissedById");

-- CreateIndex
CREATE INDEX "SecondReading_stoneId_idx" ON "SecondReading"("stoneId");

-- CreateIndex
CREATE INDEX "SecondReading_readerId_idx" ON "SecondReading"("readerId");

-- CreateIndex
CREATE INDEX "SecondReading_settledById_idx" ON "SecondReading"("settledById");

-- A dismissal stands as it was made; a reading is frozen once it is handed in, but for what settling adds.
CREATE TRIGGER "EvidenceDismissal_no_update" BEFORE UPDATE ON "EvidenceDismissal"
BEGIN SELECT RAISE(ABORT, 'a dismissal is never changed: make a new one'); END;
CREATE TRIGGER "EvidenceDismissal_no_delete" BEFORE DELETE ON "EvidenceDismissal"
BEGIN SELECT RAISE(ABORT, 'a dismissal is never deleted'); END;

CREATE TRIGGER "SecondReading_frozen" BEFORE UPDATE OF "plot", "readerId", "stoneId", "handedInAt" ON "SecondReading"
WHEN OLD."state" <> 'drawing'
BEGIN SELECT RAISE(ABORT, 'a second reading is frozen once it is handed in'); END;
CREATE TRIGGER "SecondReading_no_delete" BEFORE DELETE ON "SecondReading"
BEGIN SELECT RAISE(ABORT, 'a second reading is never deleted'); END;
