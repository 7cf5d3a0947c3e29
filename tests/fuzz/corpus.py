#!/usr/bin/env python3
"""The corpora of the fuzz targets: tests/fuzz/corpus/TARGET.txt holds an input a line, so that a change can be read.

    corpus.py unpack TARGET FOLDER   writes a target's corpus, and seeds from the demonstration and the tests, a file each
    corpus.py pack TARGET FOLDER     writes a folder's files as the target's corpus
    corpus.py words                  prints the words of the demonstration as a dictionary for the engine

In a line, a line feed is \\n, a carriage return \\r, a tab \\t, a backslash \\\\, and every other byte outside printable ASCII \\xNN.
"""

import gzip
import hashlib
import json
import pathlib
import re
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent
CHAPTERS = sorted((ROOT / "rules").glob("*.md"))
KINDS = "agency group device cylinder connection policy target procedure hazard card case".split()
SIGNS = {ord("\n"): "\\n", ord("\r"): "\\r", ord("\t"): "\\t", ord("\\"): "\\\\"}


def escape(data):
    plain = lambda byte: chr(byte) if 32 <= byte < 127 else f"\\x{byte:02x}"
    line = "".join(SIGNS.get(byte) or plain(byte) for byte in data)
    # Spaces at the ends would be lost in an editor.
    return re.sub(r"^ | $", r"\\x20", line)


def unescape(line):
    known = {text[1]: bytes([byte]) for byte, text in SIGNS.items()}
    read = lambda found: bytes.fromhex(found[1][1:]) if found[1][0] == "x" else known[found[1]]
    return b"".join(
        read(part) if (part := re.fullmatch(r"\\(x[0-9a-f]{2}|[nrt\\])", piece)) else piece.encode()
        for piece in re.findall(r"\\x[0-9a-f]{2}|\\.|[^\\]+", line)
    )


def text_of(*paths):
    return [(ROOT / path).read_text(encoding="utf-8") for path in paths]


def blocks():
    """The rule blocks of the demonstration, with their kinds."""
    for chapter in CHAPTERS:
        for kind, body in re.findall(r"^```yaml ([a-z]+)\n(.*?)^```", chapter.read_text(encoding="utf-8"), re.M | re.S):
            yield kind, body


def values(key="[a-z-]+"):
    """What stands behind keys in the demonstration."""
    for _, body in blocks():
        for value in re.findall(rf"^[- ]*{key}: (.+)$", body, re.M):
            yield value.strip('"')


def chapters_alone(prefix):
    for chapter in CHAPTERS:
        for section in re.split(r"(?m)^(?=## )", chapter.read_text(encoding="utf-8")):
            yield prefix + section.encode()
    for chapter in sorted((ROOT / "src/compile/skeleton").glob("*.md")):
        yield prefix + chapter.read_bytes()


def packed(data):
    yield gzip.compress(data, mtime=0)
    for level in ["-1", "-19"]:
        yield subprocess.run(["zstd", "-q", level, "-c"], input=data, stdout=subprocess.PIPE, check=True).stdout
    yield b"\x50\x2a\x4d\x18\x03\0\0\0abc" + gzip.compress(data, mtime=0)


