import { describe, expect, it } from "vitest";
import { readWordSaid } from "../../src/cli/wordSaid";

describe("--word", () => {
  it.each([
    ["Status: BER = out of service", { field: "status", word: "BER", means: "out of service" }],
    ["method:jumbo=Partial Pressure", { field: "method", word: "jumbo", means: "partial pressure" }],
    ["Oxygen rating: A = B = oxygen clean", { field: "oxygenService", word: "A = B", means: "oxygen clean" }],
    ["status: owner's own = nothing", { field: "status", word: "owner's own", means: "nothing" }],
  ])("%s", (text, said) => expect(readWordSaid(text)).toEqual(said));

  it.each([
    ["BER = fine", /write a field, a word/],
    ["Status: = fine", /write a field, a word/],
    ["Status: BER", /write a field, a word/],
    ["Serial: BER = fine", /no field whose words can be told/],
    ["Status: BER = great", /"great" is nothing that a word under Status can mean: out of service/],
  ])("%s is refused", (text, message) => expect(() => readWordSaid(text)).toThrow(message));
});
