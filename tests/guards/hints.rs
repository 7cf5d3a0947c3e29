//! What an editor reads after a slip in a guard: the code, the underlined words, and what to write instead.

use crate::world::read;

/// The guard with `‹` and `›` round what is underlined, the code, and the advice.
const MISTAKES: &[(&str, &str, &str)] = &[
    // Brackets.
    (
        "flame near or ‹grease near and cylinder open›",
        "mixed-and-or",
        "put brackets round `grease near and cylinder open` or round `flame near or grease near`, whichever is meant",
    ),
    (
        "‹flow = 0 L/min and not cylinder open› or flame near",
        "mixed-and-or",
        "put brackets round `flow = 0 L/min and not cylinder open` or round `not cylinder open or flame near`, whichever is meant",
    ),
    (
        "not (flame near or grease near or ‹cylinder open and wheezes› or washer fitted)",
        "mixed-and-or",
        "put brackets round `cylinder open and wheezes` or round `grease near or cylinder open`, whichever is meant",
    ),
    (
        "‹(flow < device.least-flow or flow > device.most-flow) and device on patient› or flame near",
        "mixed-and-or",
        "write `(a and b) or c` or `a and (b or c)`, whichever is meant",
    ),
    ("not ‹(›flame near", "unclosed-bracket", "close it with `)`"),
    (
        "flame near‹)›",
        "unexpected-word",
        "take out the bracket, or open one before",
    ),
    (
        "(flame near ‹grease›)",
        "unexpected-word",
        "write `and` or `or` before it, or take it out",
    ),
    (
        "flame near or grease near and cylinder open‹)›",
        "unexpected-word",
        "take out the bracket, or open one before",
    ),
    (
        "(‹)›",
        "unknown-observation",
        "write a condition before the bracket closes",
    ),
    // Joining words of other languages.
    ("flame near ‹AND› grease near", "unexpected-word", "write `and`"),
    ("flame near ‹&&› grease near", "unexpected-word", "write `and`"),
    ("flame near ‹||› grease near", "unexpected-word", "write `or`"),
    ("flame near‹,› grease near", "unexpected-word", "write `and`"),
    ("flame near ‹Or› grease near", "unexpected-word", "write `or`"),
    (
        "flame near ‹unless› cylinder laid down",
        "unexpected-word",
        "write `and not`",
    ),
    ("‹NOT› flame near", "unknown-observation", "write `not`"),
    ("‹!›flame near", "unknown-observation", "write `not`"),
    (
        "flame near and ‹or› grease near",
        "unknown-observation",
        "write a condition on both sides of `or`",
    ),
    (
        "flame near an‹d›",
        "unfinished-guard",
        "write a condition after this, or take out what leads to it",
    ),
    // Signs of other languages.
    ("flow ‹==› 0 L/min", "not-a-quantity", "write `=`"),
    ("flow ‹=<› 1 L/min", "not-a-quantity", "write `<=`"),
    ("flow ‹<>› 1 L/min", "not-a-quantity", "write `!=`"),
    ("flow ‹≤› 1 L/min", "missing-comparison", "write `<=`"),
    ("flow ‹≥› 1 L/min", "missing-comparison", "write `>=`"),
    ("flow ‹≠› 1 L/min", "missing-comparison", "write `!=`"),
    ("flow ‹is› 1 L/min", "missing-comparison", "write `=`"),
    ("spo2 ‹is› below 94 %", "missing-comparison", "write `<`"),
    (
        "spo2 ‹is› not 94 %",
        "missing-comparison",
        "write `spo2 != …` or `not spo2 in …`",
    ),
    (
        "spo2 ‹not› in 94 to 98 %",
        "missing-comparison",
        "write `spo2 != …` or `not spo2 in …`",
    ),
    ("spo2 ‹below› 94 %", "missing-comparison", "write `<`"),
    ("spo2 ‹at› least 94 %", "missing-comparison", "write `>=`"),
    ("spo2 ‹between› 94 and 98 %", "missing-comparison", "write `in`"),
    (
        "spo2 ‹94› %",
        "missing-comparison",
        "write `=`, `<`, `<=`, `>`, `>=`, `!=` or `in`",
    ),
    (
        "flo‹w›",
        "unfinished-guard",
        "write a comparison after `flow` after this, or take out what leads to it",
    ),
    (
        "flow ‹<›",
        "unfinished-guard",
        "write a quantity or a name after this, or take out what leads to it",
    ),
    (
        "flow i‹n›",
        "unfinished-guard",
        "write a range after this, or take out what leads to it",
    ),
    (
        "flame near ‹=› yes",
        "unexpected-word",
        "an observation stands alone when it is so, and after `not` when it isn't",
    ),
    (
        "flame near ‹is› not so",
        "unexpected-word",
        "an observation stands alone when it is so, and after `not` when it isn't",
    ),
    // Comparisons the wrong way round, and two in one.
    (
        "‹0 L/min = flow›",
        "value-before-measure",
        "write `flow = 0 L/min`",
    ),
    (
        "‹88 % < spo2 < 92 %›",
        "value-before-measure",
        "write `spo2 > 88 % and spo2 < 92 %`",
    ),
    (
        "‹room.low <= temperature <= room.high›",
        "value-before-measure",
        "write `temperature >= room.low and temperature <= room.high`",
    ),
    (
        "flame near and ‹target.high < spo2›",
        "value-before-measure",
        "write `spo2 > target.high`",
    ),
    (
        "spo2 > 88 % ‹<› 92 %",
        "unexpected-word",
        "compare twice, joined by `and`, and name what is measured each time; or write `in LOW to HIGH`",
    ),
    // Names.
    (
        "‹device is not cannula›",
        "unknown-name",
        "write `not device is cannula`",
    ),
    ("‹group is not› old", "unknown-name", "write `not group is ID`"),
    ("device is ‹canula›", "unknown-name", "did you mean `cannula`?"),
    (
        "device is ‹tent›",
        "unknown-name",
        "the book defines `cannula`, `mask`, `bag` and `blow-by`",
    ),
    (
        "device i‹s›",
        "unfinished-guard",
        "write the id of a device after this, or take out what leads to it",
    ),
    (
        "flow < ‹cannula.least-flow›",
        "unknown-name",
        "a guard speaks of the device in use: write `device is cannula and flow … device.least-flow`",
    ),
    (
        "spo2 in ‹target›",
        "unknown-name",
        "write `spo2 < target.low` or `spo2 > target.high`",
    ),
    ("pressure < ‹reserv›", "unknown-name", "did you mean `reserve`?"),
    (
        "‹device on pateint› and flame near",
        "unknown-observation",
        "did you mean `device on patient`?",
    ),
    ("‹SpO2› < 94 %", "unknown-observation", "did you mean `spo2`?"),
    // Kinds of quantity.
    (
        "pressure < ‹2 L/min›",
        "wrong-unit",
        "write a pressure in psi or bar",
    ),
    (
        "pressure < ‹wait›",
        "wrong-unit",
        "write a pressure in psi or bar",
    ),
    (
        "pressure < ‹target.low›",
        "wrong-unit",
        "write a pressure in psi or bar",
    ),
    (
        "pressure < ‹minutes left›",
        "wrong-unit",
        "write a pressure in psi or bar",
    ),
    ("spo2 < ‹device.most-flow›", "wrong-unit", "write a share in %"),
    ("flow > ‹room.high›", "wrong-unit", "write a flow in L/min"),
    ("flow in ‹room›", "wrong-unit", "write a flow in L/min"),
    ("flow in ‹1 to 2 bar›", "wrong-unit", "write a flow in L/min"),
    (
        "flow in ‹comfort›",
        "not-a-range",
        "write `flow in LOW to HIGH UNIT`",
    ),
    (
        "flow > ‹strong›",
        "not-one-quantity",
        "write `flow in strong`, or `strong.low` or `strong.high`",
    ),
    ("flow > ‹comfort.low›", "not-a-range", "write `comfort`"),
    (
        "flow > ‹strong.high›",
        "no-such-end",
        "write `strong.low`, the end it has, or give `strong` its high end",
    ),
    (
        "flow > ‹1 to 2 L/min›",
        "not-one-quantity",
        "write `flow in LOW to HIGH`",
    ),
    (
        "spo2 < ‹120 %›",
        "out-of-bounds",
        "check the number: no oximeter shows more than 100 %",
    ),
    (
        "flow < ‹flow›",
        "compares-itself",
        "compare with a quantity, a policy or another measure",
    ),
];

