/** Every server action: each is an endpoint of its own that a browser may call with anything. */

import type { ActionCase } from "@/tests/access/action-case";
import { EXERCISE_ACTIONS } from "@/tests/access/actions/exercise";
import { PEOPLE_ACTIONS } from "@/tests/access/actions/people";
import { STONE_ACTIONS } from "@/tests/access/actions/stone";

export const ACTION_CASES: Readonly<Record<string, ActionCase>> = {
  ...PEOPLE_ACTIONS,
  ...EXERCISE_ACTIONS,
  ...STONE_ACTIONS,
};
