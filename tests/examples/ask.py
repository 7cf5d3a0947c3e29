"""Keeps one oxyfolio process and asks it several things. Needs Python 3.8 or later and nothing else.

    python3 tests/examples/ask.py target/release/oxyfolio
"""

import json
import subprocess
import sys


class Refused(Exception):
    """A request that could not be used; says what to write instead."""


class Oxyfolio:
    def __init__(self, program="oxyfolio", rules=None):
        command = [program, "answer"] + (["--rules", rules] if rules else [])
        self.process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8"
        )
        self.asked = 0

    def ask(self, what, **fields):
        """Asks one thing. A field is the command's option, with _ for a hyphen inside it."""
        self.asked += 1
        request = {"id": self.asked, "ask": what}
        request.update({name.replace("_", "-"): value for name, value in fields.items()})
        self.process.stdin.write(json.dumps(request) + "\n")
        self.process.stdin.flush()
        line = self.process.stdout.readline()
        if not line:
            raise RuntimeError("oxyfolio ended; it says why on standard error")
        answer = json.loads(line)
        if "errors" in answer:
            raise Refused("; ".join(error["message"] for error in answer["errors"]))
        assert answer["id"] == self.asked
        return answer["answer"]

    def close(self):
        self.process.stdin.close()
        return self.process.wait()


def main():
    oxyfolio = Oxyfolio(*sys.argv[1:])

    book = oxyfolio.ask("book")
    print(f"edition {book['edition']}, book {book['book']['short_digest']}")

    # One process, many questions.
    for flow in ("2 L/min", "6 L/min", "15 L/min"):
        left = oxyfolio.ask("duration", cylinder="D", pressure="1500 psi", flow=flow)
        print(f"D at 1500 psi, {flow}: {left['minutes']} min")

    setup = oxyfolio.ask(
        "setup", device="non-rebreather", flow="8 L/min", group="adult", condition="none"
    )
    for finding in setup["findings"]:
        if finding["level"] in ("stop", "warn"):
            print(f"{finding['level']}: {finding['message']}")
    # What was not given could not be checked: never a pass.
    unknown = sum(finding["level"] == "unknown" for finding in setup["findings"])
    print(f"in order: {setup['ok']}; {unknown} could not be checked")

    plan = {
        "cylinders": [{"size": "E", "pressure": "2000 psi", "count": 2}],
        "legs": [{"name": "road", "time": "30 min", "flow": "15 L/min", "temperature": "5 °C"}],
    }
    answer = oxyfolio.ask("plan", plan=plan)
    print("enough" if answer["ok"] else f"short of {answer['short_minutes']} min")

    # A mistake is told, and the process answers on.
    try:
        oxyfolio.ask("duration", cylinder="D", pressure="1500", flow="2 L/min")
    except Refused as refused:
        print(f"refused: {refused}")

    for line in book["disclaimers"] + book["cautions"]:
        print(line)
    return oxyfolio.close()


if __name__ == "__main__":
    sys.exit(main())
