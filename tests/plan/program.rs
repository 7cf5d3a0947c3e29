//! `oxyfolio plan` from outside, and its chart.

use std::fs;

use super::common::{json, oxyfolio};
use serde_json::Value;

fn example(name: &str) -> String {
    format!("{}/tests/plans/{name}", env!("CARGO_MANIFEST_DIR"))
}

fn text(arguments: &[&str]) -> (i32, String, String) {
    let output = oxyfolio(&[&["plan"], arguments].concat());
    (
        output.status.code().unwrap(),
        String::from_utf8(output.stdout).unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

#[test]
fn an_enough_plan_exits_0_and_tells_its_course() {
    let (code, said, _) = text(&[&example("transfer.yaml"), "--add", "E"]);
    assert_eq!(code, 0, "{said}");
    for words in [
        "ENOUGH, with the planning margin of 50 %",
        "CHANGE from cylinder 3 (M) to cylinder 1 (E)",
        "Cylinders are changed at 500 psi while another is left; the last, cylinder 2 (E), may be used to 200 psi.",
        "The gauges are taken as read at 20 °C.",
        "Nothing need be added",
        "Read what is stamped on the cylinder.",
        "Larkmere Valley Ambulance Service, edition 1",
    ] {
        assert!(said.contains(words), "{words}\n{said}");
    }
    for line in oxyfolio::book::ALWAYS_DISCLAIMERS
        .iter()
        .chain(&oxyfolio::book::ALWAYS_CAUTIONS)
    {
        assert!(said.contains(line), "{line}\n{said}");
    }
}

#[test]
fn a_plan_that_is_not_enough_exits_1_and_names_the_leg() {
    let (code, said, _) = text(&[&example("short.json"), "--add", "E", "--add", "vehicle"]);
    assert_eq!(code, 1, "{said}");
    assert!(
        said.contains("NOT ENOUGH: with the planning margin of 50 % there lack 36 min"),
        "{said}"
    );
    assert!(
        said.contains("Caution: cylinder 3 (2 L) is below 1000 psi"),
        "{said}"
    );
    assert!(
        said.contains("runs out on leg 2 (ferry & quay), after 47 min"),
        "{said}"
    );
    assert_eq!(said.matches("1 x E full to 2015 psi").count(), 1, "{said}");
    assert!(said.contains("1 x H or K full"), "{said}");
}

#[test]
fn figures_for_programs_are_those_for_people() {
    let (code, answer) = json(&["plan", &example("short.json"), "--add", "D"]);
    assert_eq!((code, &answer["ok"]), (1, &Value::Bool(false)));
    assert_eq!(answer["short_minutes"], 36);
    assert_eq!(answer["breaks"]["leg"], 2);
    assert_eq!(answer["add"][0]["fewest"], 2);
    assert_eq!(answer["change_overs"].as_array().unwrap().len(), 2);
    assert_eq!(answer["cautions"].as_array().unwrap().len(), 3);
}

#[test]
fn the_order_can_be_chosen() {
    let (_, answer) = json(&["plan", &example("transfer.yaml"), "--order", "emptiest-first"]);
    assert_eq!(answer["order"], "emptiest-first");
    let (code, _, said) = text(&[&example("transfer.yaml"), "--order", "any"]);
    assert_eq!(code, 2);
    assert!(said.contains("fewest-changes"), "{said}");
}

#[test]
fn what_cannot_be_read_exits_2_with_places() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bad.yaml");
    fs::write(
        &file,
        "cylinders: {size: Q, pressure: 1}\nlegs: {name: a, time: 1 h}\n",
    )
    .unwrap();
    let (code, out, said) = text(&[file.to_str().unwrap()]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(
        said.contains("bad.yaml:1:19") && said.contains("bad.yaml:2:7"),
        "{said}"
    );
    assert!(said.contains("3 errors in"), "{said}");
    let (code, answer) = json(&["plan", file.to_str().unwrap()]);
    assert_eq!((code, &answer["ok"]), (2, &Value::Bool(false)));
    assert_eq!(answer["diagnostics"][0]["place"]["line"], 1);
    let (code, _, said) = text(&["no-such-plan.yaml"]);
    assert_eq!(code, 2);
    assert!(
        said.starts_with("error: cannot read `no-such-plan.yaml`"),
        "{said}"
    );
    let (code, _, said) = text(&[&example("transfer.yaml"), "--add", "jumbo-c"]);
    assert_eq!(code, 2);
    assert!(said.contains("did you mean `jumbo-d`?"), "{said}");
}

#[test]
fn the_chart_is_xml_and_shows_changes_limits_and_cautions() {
    let folder = tempfile::tempdir().unwrap();
    for (name, changes, is_out) in [("transfer.yaml", 1, false), ("short.json", 2, true)] {
        let file = folder.path().join("chart.svg");
        fs::write(&file, "old").unwrap();
        let (_, answer) = json(&["plan", &example(name), "--chart", file.to_str().unwrap()]);
        let svg = fs::read_to_string(&file).unwrap();
        is_xml(&svg);
        assert_eq!(svg.matches("class=\"change\"").count(), changes, "{svg}");
        for change in answer["change_overs"].as_array().unwrap() {
            let words = format!(
                "{} min: {} to {}",
                change["at_minutes"].as_f64().unwrap().floor(),
                change["from_cylinder"],
                change["to_cylinder"]
            );
            assert!(svg.contains(&words), "{words}");
        }
        assert_eq!(svg.matches("class=\"residual-line\"").count(), 1);
        assert_eq!(svg.contains("GAS RUNS OUT"), is_out);
        assert!(svg.contains("not a medical device"));
        assert!(svg.contains("No flame, no smoking."));
        assert!(!svg.contains("<the long way>"), "text is escaped");
        assert_eq!(
            fs::read_dir(folder.path()).unwrap().count(),
            1,
            "nothing is left beside it"
        );
    }
    let nowhere = folder.path().join("no/chart.svg");
    let (code, out, said) = text(&[&example("transfer.yaml"), "--chart", nowhere.to_str().unwrap()]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(said.contains("cannot write"), "{said}");
}

/// Every element is closed in its turn, every attribute quoted, every `&` an entity.
fn is_xml(text: &str) {
    let mut open: Vec<&str> = Vec::new();
    let mut rest = text;
    while let Some(start) = rest.find('<') {
        no_stray(&rest[..start]);
        let end = start + rest[start..].find('>').expect("an end of the tag");
        let tag = &rest[start + 1..end];
        rest = &rest[end + 1..];
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(name));
            continue;
        }
        assert_eq!(tag.matches('"').count() % 2, 0, "{tag}");
        assert_eq!(tag.matches("=\"").count() * 2, tag.matches('"').count(), "{tag}");
        let attributes = tag.trim_end_matches('/');
        no_stray(attributes);
        if !tag.ends_with('/') {
            open.push(attributes.split_whitespace().next().unwrap());
        }
    }
    assert!(open.is_empty() && rest.trim().is_empty(), "{open:?} {rest}");
}

fn no_stray(text: &str) {
    assert!(!text.contains('>'), "{text}");
    for piece in text.split('&').skip(1) {
        let is_entity = ["amp;", "lt;", "gt;", "quot;"]
            .iter()
            .any(|entity| piece.starts_with(entity));
        assert!(is_entity, "{piece}");
    }
}
