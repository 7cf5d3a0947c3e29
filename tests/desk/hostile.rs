//! Hostile chapters and hostile addresses.

use std::fs;

use proptest::{prelude::*, test_runner::Config};

use super::{
    common,
    support::{Desk, as_written, bytes_of, open},
};

const HOSTILE: &str = r#"# <script>alert(1)</script> a "title" & 'more'

<script>alert(2)</script>

<img src=x onerror=alert(3)>

Inline <b onclick="alert(4)">html</b> and [a link](javascript:alert(5)) and [another](https://example.com/x)
and [data](data:text/html,<script>alert(6)</script>) and ![a picture](https://example.com/p.png "t")
and <https://example.com/auto> and [a chapter](02-handling-cylinders-safely.md).

> quoted <iframe src="//example.com"></iframe>

| a <i>b</i> | c |
| --- | :-: |
| `<u>` | <u>d</u> |

Turned round: RIGHTevilLEFT and hidden:NOTHINGhere.

```yaml hazard
id: "x\" onmouseover=\"alert(7)"
name: "</table><script>alert(8)</script>"
never: flow = 0 L/min
severity: stop
say: "<svg onload=alert(9)>"
do: "&lt; stays as written"
```

```text
</code></pre><script>alert(10)</script>
```
"#;

/// What in a page could run or load: everything between `<` and `>` that our own pages don't have.
fn tags(page: &str) -> Vec<String> {
    page.split('<')
        .skip(1)
        .map(|rest| rest.split('>').next().unwrap().to_owned())
        .collect()
}

#[test]
fn hostile_chapters_are_shown_as_text() {
    let folder = common::copy_of_rules();
    let hostile = HOSTILE
        .replace("RIGHT", "\u{202E}")
        .replace("LEFT", "\u{202C}")
        .replace("NOTHING", "\u{200B}");
    fs::write(folder.path().join("99-hostile.md"), hostile).unwrap();
    let desk = open(folder.path());
    for path in ["/", "/chapter/99-hostile.md", "/problems", "/search?q=alert"] {
        let page = desk.page(path);
        for tag in tags(&page) {
            let name: String = tag.chars().take_while(|c| c.is_ascii_alphanumeric()).collect();
            assert!(
                !["iframe", "img", "b", "i", "u", "object", "embed", "svg"].contains(&&*name),
                "{path}: <{tag}>"
            );
            assert!(
                name != "script" || tag == "script src=\"/desk.js\" defer",
                "{path}: <{tag}>"
            );
            // Quoted values can't hold a quotation mark, so what stands outside them are names of attributes of ours.
            let unquoted: String = tag.split('"').step_by(2).collect();
            let mut names = unquoted.split_whitespace().skip(1);
            assert!(names.all(|name| !name.starts_with("on")), "{path}: <{tag}>");
            for link in ["href=\"", "src=\"", "action=\""] {
                if let Some((_, value)) = tag.split_once(link) {
                    assert!(
                        value.starts_with('/') || value.starts_with('#'),
                        "{path}: <{tag}>"
                    );
                    assert!(!value.starts_with("//"), "{path}: <{tag}>");
                }
            }
        }
        assert!(!page.contains('\u{202E}') && !page.contains('\u{200B}'), "{path}");
    }
    let page = desk.page("/chapter/99-hostile.md");
    assert!(page.contains("&lt;script&gt;alert(2)&lt;/script&gt;"));
    assert!(
        page.contains("(javascript:alert(5))"),
        "where a link would lead is told"
    );
    assert!(page.contains("<a href=\"/chapter/02-handling-cylinders-safely.md\">a chapter</a>"));
    assert!(page.contains("\\u{202e}"));
}

#[test]
fn a_book_with_errors_is_shown_whole() {
    let folder = common::copy_of_rules();
    let desk = open(folder.path());
    for (name, text) in [
        ("50-a.md", "# A\n\n```yaml device\nid: [\n```\n\nprose after\n"),
        ("51-b.md", "# B\n\n```yaml devise\nid: x\n```\n\nprose after\n"),
        (
            "52-c.md",
            "no heading\n\n```yaml procedure\n- steps: 3\n- id: p\n  steps: [1, {id: a, after: a}, {id: b, after: [c]}]\n```\n\nprose after\n",
        ),
        ("53-d.md", "# D\n\nprose after\n\n```yaml device\nid: unclosed\n"),
        ("54-e.md", ""),
    ] {
        fs::write(folder.path().join(name), text).unwrap();
        if text.contains("prose") {
            desk.wait_for(&format!("/chapter/{name}"), |page| page.contains("prose after"));
        } else {
            desk.wait_for(&format!("/chapter/{name}"), |page| page.contains("<h1>54-e</h1>"));
        }
    }
    let page = desk.page("/problems");
    assert!(as_written(&page).contains("did you mean `device`?"), "{page}");
    assert!(page.contains("has errors"));
    let page = desk.page("/order/p");
    assert!(page.contains("Not proved:"));
}

#[test]
fn nothing_is_ever_written_into_the_rulebook() {
    let folder = common::copy_of_rules();
    let before = bytes_of(folder.path());
    let desk = open(folder.path());
    for path in [
        "/",
        "/chapter/05-delivery-devices.md",
        "/chapter/..%2f..%2fetc%2fpasswd",
        "/problems",
        "/search?q=bag",
        "/order/make-ready?walk=1&at=1",
        "/try?device=non-rebreather&flow=8",
        "/print/..%2f..%2fx.pdf",
    ] {
        desk.get(path);
    }
    drop(desk);
    assert_eq!(bytes_of(folder.path()), before);
}

#[test]
fn no_path_leads_out_of_the_folder() {
    let folder = common::copy_of_rules();
    fs::write(folder.path().join("notes.txt"), "secret words").unwrap();
    let desk = open(folder.path());
    for path in [
        "/chapter/notes.txt",
        "/chapter/..%2fnotes.txt",
        "/chapter/%2e%2e%2fCargo.toml",
        "/chapter//etc/passwd",
        "/print/%2fetc%2fpasswd",
        "/chapter/%00",
        "/chapter/%ff",
    ] {
        let answer = desk.get(path);
        assert!(
            answer.status == 404 || answer.status == 400,
            "{path}: {}",
            answer.status
        );
        assert!(!answer.text().contains("secret words"));
    }
}

fn is_answered(desk: &Desk, path: &str) -> Result<(), TestCaseError> {
    let answer = desk.get(path);
    prop_assert!(
        [200, 400, 404, 414, 431].contains(&answer.status),
        "{}: {}",
        path,
        answer.status
    );
    Ok(())
}

#[test]
fn no_address_makes_a_page_fail() {
    let desk = open(&common::rules());
    let words = prop_oneof![
        Just("none".to_owned()),
        Just("adult".to_owned()),
        Just("non-rebreather".to_owned()),
        Just("D".to_owned()),
        Just("1e308".to_owned()),
        Just("-0".to_owned()),
        Just("99999999999999999999 L/min".to_owned()),
        Just("NaN".to_owned()),
        "[0-9.]{1,8} ?(L/min|psi|bar|%|°C|min)?",
        "\\PC{0,40}",
    ];
    let names = proptest::sample::select(vec![
        "device",
        "flow",
        "group",
        "condition",
        "since-birth",
        "spo2",
        "cylinder",
        "pressure",
        "temperature",
        "minutes",
        "q",
        "walk",
        "at",
        "x",
    ]);
    let pages = proptest::sample::select(vec!["/try", "/search", "/order/make-ready", "/order/none"]);
    let asked = (pages, proptest::collection::vec((names, words), 0..12));
    let mut runner = proptest::test_runner::TestRunner::new(Config {
        cases: 192,
        failure_persistence: None,
        ..Config::default()
    });
    runner
        .run(&asked, |(page, pairs)| {
            let mut query = form_urlencoded::Serializer::new(String::new());
            query.extend_pairs(pairs);
            is_answered(&desk, &format!("{page}?{}", query.finish()))
        })
        .unwrap();
    runner
        .run(&"[!-~]{0,60}", |path| is_answered(&desk, &format!("/{path}")))
        .unwrap();
}