def seeds(target):
    """Inputs from the demonstration, the tests' own files and README."""
    if target == "quantities":
        yield from (value.encode() for value in values())
        yield from (f"{number} {unit}".encode() for number in ["0", "15", "-5", "1.5", "1e3", "1/2", "10 to 20", "at least 3", "under 2"]
                    for unit in ["L/min", "psi", "bar", "kPa", "MPa", "L", "L/psi", "L/bar", "°C", "°F", "%", "s", "min", "h", "days", "months", "years", "to 1"])
    elif target == "guards":
        yield from (value.encode() for value in values("(?:never|always|when|if|unless|until)"))
        yield b"device on patient and (flow = 0 L/min or not cylinder open)"
    elif target == "yaml":
        for kind, body in blocks():
            yield bytes([KINDS.index(kind)]) + body.encode()
        # A few beside the demonstration, which takes a hundred times as long to read.
        for kind, body in {kind: body for kind, body in blocks()}.items():
            yield bytes([242 + KINDS.index(kind)]) + re.sub(r"(?m)^(- )?id: .*", r"\g<0>-again", body).encode()
    elif target in ("reader", "shown"):
        yield from chapters_alone(b"1" if target == "reader" else b"")
        if target == "reader":
            yield from list(chapters_alone(b"0"))[::12]
        hostile = re.search(r'const HOSTILE: &str = r#"(.*?)"#;', *text_of("tests/desk/hostile.rs"), re.S)
        yield (b"1" if target == "reader" else b"") + hostile[1].encode()
    elif target == "compare":
        for number, chapter in enumerate(CHAPTERS):
            yield bytes([number]) + chapter.read_bytes()
        yield from chapters_alone(b"\xff")
        yield from [b"\xffgit:HEAD", b"\xffgit:", b"\xffrules"]
    elif target == "plan":
        yield from (text.encode() for text in text_of("tests/plans/transfer.yaml", "tests/plans/short.json"))
        found = re.findall(r"(?m)^(//! )?```yaml\n(.*?)```", *text_of("src/compile/transport.rs"), re.S)
        yield from (re.sub(r"(?m)^//! ?", "", body).encode() for _, body in found)
    elif target == "stock":
        for text in text_of("tests/stock/larkmere.csv", "tests/stock/in-order.csv", "tests/stock/mistakes.csv"):
            yield text.encode()
            yield b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode()
    elif target == "review":
        texts = text_of("tests/runs/faults.ndjson", "tests/runs/sparse.ndjson", "tests/runs/faults.csv")
        texts += [line + "\n" for line in text_of("tests/runs/clean.ndjson")[0].splitlines()]
        for text in texts:
            name = b"1" if "run,group" in text else b"0"
            yield name + text.encode()
            yield name + text.replace(",", ";").encode()
            yield from (name + data for data in packed(text.encode()))
    elif target == "answer":
        lines = re.findall(r"\{\"(?:id|ask)\".*?\}(?='|\n|`)", *text_of("README.md"))
        plan, stock = json.loads(text_of("tests/plans/short.json")[0]), text_of("tests/stock/larkmere.csv")[0]
        asked = [
            {"ask": "book"},
            {"ask": "duration", "cylinder": "D", "pressure": "1500 psi", "flow": "15 L/min", "now": "23:50", "leak": "0.5 L/min"},
            {"ask": "duration", "water-capacity": "4.6 L", "factor": "0.28 L/psi", "pressure": "120 bar", "minutes": 20, "temperature": "-5 °C"},
            {"ask": "duration", "cylinder": "E", "minutes": "20 min", "flow": "2 L/min", "residual": "200 psi"},
            {"ask": "setup", "device": "nasal-cannula", "flow": "8 L/min", "group": "adult", "condition": "none", "spo2": "91 %"},
            {"ask": "setup", "device": "non-rebreather", "flow": "8 L/min", "group": "newborn", "since-birth": "3 min", "condition": ["none"],
             "cylinder": "D", "pressure": "500 psi", "temperature": "70 °F", "minutes": 10},
            {"ask": "plan", "plan": plan, "order": "emptiest-first", "add": ["E", "portable"]},
            {"ask": "stock", "list": stock, "today": "2026-03-01", "due-within": "3 months", "temperature": "20 °C"},
            {"id": None, "ask": "chekc", "today": "2026-02-30"},
        ]
        lines += [json.dumps({"id": number, **one}, ensure_ascii=number % 2 == 0) for number, one in enumerate(asked)]
        yield from (line.encode() for line in lines)
        yield "\r\n\n".join(lines[:3]).encode()
        yield b"\xef\xbb\xbf" + lines[0].encode()
    elif target == "code":
        yield from (code.encode() for code in ["ABCD-2345", "abcd 2345", "7K3M-9QWX\nhttps://example.com", "O0I1-LLLL", "ABCD–2345", "ABCD-234"])
        digest = hashlib.sha256(b"").hexdigest()
        yield digest[:8].encode()
    elif target == "desk":
        for address in [
            "", "problems", "orders", "cards", "since", "try", "desk.css", "desk.js", "icon.svg", "events", "nothing", "search?q=bag+mask",
            "order/make-ready", "order/make-ready?case=1", "chapter/05-delivery-devices.md", "chapter/%2e%2e%2fCargo.toml", "print/none.pdf",
            "cards/cards-id-1-letter", "since?with=rules", "since?with=git:HEAD", "search?q=%3Cscript%3E", 'search?q="><img src=x>',
            "try?device=nasal-cannula&flow=8+L%2Fmin&group=adult&condition=none&spo2=91+%25&cylinder=D&pressure=1500+psi&temperature=20+°C&minutes=30",
            "try?device=x&flow=<b>&group=y&since-birth=3&spo2=200+%25",
        ]:
            yield b"1" + address.encode()
        for head in [
            "GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nOrigin: http://localhost:PORT",
            "HEAD /try HTTP/1.1\nHost: localhost:PORT\nSec-Fetch-Site: same-origin",
            "POST / HTTP/1.1\nHost: [::1]:PORT\nContent-Length: 3",
            "GET http://example.com/ HTTP/1.0\nHost: example.com",
            "OPTIONS * HTTP/1.1\nHost: 127.0.0.1:PORT\nTransfer-Encoding: chunked\nExpect: 100-continue",
            "GET / HTTP/1.1\nHost: 127.0.0.1:PORT\nSec-Fetch-Site: cross-site\nSec-Fetch-Mode: navigate\nSec-Fetch-Dest: document",
            "CONNECT example.com:80 HTTP/1.1\nUpgrade: h2c\nConnection: upgrade",
            "PRI * HTTP/2.0",
        ]:
            yield b"0" + head.encode()
    else:
        raise SystemExit(f"error: expected a target, found {target}")


def unpack(target, folder):
    folder.mkdir(parents=True, exist_ok=True)
    kept = HERE / "corpus" / f"{target}.txt"
    lines = kept.read_text(encoding="ascii").splitlines() if kept.exists() else []
    for data in [unescape(line) for line in lines] + list(seeds(target)):
        (folder / hashlib.sha256(data).hexdigest()[:16]).write_bytes(data)


def pack(target, folder):
    lines = sorted({escape(path.read_bytes()) for path in folder.iterdir()} - {""})
    assert all(escape(unescape(line)) == line for line in lines)
    (HERE / "corpus").mkdir(exist_ok=True)
    (HERE / "corpus" / f"{target}.txt").write_text("".join(f"{line}\n" for line in lines), encoding="ascii")
    print(f"{target}: {len(lines)} inputs, {sum(len(line) + 1 for line in lines)} bytes")


def words():
    found = set()
    for text in [chapter.read_text(encoding="utf-8") for chapter in CHAPTERS] + text_of("src/compile/language.md"):
        found.update(re.findall(r"(?<![a-z-])[a-z][a-z-]{2,30}:(?= |$)|(?<=`)[a-zA-Z/ -]{2,30}(?=`)", text, re.M))
    for word in sorted(found):
        print(f'"{word}"')


def main():
    match sys.argv[1:]:
        case ["unpack", target, folder]:
            unpack(target, pathlib.Path(folder))
        case ["pack", target, folder]:
            pack(target, pathlib.Path(folder))
        case ["words"]:
            words()
        case _:
            raise SystemExit(__doc__)


main()
