-- AlterTable: a column is added, so the table keeps its triggers.
ALTER TABLE "Exercise" ADD COLUMN "debriefsAt" DATETIME;

-- CreateIndex
CREATE INDEX "Exercise_debriefsAt_idx" ON "Exercise"("debriefsAt");
