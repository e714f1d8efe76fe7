-- AlterTable: a column is added, so the table keeps its triggers.
ALTER TABLE "ExerciseStone" ADD COLUMN "opensAt" DATETIME;
