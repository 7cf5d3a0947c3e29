//! The published schemas are what the types make, and hold for what is read and written.

use std::{fs, path::Path};

use oxyfolio::records::run::schema;
use serde_json::Value;

use super::support::{findings, run};

fn validator(text: &str) -> jsonschema::Validator {
    let schema: Value = serde_json::from_str(text).unwrap();
    assert!(jsonschema::draft202012::meta::is_valid(&schema));
    jsonschema::draft202012::options().build(&schema).unwrap()
}

/// `OXYFOLIO_SCHEMAS=write` writes them anew.
#[test]
fn the_published_schemas_are_up_to_date() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/records/run");
    for (name, made) in [
        ("run", schema::made::<schema::Run>()),
        ("finding", schema::made::<schema::Finding>()),
    ] {
        let path = folder.join(format!("{name}.schema.json"));
        if std::env::var_os("OXYFOLIO_SCHEMAS").is_some_and(|said| said == "write") {
            fs::write(&path, &made).unwrap();
        }
        assert_eq!(fs::read_to_string(&path).unwrap(), made, "{}", path.display());
    }
}

#[test]
fn runs_without_mistakes_are_what_the_schema_says() {
    let validator = validator(schema::RUN);
    let clean = fs::read_to_string("tests/runs/clean.ndjson").unwrap();
    let mut read = 0;
    for line in clean
        .lines()
        .map(str::to_owned)
        .chain((0..50).map(|number| run(number, number)))
    {
        let value: Value = serde_json::from_str(&line).unwrap();
        let wrong: Vec<String> = validator
            .iter_errors(&value)
            .map(|error| error.to_string())
            .collect();
        assert!(wrong.is_empty(), "{wrong:#?}\n{line}");
        read += 1;
    }
    assert!(read > 50);
    for text in [r#"{"run": 17}"#, r#"{"run": "A", "events": null}"#] {
        assert!(validator.is_valid(&serde_json::from_str(text).unwrap()), "{text}");
    }
}

#[test]
fn mistakes_of_form_are_no_runs_for_the_schema() {
    let validator = validator(schema::RUN);
    for text in [
        "{}",
        r#"{"run": null}"#,
        r#"{"run": "A", "events": {}}"#,
        r#"{"run": "A", "conditions": "none"}"#,
        r#"{"run": "A", "temperature_c": 200}"#,
        r#"{"run": "A", "events": [{"pressure": 1500}]}"#,
        r#"{"run": "A", "events": [{"flow_lpm": "15"}]}"#,
        r#"{"run": "A", "events": [{"flow_lpm": 400}]}"#,
        r#"{"run": "A", "events": [{"at": "2026-03-01T14:05:00"}]}"#,
        r#"{"run": "A", "events": [7]}"#,
        r#"{"run": "A", "patient": "x"}"#,
        "[]",
    ] {
        assert!(
            !validator.is_valid(&serde_json::from_str(text).unwrap()),
            "{text}"
        );
        let (tally, _) = findings("a.ndjson", text);
        assert!(tally.levels.all() > 0, "{text}: the reader finds nothing");
    }
}

#[test]
fn every_finding_is_what_the_schema_says() {
    let validator = validator(schema::FINDING);
    let mut seen = 0;
    for name in [
        "clean.ndjson",
        "april.ndjson",
        "sparse.ndjson",
        "faults.ndjson",
        "faults.csv",
    ] {
        let bytes = fs::read(Path::new("tests/runs").join(name)).unwrap();
        for found in findings(name, bytes).1 {
            let wrong: Vec<String> = validator
                .iter_errors(&found)
                .map(|error| error.to_string())
                .collect();
            assert!(wrong.is_empty(), "{wrong:#?}\n{found:#}");
            seen += 1;
        }
    }
    assert!(seen > 10);
}
