// Keeps one oxyfolio process and asks it several things at once. Needs Node 18 or later and no package.
//
//     node tests/examples/ask.mjs target/release/oxyfolio

import { spawn } from "node:child_process";
import { createInterface } from "node:readline";

class Oxyfolio {
  #process;
  #waiting = new Map();
  #asked = 0;

  constructor(program = "oxyfolio", rules) {
    const options = rules ? ["answer", "--rules", rules] : ["answer"];
    this.#process = spawn(program, options, { stdio: ["pipe", "pipe", "inherit"] });
    this.ended = new Promise((resolve, reject) => {
      this.#process.on("error", reject);
      this.#process.on("close", (code) => {
        const why = new Error("oxyfolio ended; it says why on standard error");
        for (const { reject } of this.#waiting.values()) reject(why);
        resolve(code);
      });
    });
    createInterface({ input: this.#process.stdout }).on("line", (line) => {
      const answer = JSON.parse(line);
      const { resolve, reject } = this.#waiting.get(answer.id);
      this.#waiting.delete(answer.id);
      if (answer.errors) {
        reject(new Error(answer.errors.map((error) => error.message).join("; ")));
      } else {
        resolve(answer.answer);
      }
    });
  }

  // Asks one thing. A field is the command's option, without its hyphens in front.
  ask(what, fields = {}) {
    const id = ++this.#asked;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.#process.stdin.write(JSON.stringify({ id, ask: what, ...fields }) + "\n");
    });
  }

  close() {
    this.#process.stdin.end();
    return this.ended;
  }
}

const oxyfolio = new Oxyfolio(...process.argv.slice(2));

const book = await oxyfolio.ask("book");
console.log(`edition ${book.edition}, book ${book.book.short_digest}`);

// Several questions before the first answer: each is found again by its id.
const flows = ["2 L/min", "6 L/min", "15 L/min"];
const lasting = await Promise.all(
  flows.map((flow) => oxyfolio.ask("duration", { "water-capacity": "2.2 L", pressure: "120 bar", flow })),
);
lasting.forEach((left, index) => console.log(`2.2 L at 120 bar, ${flows[index]}: ${left.minutes} min`));

const setup = await oxyfolio.ask("setup", {
  device: "nasal-cannula",
  flow: "8 L/min",
  group: "adult",
  condition: ["none"],
});
for (const { level, message } of setup.findings) {
  if (level === "stop" || level === "warn") console.log(`${level}: ${message}`);
}
// What was not given could not be checked: never a pass.
const unknown = setup.findings.filter(({ level }) => level === "unknown").length;
console.log(`in order: ${setup.ok}; ${unknown} could not be checked`);

const list = "serial,size,pressure_bar,tested,marks,location\nDEMO-1,D,40,2024-03,,Shelf (invented)\n";
const stock = await oxyfolio.ask("stock", { list, today: "2026-11-25" });
for (const swap of stock.swap) console.log(`swap ${swap.serial}: ${swap.reasons.join(", ")}`);

// A mistake is told, and the process answers on.
await oxyfolio
  .ask("duration", { cylinder: "D", pressure: "120 bar", flwo: "2 L/min" })
  .catch((refused) => console.log(`refused: ${refused.message}`));

for (const line of [...book.disclaimers, ...book.cautions]) console.log(line);
process.exitCode = await oxyfolio.close();
