// The desk in a real browser: Debian's Chromium, driven by playwright-core; accessibility judged by axe-core.
//
// OXYFOLIO names the program, SCREENS the folder for pictures of every page.

import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";

import { chromium } from "playwright-core";

const require = createRequire(import.meta.url);
const axe = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");
const root = fileURLToPath(new URL("../../..", import.meta.url));
const program = process.env.OXYFOLIO;
const screens = process.env.SCREENS;
assert.ok(program && screens, "tests/desk/browser/run sets OXYFOLIO and SCREENS");

// Debug builds are slow, and so are busy machines: a wait ends as soon as what it waits for is there.
const WAIT = 20_000;

let browser;
let desk;
let address;
let rules;
let outside;
let old;
let reworded;

const open = async (folder, more = []) => {
  const started = spawn(program, ["desk", "--rules", folder, ...more], { stdio: ["ignore", "pipe", "inherit"] });
  const printed = await new Promise((resolve, reject) => {
    let text = "";
    started.stdout.on("data", (bytes) => {
      text += bytes;
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(text);
      if (found) resolve(found[0]);
    });
    started.on("exit", () => reject(new Error(`the desk ended: ${text}`)));
  });
  return { started, printed };
};

const visit = async (options, work) => {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  context.setDefaultTimeout(WAIT);
  const page = await context.newPage();
  const said = [];
  page.on("console", (message) => {
    if (message.type() === "error") said.push(message.text());
  });
  page.on("pageerror", (error) => said.push(String(error)));
  page.on("request", (request) => {
    if (!request.url().startsWith(address)) outside.push(request.url());
  });
  try {
    await work(page);
  } finally {
    await context.close();
  }
  assert.deepEqual(said, [], "nothing is refused by the policy, and no script fails");
};

const violations = async (page) => {
  await page.evaluate(axe);
  const result = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  return result.violations.map((one) => ({
    id: one.id,
    nodes: one.nodes.map((node) => `${node.html.slice(0, 160)} ${node.failureSummary}`),
  }));
};

const edit = async (name, change) => {
  const path = join(rules, name);
  const text = await readFile(path, "utf8");
  const changed = change(text);
  assert.notEqual(changed, text, "the edit changes something");
  await writeFile(path, changed);
  return async () => {
    await writeFile(path, text);
    await sound();
  };
};

// The book as it was: the next test must not see the errors of this one.
const sound = async () => {
  const since = Date.now();
  while (!(await (await fetch(address)).text()).includes("No errors.")) {
    assert.ok(Date.now() - since < WAIT, "the book has no errors again");
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
};

before(async () => {
  outside = [];
  await mkdir(screens, { recursive: true });
  rules = join(await mkdtemp(join(tmpdir(), "desk-browser-")), "rules");
  await cp(join(root, "rules"), rules, { recursive: true });
  // The last edition: another limit, another step.
  old = join(rules, "../old");
  await cp(rules, old, { recursive: true });
  const chapter = join(old, "05-delivery-devices.md");
  const text = await readFile(chapter, "utf8");
  const fig = text.replace("flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60", "flow: 9 to 15 L/min\nusual: 15 L/min\noxygen: 60");
  assert.notEqual(fig, text);
  await writeFile(chapter, fig);
  // Another, whose words are others and which has no errors.
  reworded = join(rules, "../reworded");
  await cp(rules, reworded, { recursive: true });
  const steps = join(reworded, "04-fitting-the-regulator.md");
  const words = await readFile(steps, "utf8");
  await writeFile(steps, words.replace("Put on clean gloves, free of oil and grease.", "Put on gloves that are clean."));
  ({ started: desk, printed: address } = await open(rules));
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    // Test machines often run everything as root in a container, where the sandbox can't be set up.
    args: ["--no-sandbox", "--disable-gpu"],
  });
});

after(async () => {
  await browser?.close();
  desk?.kill("SIGINT");
  await rm(join(rules, ".."), { recursive: true, force: true });
});

