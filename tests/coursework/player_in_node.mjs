// Runs the player of the packages without a page: sheets with tries in, how they stand out.
import { readFileSync } from "node:fs";
import { seat } from "../../build_scripts/scorm/player/deck.mjs";
import { followed } from "../../build_scripts/scorm/player/grading.mjs";
import { read, written } from "../../build_scripts/scorm/player/memory.mjs";
import { helpAfter, replayed, score, sheet, tried } from "../../build_scripts/scorm/player/sheet.mjs";

const does = {
  seats: ({ learners }) => learners.map(([section, learner]) => seat(section, learner)),
  replays: ({ sheets }) => sheets.map(({ number, tries }) => {
    const dealt = sheet(book.set, number);
    const standings = replayed(dealt, [], book);
    const verdicts = tries.map((each) => {
      const verdict = tried(standings, each, book);
      const { misses, question } = standings.get(`${each[0]} ${each[1]}`);
      return { ...verdict, misses, help: helpAfter(misses, question) };
    });
    const texts = dealt.problems.map((each) => each.text);
    return { verdicts, texts, code: dealt.code, score: score(replayed(dealt, tries, book)) };
  }),
  follows: ({ factor }) => book.set.problems.filter((each) => each.questions).map((problem) => {
    const at = book.set.problems.indexOf(problem);
    return problem.rows.map((_, row) => {
      const dealt = sheet(book.set, row + 1).problems[at];
      return dealt.questions.map((question, place) => {
        if (!question.follows?.length) return null;
        const before = dealt.questions.slice(0, place);
        const own = Object.fromEntries(before.map((each) => [each.name, each.right * factor]));
        return followed(dealt, question, own, book);
      });
    });
  }),
  remembers: ({ number, tries, floor }) => {
    const { full, text } = written(sheet(book.set, number), book.set.revision, tries, 0.5, floor);
    return { full, text, back: read(text, book.set.revision, (of) => sheet(book.set, of)) };
  },
};

const asked = JSON.parse(readFileSync(0, "utf8"));
(0, eval)(asked.book ?? "globalThis.coursework = null");
const book = globalThis.coursework;
console.log(JSON.stringify(does[asked.does](asked)));
