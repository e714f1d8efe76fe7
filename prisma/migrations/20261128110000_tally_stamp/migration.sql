-- AlterTable
ALTER TABLE "TallySum" ADD COLUMN "stamp" TEXT NOT NULL DEFAULT '';

-- Sums that are there are told from those that will take their place.
UPDATE "TallySum" SET "stamp" = lower(hex(randomblob(16))) WHERE "kind" = 'exercise';
