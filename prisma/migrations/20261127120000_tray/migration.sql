-- CreateTable
CREATE TABLE "StonePhoto" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "stoneId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "file" TEXT NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "isShown" BOOLEAN NOT NULL DEFAULT false,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "addedById" TEXT NOT NULL,
    "addedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "StonePhoto_stoneId_fkey" FOREIGN KEY ("stoneId") REFERENCES "Stone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StonePhoto_addedById_fkey" FOREIGN KEY ("addedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "HandOut" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "stoneId" TEXT NOT NULL,
    "studentId" TEXT,
    "seat" TEXT NOT NULL DEFAULT '',
    "handedOutAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "handedOutById" TEXT NOT NULL,
    "dueBackAt" DATETIME,
    "returnedAt" DATETIME,
    "returnedById" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "HandOut_stoneId_fkey" FOREIGN KEY ("stoneId") REFERENCES "Stone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "HandOut_studentId_fkey" FOREIGN KEY ("studentId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "HandOut_handedOutById_fkey" FOREIGN KEY ("handedOutById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "HandOut_returnedById_fkey" FOREIGN KEY ("returnedById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StoneCheck" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trayId" TEXT NOT NULL,
    "stoneId" TEXT,
    "byId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "evidence" JSONB NOT NULL,
    "verdict" JSONB,
    "judgedAt" DATETIME,
    "outcome" TEXT,
    "settledAt" DATETIME,
    "settledById" TEXT,
    CONSTRAINT "StoneCheck_trayId_fkey" FOREIGN KEY ("trayId") REFERENCES "Tray" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StoneCheck_stoneId_fkey" FOREIGN KEY ("stoneId") REFERENCES "Stone" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StoneCheck_byId_fkey" FOREIGN KEY ("byId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StoneCheck_settledById_fkey" FOREIGN KEY ("settledById") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "StonePhoto_file_key" ON "StonePhoto"("file");

-- CreateIndex
CREATE INDEX "StonePhoto_stoneId_position_idx" ON "StonePhoto"("stoneId", "position");

-- CreateIndex
CREATE INDEX "StonePhoto_addedById_idx" ON "StonePhoto"("addedById");

-- CreateIndex
CREATE INDEX "HandOut_stoneId_handedOutAt_idx" ON "HandOut"("stoneId", "handedOutAt");

-- CreateIndex
CREATE INDEX "HandOut_studentId_idx" ON "HandOut"("studentId");

-- CreateIndex
CREATE INDEX "HandOut_handedOutById_idx" ON "HandOut"("handedOutById");

-- CreateIndex
CREATE INDEX "HandOut_returnedById_idx" ON "HandOut"("returnedById");

-- CreateIndex
CREATE INDEX "StoneCheck_trayId_madeAt_idx" ON "StoneCheck"("trayId", "madeAt");

-- CreateIndex
CREATE INDEX "StoneCheck_stoneId_idx" ON "StoneCheck"("stoneId");

-- CreateIndex
CREATE INDEX "StoneCheck_byId_idx" ON "StoneCheck"("byId");

-- CreateIndex
CREATE INDEX "StoneCheck_settledById_idx" ON "StoneCheck"("settledById");

-- CreateIndex
CREATE INDEX "StoneCheck_judgedAt_idx" ON "StoneCheck"("judgedAt");

-- A stone is in one place: it cannot be handed out again before it is back.
CREATE UNIQUE INDEX "HandOut_one_out_key" ON "HandOut"("stoneId") WHERE "returnedAt" IS NULL;
