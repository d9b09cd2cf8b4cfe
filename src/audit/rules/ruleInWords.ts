import { RULES } from "./orderOfHarm";

/** `V06 Filled past visual`: a rule by its id and title. */
export function ruleInWords(id: string): string {
  const title = RULES.find((rule) => rule.id === id)?.title;
  return title === undefined ? id : `${id} ${title}`;
}
