import { plain } from "../log/cells/cell";
import type { OwnWord } from "../log/context";
import { meaningsFor, VOCABULARY_OF, type FieldOfWords } from "../log/vocabularies/logWords";
import { NOTHING } from "../log/vocabularies/vocabulary";
import { fieldWord } from "../words/fields";
import { CommandProblem } from "./problem";

const EXAMPLE = '--word "Status: BER = out of service"';
const FIELDS = Object.keys(VOCABULARY_OF) as FieldOfWords[];

/** `Status: BER = out of service`: what `--word` says of a word under a field. Throws CommandProblem. */
export function readWordSaid(text: string): OwnWord {
  const [colon, equals] = [text.indexOf(":"), text.lastIndexOf("=")];
  const name = text.slice(0, colon).trim();
  const word = text.slice(colon + 1, equals).trim();
  const means = plain(text.slice(equals + 1));
  if (colon < 0 || equals < colon || word === "" || means === "")
    throw new CommandProblem(`"${text}": write a field, a word and what it means, such as ${EXAMPLE}.`);
  const field = FIELDS.find((each) => [each, fieldWord(each)].some((known) => plain(known) === plain(name)));
  if (field === undefined)
    throw new CommandProblem(
      `"${name}" is no field whose words can be told. They are: ${FIELDS.map(fieldWord).join(", ")}.`,
    );
  const choices = [...meaningsFor(field), NOTHING];
  if (!choices.includes(means))
    throw new CommandProblem(
      `"${means}" is nothing that a word under ${fieldWord(field)} can mean: ${choices.join(", ")}.`,
    );
  return { field, word, means };
}
