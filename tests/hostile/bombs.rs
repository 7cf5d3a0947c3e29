//! Text that makes careless readers slow, recursive or hungry.

use crate::{block, codes};

/// Enough that work growing with the square of the length would not end in time.
const SIZE: usize = 300_000;

fn many(piece: &str) -> String {
    piece.repeat(SIZE / piece.len() + 1)
}

/// Each is read to its end in time; what a lone chapter lacks is all that is reported, or `code` as well.
fn all(bombs: Vec<(&str, String, Option<&str>)>) {
    for (what, text, code) in bombs {
        let found = codes(what, text);
        match code {
            Some(code) => assert!(found.contains(&code), "{what}: {found:?}"),
            None => assert_eq!(found, ["missing-kind", "missing-policy"], "{what}"),
        }
    }
}

#[test]
fn markdown_inside_a_line() {
    let ticks = (1..700).map(|count| "`".repeat(count) + "a").collect::<String>();
    all(vec![
        ("emphasis", many("*a **a "), None),
        ("emphasis inside words", many("a**b"), None),
        ("underscores", many("_a __"), None),
        ("brackets", many("["), None),
        ("links that stop short", many("[a]("), None),
        ("images that stop short", many("![[]()"), None),
        ("backticks", format!("a{}", many("`")), None),
        ("backticks of every length", format!("a{ticks}"), None),
        ("angle brackets", many("<"), None),
        ("comments", many("<!--"), None),
        ("character data", many("<![CDATA["), None),
        ("attributes", many("<a b="), None),
        ("entities", many("&#1234567"), None),
        ("backslashes", many("\\"), None),
        ("one word", many("w"), None),
    ]);
}

#[test]
fn markdown_in_lines() {
    let numbered = (0..SIZE / 12).map(|number| format!("[{number}]: /a\n")).collect();
    let stairs: String = (0..49).map(|step| " ".repeat(2 * step) + "- a\n").collect();
    let wide = SIZE / 8;
    all(vec![
        ("references", numbered, None),
        ("uses of a reference", format!("[a]: /b\n\n{}", many("[a]")), None),
        (
            "a long reference used often",
            format!("[a]: /{}\n\n{}", many("b"), many("[a] ")),
            None,
        ),
        (
            "a wide table",
            format!("{}|\n{}|\n{}", "|a".repeat(wide), "|-".repeat(wide), many("|\n")),
            None,
        ),
        ("lists", many("* a\n+ b\n"), None),
        ("nested lists and empty lines", stairs + &many("\n"), None),
        (
            "a quotation going on",
            format!("{}a\n{}", ">".repeat(30), many("a\n")),
            None,
        ),
        ("headings", many("# a\n"), None),
        ("rules", many("---\n"), None),
        ("a rule drawn with stars", "* ".repeat(500), None),
        ("empty lines", many("\r\n"), None),
        ("fences", many("```text\na\n```\n"), None),
        (
            "fences never closed",
            many("```yaml device\n"),
            Some("unclosed-fence"),
        ),
        (
            "rules of no kind",
            many("```yaml devise\n```\n"),
            Some("unknown-kind"),
        ),
        (
            "rules without keys",
            many("```yaml device\n```\n"),
            Some("empty-block"),
        ),
    ]);
}

#[test]
fn markdown_nested_10_000_deep() {
    all(vec![
        ("quotations", ">".repeat(10_000) + "a", Some("nested-too-deep")),
        (
            "quotations with spaces",
            "> ".repeat(10_000) + "a",
            Some("nested-too-deep"),
        ),
        ("lists", "- ".repeat(10_000) + "a", Some("nested-too-deep")),
        (
            "numbered lists",
            "1. ".repeat(10_000) + "a",
            Some("nested-too-deep"),
        ),
        (
            "lists and quotations",
            "* > ".repeat(10_000),
            Some("nested-too-deep"),
        ),
        (
            "lists, a line for each",
            (0..10_000).map(|depth| " ".repeat(2 * depth) + "- a\n").collect(),
            Some("nested-too-deep"),
        ),
        ("emphasis", "*a _b ".repeat(10_000), None),
        (
            "emphasis, closed",
            format!("{}a{}", "*a _".repeat(10_000), "_ b*".repeat(10_000)),
            None,
        ),
        (
            "links",
            format!("{}a{}", "[".repeat(10_000), "](b)".repeat(10_000)),
            None,
        ),
    ]);
}

