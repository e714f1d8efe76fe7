/** Actions of the trail whose name alone would not read well. */
const WORDS: Readonly<Record<string, string>> = {
  "create-person": "added a person",
  "activate-person": "reactivated an account",
  "deactivate-person": "deactivated an account",
  "reset-password": "gave a new password",
  "change-password": "changed their own password",
  "create-first-director": "made the first account",
  "create-section": "made a section",
  "enrol-student": "enrolled a student",
  "create-tray": "made a tray",
  "update-tray": "changed a tray’s name or notes",
  "import-exercise-set": "brought a tray in from a file",
  "create-stone": "added a stone",
  "update-stone": "changed a stone",
  "save-reference": "saved a reference",
  "add-photo": "added a photograph",
  "update-photo": "changed a photograph’s caption",
  "show-photo": "showed a photograph to students",
  "hide-photo": "hid a photograph from students",
  "order-photos": "put photographs in order",
  "delete-photo": "deleted a photograph",
  "hand-out-stone": "handed a stone out",
  "take-back-stone": "took a stone back",
  "check-stone": "checked which stone it was",
  "settle-stone-check": "settled a hand-in check",
  "create-exercise": "set an exercise",
  "update-exercise": "changed an exercise",
  "save-rubric": "saved a rubric",
  "rescore-exercise": "rescored an exercise",
  "open-sitting": "opened a sitting",
  "hand-in": "handed in",
  "grant-extra-time": "gave extra time",
  "follow-clock": "moved time limits with the clock",
  "release-debrief": "released a debrief",
  "withdraw-release": "took a release back",
  "sign-in": "signed in",
};

/** An action of the trail in words; one without words of its own is read as it is written. */
export function toActionWords(action: string): string {
  return WORDS[action] ?? action.replaceAll("-", " ");
}