const PAGES = [
  ["contents", "/"],
  ["chapter", "/chapter/05-delivery-devices.md"],
  ["procedure", "/chapter/04-fitting-the-regulator.md"],
  ["cases", "/chapter/14-figures-twice.md"],
  ["problems", "/problems"],
  ["search", "/search?q=reservoir+bag"],
  ["orders", "/orders"],
  ["order", "/order/make-ready"],
  ["try", "/try"],
  [
    "tried",
    "/try?device=non-rebreather&flow=8&group=adult&condition=none&spo2=91&cylinder=d&pressure=1500&minutes=40",
  ],
  ["mistakes", "/try?device=non-rebreather&flow=many&group=adult&condition=none&condition=retains-co2&pressure=1+bar+2"],
  ["cards", "/cards"],
  ["document", "/cards/cards-id-1-letter"],
  ["since", "/since"],
  ["compared", "/since?with=OLD"],
  ["beside", "/cards/cards-id-1-letter?with=REWORDED"],
  ["nothing", "/nothing"],
];

const LOOKS = [
  ["wide-light", { viewport: { width: 1440, height: 900 }, colorScheme: "light" }],
  ["wide-dark", { viewport: { width: 1440, height: 900 }, colorScheme: "dark" }],
  ["phone-light", { viewport: { width: 375, height: 740 }, colorScheme: "light" }],
  ["phone-dark", { viewport: { width: 375, height: 740 }, colorScheme: "dark" }],
];

const look = async (page, name, address) => {
  await page.goto(address);
  await page.waitForLoadState("load");
  await page.screenshot({ path: join(screens, `${name}.png`), fullPage: true });
  assert.deepEqual(await violations(page), [], name);
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(sideways <= 0, `${name} scrolls sideways by ${sideways} px`);
};

describe("every page", () => {
  for (const [where, options] of LOOKS) {
    test(`has no accessibility violation: ${where}`, async () => {
      await visit(options, async (page) => {
        for (const [name, path] of PAGES) {
          // A page that isn't there answers so, which the browser tells as an error.
          if (name === "nothing") continue;
          await look(page, `${name}-${where}`, address + path.replace("OLD", encodeURIComponent(old)).replace("REWORDED", encodeURIComponent(reworded)));
        }
      });
    });
    test(`nor has it one while the book has errors: ${where}`, async () => {
      const back = [
        await edit("05-delivery-devices.md", (text) => text.replace("flow: 10 to 15 L/min", "flow: 15 to 10 L/min")),
      ];
      try {
        await visit(options, async (page) => {
          await page.goto(`${address}/`);
          await page.getByText("can't be used until").waitFor();
          for (const [name, path] of [
            ["contents", "/"],
            ["chapter", "/chapter/05-delivery-devices.md"],
            ["problems", "/problems"],
            ["try", "/try"],
            ["cards", "/cards"],
            ["order", "/order/make-ready"],
          ]) {
            await look(page, `${name}-errors-${where}`, address + path);
          }
        });
      } finally {
        for (const undo of back) await undo();
      }
    });
    test(`nor where an order is walked that isn't safe: ${where}`, async () => {
      const undo = await edit("09-stopping-and-shutting-down.md", (text) =>
        text.replace(/(- id: bleed\n(?: {4}.*\n)*? {4}after:) .*\n/, "$1 device-off\n"),
      );
      try {
        await visit(options, async (page) => {
          await page.goto(`${address}/order/shut-down`);
          await page.getByText("An order that isn't safe").waitFor();
          await look(page, `walk-${where}`, `${address}/order/shut-down?walk=1&at=1`);
          await page.locator("#on").click();
          await page.locator(".walked .now").waitFor();
          assert.match(page.url(), /at=2/);
          assert.equal(await page.locator(".walked .now").count(), 1);
          assert.ok((await page.locator(".diagram .done").count()) >= 1, "steps done are marked in the diagram");
        });
      } finally {
        await undo();
      }
    });
  }
});

// Another desk than that of the demo, while some work is done.
const atAnother = async (folder, more, work) => {
  const { started, printed } = await open(folder, more);
  const demo = address;
  address = printed;
  try {
    await work();
  } finally {
    address = demo;
    started.kill("SIGINT");
  }
};