#[test]
fn every_slip_is_underlined_and_answered() {
    for (marked, code, hint) in MISTAKES {
        let text = marked.replace(['‹', '›'], "");
        let mistake = read(&text).expect_err(marked);
        assert_eq!(mistake.code, *code, "{marked}: {mistake}");
        let (start, end) = (mistake.at.start, mistake.at.end);
        let underlined = format!("{}‹{}›{}", &text[..start], &text[start..end], &text[end..]);
        assert_eq!(underlined, *marked, "{mistake}");
        assert_eq!(mistake.hint.as_deref().unwrap_or(""), *hint, "{marked}");
        let begins = mistake.message.chars().next().unwrap();
        assert!(
            !begins.is_uppercase() && !mistake.message.ends_with('.'),
            "{mistake}"
        );
    }
}

#[test]
fn guards_that_need_no_brackets_are_read() {
    for text in [
        "flame near and grease near and cylinder open",
        "flame near or grease near or cylinder open",
        "not flame near and not grease near",
        "not flame near or grease near",
        "(flame near or grease near) and cylinder open",
        "not not flame near",
    ] {
        assert!(read(text).is_ok(), "{text}");
    }
}

#[test]
fn a_guard_too_deep_for_the_stack_is_refused() {
    let mut fits = "flame near".to_owned();
    for _ in 0..oxyfolio::book::MAX_GUARD_DEPTH - 1 {
        fits = format!("not {fits}");
    }
    assert!(read(&fits).is_ok());
    assert_eq!(read(&format!("not {fits}")).unwrap_err().code, "nested-too-deep");
    let deep = "(".repeat(100_000);
    assert_eq!(read(&deep).unwrap_err().code, "nested-too-deep");
    let wide = "flame near and ".repeat(10_000) + "grease near";
    assert_eq!(read(&wide).unwrap().ops.len(), 20_001);
}