#[test]
fn yaml() {
    let device = |yaml: &str| block("device", yaml);
    let keys: String = (0..SIZE / 10).map(|number| format!("a{number}: b\n")).collect();
    let deep: String = (0..10_000)
        .map(|depth| " ".repeat(depth.min(300)) + "a:\n")
        .collect();
    all(vec![
        (
            "lists in lists",
            device(&"[".repeat(10_000)),
            Some("unreadable-yaml"),
        ),
        (
            "lists in lists, closed",
            device(&format!("{}{}", "[".repeat(200), "]".repeat(200))),
            Some("nested-too-deep"),
        ),
        (
            "mappings in mappings",
            device(&"{a: ".repeat(10_000)),
            Some("unreadable-yaml"),
        ),
        (
            "dashes in dashes",
            device(&"- ".repeat(10_000)),
            Some("nested-too-deep"),
        ),
        ("indents in indents", device(&deep), Some("nested-too-deep")),
        ("keys of keys", device(&many("? ")), Some("nested-too-deep")),
        (
            "aliases that multiply",
            device("a: &a [x, x, x, x, x, x, x, x, x]\nb: &b [*a, *a, *a, *a]\nc: [*b, *b, *b, *b]"),
            Some("yaml-shorthand"),
        ),
        (
            "an alias of itself",
            device("a: &a [*a, *a]"),
            Some("yaml-shorthand"),
        ),
        ("anchors", device(&many("&a ")), Some("yaml-shorthand")),
        ("tags", device(&many("! ")), Some("yaml-shorthand")),
        ("documents", device(&many("---\n")), Some("two-documents")),
        ("directives", device(&many("%a b\n")), Some("unreadable-yaml")),
        ("keys", device(&keys), Some("block-too-long")),
        ("the same key", device(&many("a: b\n")), Some("duplicate-key")),
        (
            "a list",
            device(&format!("a: [{}]", many("a, "))),
            Some("block-too-long"),
        ),
        (
            "a long value",
            device(&format!("id: {}", many("a"))),
            Some("value-too-long"),
        ),
        (
            "a long key",
            device(&format!("{}: b", many("a"))),
            Some("unreadable-yaml"),
        ),
        (
            "lines folded into one",
            device(&format!("id: >\n{}", many("  a\n\n"))),
            Some("value-too-long"),
        ),
        (
            "escapes",
            device(&format!("id: \"{}\"", many("\\x41"))),
            Some("value-too-long"),
        ),
        ("quotation marks", device(&many("'")), Some("unreadable-yaml")),
        (
            "spaces",
            device(&format!("a: {}b", many(" "))),
            Some("unknown-key"),
        ),
        ("comments", device(&many("# a\n")), Some("empty-block")),
    ]);
}

#[test]
fn rules() {
    let ids = |line: fn(usize) -> String| (0..SIZE / 60).map(line).collect();
    let listed = |piece: &str| block("group", &piece.repeat(3_000));
    all(vec![
        (
            "200 000 rules",
            "```yaml group\n```\n".repeat(200_000),
            Some("empty-block"),
        ),
        (
            "200 000 rules in a list",
            block("group", &"- id: a\n".repeat(200_000)),
            Some("block-too-long"),
        ),
        ("the same id", listed("- id: a\n"), Some("duplicate-id")),
        (
            "names that nobody defined",
            ids(|number| format!("```yaml cylinder\nid: a{number}\nconnection: bbbbb{number}\n```\n")),
            Some("unknown-name"),
        ),
        (
            "braces",
            block(
                "policy",
                &format!("id: a\nname: a\nvalue: 5 min\nnote: \"{}\"", "{a}".repeat(3_000)),
            ),
            Some("missing-kind"),
        ),
    ]);
}

#[test]
fn guards() {
    // All policies and devices are there, so that the guard is read.
    let guard = |never: &str| {
        let hazard = format!("id: x\nname: X\nnever: \"{never}\"\nseverity: stop\nsay: No.\ndo: \"Don't.\"");
        let demo: String = oxyfolio::CHAPTERS.iter().map(|(_, text)| *text).collect();
        codes("guard", demo + &block("hazard", &hazard))
    };
    for (what, never, code) in [
        ("brackets", "(".repeat(10_000), "nested-too-deep"),
        (
            "brackets, closed",
            format!("{}flame near{}", "(".repeat(4_900), ")".repeat(4_900)),
            "nested-too-deep",
        ),
        ("not", "not ".repeat(2_400) + "flame near", "nested-too-deep"),
        (
            "10 000 times not",
            "not ".repeat(10_000) + "flame near",
            "value-too-long",
        ),
        ("or", "flame near or ".repeat(700), "unfinished-guard"),
        ("words", "aaaa ".repeat(1_900), "unknown-observation"),
        ("one word", "a".repeat(9_000), "unknown-observation"),
        (
            "digits",
            format!("flow = {} L/min", "1".repeat(9_000)),
            "out-of-bounds",
        ),
    ] {
        let found = guard(&never);
        assert!(found.contains(&code), "{what}: {found:?}");
    }
}