describe("a fresh book", () => {
  for (const [where, options] of LOOKS) {
    test(`is told by what is to be decided, and has no accessibility violation: ${where}`, async () => {
      const fresh = join(rules, `../fresh-${where}`);
      execFileSync(program, ["new", fresh, "--agency", "Upper Vale", "--pressure", "bar", "--temperature", "celsius"]);
      await atAnother(fresh, [], async () => {
        await visit(options, async (page) => {
          for (const [name, path] of [
            ["contents", "/"],
            ["problems", "/problems"],
            ["procedure", "/chapter/06-procedures.md"],
            ["targets", "/chapter/03-targets.md"],
            ["order", "/order/apply-cannula"],
            ["cards", "/cards"],
          ]) {
            await look(page, `${name}-fresh-${where}`, address + path);
          }
          await page.goto(`${address}/chapter/06-procedures.md`);
          await page.getByText("[not filled in yet: nasal-cannula.usual-flow]").first().waitFor();
          assert.match(await page.locator("#state").textContent(), /^56 values to decide: /);
          const devices = join(fresh, "02-devices.md");
          const text = await readFile(devices, "utf8");
          await writeFile(devices, text.replace(/usual: "undecided \(the flow you usually set on the cannula[^"]*"/, "usual: 3 L/min"));
          await page.getByText("Set the flow: usually 3 L/min").waitFor();
          assert.match(await page.locator("#state").textContent(), /^55 values to decide: /);
        });
      });
    });
  }
});

describe("the director", () => {
  test("finds the way with the keyboard alone", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/`);
      await page.keyboard.press("Tab");
      assert.equal(await page.evaluate(() => document.activeElement.textContent), "Skip to the content");
      await page.keyboard.press("Enter");
      assert.equal(await page.evaluate(() => document.activeElement.id), "content");
      await page.getByRole("link", { name: "Delivery devices" }).press("Enter");
      await page.getByRole("heading", { name: "Delivery devices", level: 1 }).waitFor();
      const source = page.locator("#rule-device-simple-mask").locator("xpath=..").locator("summary");
      await source.press("Enter");
      assert.ok(await page.getByText("usual: 8 L/min").first().isVisible(), "the source opens");
    });
  });

  test("searches, and comes to the place", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/`);
      await page.getByLabel("Search the book").fill("comfort cannula");
      await page.getByRole("button", { name: "Search" }).click();
      await page.locator(".found a").first().click();
      await page.waitForURL(/\/chapter\/05-delivery-devices.md#part-/);
      assert.ok(await page.locator(":target").isVisible());
    });
  });

  test("edits a file, sees the problem appear in the margin and go, and loses neither place nor focus", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/chapter/05-delivery-devices.md`);
      await page.waitForFunction(() => document.documentElement.dataset.reading);
      const summary = page.locator("#rule-device-simple-mask").locator("xpath=..").locator("summary");
      await summary.click();
      await page.getByLabel("Search the book").focus();
      await page.locator("#rule-device-simple-mask").evaluate((rule) => window.scrollTo(0, rule.offsetTop - 80));
      const place = () => page.locator("#rule-device-simple-mask").evaluate((rule) => rule.getBoundingClientRect().top);
      const was = await place();
      const undo = await edit("05-delivery-devices.md", (text) =>
        text.replace("flow: 1 to 6 L/min", "flow: 6 to 1 L/min"),
      );
      await page.getByText("expected a range from low to high, found 6 before 1").first().waitFor();
      await page.getByText("write 1 to 6 L/min").first().waitFor();
      assert.match(await page.locator("#state").textContent(), /1 error/);
      assert.equal(await page.evaluate(() => document.activeElement.id), "search-box", "the focus stays");
      assert.ok(await page.getByText("usual: 8 L/min").first().isVisible(), "what was open stays open");
      assert.ok(Math.abs((await place()) - was) < 60, "the text stays where it was on the screen");
      await page.screenshot({ path: join(screens, "margin.png") });
      await undo();
      await page.getByText("expected a range from low to high").first().waitFor({ state: "detached" });
      await page.getByText("No errors.").waitFor();
    });
  });

  test("saves as editors do, with a new file that takes the old one's name", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/problems`);
      const path = join(rules, "05-delivery-devices.md");
      const text = await readFile(path, "utf8");
      const save = async (changed) => {
        await writeFile(`${path}.new`, changed);
        await rename(`${path}.new`, path);
      };
      await save(text.replace("usual: 8 L/min", "usual: 8 L/mim"));
      await page.locator(".problem.error").first().waitFor();
      await save(text);
      await page.getByText("Nothing is wrong").waitFor();
    });
  });

  test("tries a set-up, and the address holds it", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/try`);
      await page.getByLabel("Device").selectOption("non-rebreather");
      await page.getByLabel("Flow").fill("8 L/min");
      await page.getByLabel("Group").selectOption("adult");
      await page.getByLabel("None of these").check();
      await page.getByLabel("Cylinder", { exact: true }).selectOption("D");
      await page.getByLabel("Gauge reading").fill("1500 psi");
      await page.getByRole("button", { name: "Check this set-up" }).click();
      const words = "8 L/min is too low for the non-rebreather mask: the book says 10 to 15 L/min";
      await page.getByText(words).waitFor();
      await page.getByText("The gas lasts 25 min").first().waitFor();
      const again = page.url();
      await page.goto("about:blank");
      await page.goto(again);
      await page.getByText(words).waitFor();
      await page.locator(".finding a").first().click();
      await page.waitForURL(/#rule-device-non-rebreather/);
    });
  });

  test("tries a set-up without script", async () => {
    await visit({ javaScriptEnabled: false }, async (page) => {
      await page.goto(`${address}/try`);
      await page.getByLabel("Device").selectOption("nasal-cannula");
      await page.getByLabel("Flow").fill("8");
      await page.getByRole("button", { name: "Check this set-up" }).click();
      await page.getByText("8 L/min is too high for the nasal cannula").waitFor();
    });
  });

  test("opens the cards as they will print", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/cards`);
      await page.locator(".documents a").first().click();
      await page.locator(".sheets img").first().waitFor();
      const drawn = await page.locator(".sheets img").first().evaluate((image) => image.decode().then(() => image.naturalWidth));
      assert.ok(drawn > 100, "the page is drawn");
      const print = await page.getByRole("link", { name: "Print: get the PDF" }).getAttribute("href");
      const pdf = await fetch(address + print);
      assert.equal(pdf.headers.get("content-type"), "application/pdf");
      assert.equal(Buffer.from(await pdf.arrayBuffer()).subarray(0, 5).toString(), "%PDF-");
    });
  });

  test("sees what changed since the last edition, and tries the example", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/since`);
      await page.getByLabel("The edition to compare with").fill(old);
      await page.getByRole("button", { name: "Compare" }).click();
      await page.getByText("least flow: 9 L/min → 10 L/min (stricter)").first().waitFor();
      await page.getByRole("link", { name: "Try it" }).first().click();
      await page.waitForURL(/\/try\?device=/);
      await page.locator(".finding").first().waitFor();
    });
  });

  test("sees what a saved edit changes since the last commit", async () => {
    const repository = join(rules, "../repository");
    await cp(rules, repository, { recursive: true });
    const git = (...words) => execFileSync("git", ["-C", repository, "-c", "user.name=nobody", "-c", "user.email=nobody@invalid", ...words]);
    git("init", "--quiet");
    git("add", "--all");
    git("commit", "--quiet", "-m", "The first edition");
    await atAnother(repository, ["--since", "git:HEAD"], async () => {
      await visit({}, async (page) => {
        await page.goto(`${address}/since`);
        await page.getByText("Nothing changed in what the rulebook says.").waitFor();
        const chapter = join(repository, "10-how-long-it-lasts.md");
        const text = await readFile(chapter, "utf8");
        await writeFile(chapter, text.replace("value: 50 %\n", "value: 75 %\n"));
        await page.getByText("value: 50 % → 75 % (stricter)").waitFor();
        await page.getByText("The reason above it was not changed").waitFor();
        await page.getByText("Revisions of this folder").click();
        await page.getByText("The first edition").waitFor();
        await page.screenshot({ path: join(screens, "since-git.png"), fullPage: true });
        assert.deepEqual(await violations(page), []);
      });
    });
  });

  test("sees the cards beside those of the last edition", async () => {
    await visit({}, async (page) => {
      await page.goto(`${address}/cards/cards-id-1-letter?with=${encodeURIComponent(reworded)}`);
      const pairs = page.locator(".beside-old");
      assert.ok((await pairs.count()) > 1);
      const images = pairs.first().locator("img");
      assert.equal(await images.count(), 2);
      const drawn = await images.evaluateAll((all) => Promise.all(all.map((one) => one.decode().then(() => one.naturalWidth))));
      assert.ok(drawn.every((width) => width > 100), `both are drawn: ${drawn}`);
      const [then, now] = await images.evaluateAll((all) => all.map((one) => one.getAttribute("src")));
      assert.notEqual(then, now);
    });
  });

  test("asks nothing of any other address", () => {
    assert.deepEqual(outside.filter((url) => url !== "about:blank"), []);
  });
});
