//! `oxyfolio duration`: both methods, the questions turned round, the clock, and what is refused.

use serde_json::{Value, json};

use super::{code, common, stderr};

/// The JSON answer and the exit code.
fn ask(arguments: &str) -> (i32, Value) {
    // A bar stands between two arguments, which may hold spaces.
    let words: Vec<&str> = arguments.split('|').map(str::trim).collect();
    common::json(&[&["duration"], &words[..]].concat())
}

fn text(arguments: &str) -> String {
    let words: Vec<&str> = arguments.split('|').map(str::trim).collect();
    let output = common::oxyfolio(&[&["duration"], &words[..]].concat());
    String::from_utf8(output.stdout).unwrap()
}

#[test]
fn the_lower_of_both_methods_is_answered_and_named() {
    // A D of 2.2 L between 1000 and 200 psi: 125.8 L of real gas at 21 °C (CoolProp 8.0.0), 128 L by factor.
    let (code, answer) = ask("--cylinder|D|--pressure|1000 psi|--flow|1 L/min");
    assert_eq!(code, 0);
    assert_eq!(answer["minutes"], 125);
    assert_eq!(answer["bound_by"], "density");
    assert_eq!(answer["by_density_minutes"], 125);
    assert_eq!(answer["by_factor_minutes"], 128);
    let litres = |field: &str| answer[field].as_f64().unwrap();
    assert!((litres("usable_litres") - 125.83).abs() < 0.01, "{answer:#}");
    assert!((litres("free_litres") - 158.28).abs() < 0.01, "{answer:#}");
    let said = text("--cylinder|D|--pressure|1000 psi|--flow|1 L/min");
    assert!(
        said.contains("at 21 °C (assumed), 200 psi kept as residual"),
        "{said}"
    );
    assert!(
        said.contains("The lower counts, here the density; rounded down."),
        "{said}"
    );
}

#[test]
fn heat_takes_minutes_away_and_the_gauge_is_said_to_mislead() {
    let hot = "--cylinder|D|--pressure|2000 psi|--flow|0.5 L/min|--temperature|55 °C";
    let (_, answer) = ask(hot);
    assert_eq!(
        (&answer["minutes"], &answer["gauge"]),
        (&json!(497), &json!("reads-high"))
    );
    assert!(text(hot).contains("At 55 °C the cylinder is hot: the gauge reads high"));
    let (_, answer) = ask("--cylinder|D|--pressure|2000 psi|--flow|0.5 L/min|--temperature|-20 °C");
    assert_eq!(
        (&answer["minutes"], &answer["gauge"]),
        (&json!(576), &json!("reads-low"))
    );
    let (_, answer) = ask("--cylinder|D|--pressure|2000 psi|--flow|0.5 L/min|--temperature|70 °F");
    assert_eq!(
        (&answer["gauge"], &answer["gauge_note"]),
        (&json!("fair"), &Value::Null)
    );
    assert_eq!(answer["temperature_assumed"], false);
}

#[test]
fn a_cylinder_is_also_known_by_its_water() {
    let (_, answer) = ask("--water-capacity|4.6 L|--pressure|2000 psi|--flow|10 L/min");
    assert_eq!(
        (&answer["minutes"], &answer["by_factor_minutes"]),
        (&json!(60), &Value::Null)
    );
    assert_eq!(
        (&answer["cylinder"], &answer["bound_by"]),
        (&Value::Null, &json!("density"))
    );
    let (_, answer) = ask("--water-capacity|4.6 L|--factor|0.28 L/psi|--pressure|2000 psi|--flow|10 L/min");
    assert_eq!(
        (&answer["minutes"], &answer["bound_by"]),
        (&json!(50), &json!("factor"))
    );
}

#[test]
fn which_reading_for_the_minutes() {
    let (code, answer) = ask("--cylinder|E|--flow|10 L/min|--minutes|40");
    assert_eq!((code, &answer["possible"]), (0, &json!(true)));
    let needed = answer["pressure_needed_psi"].as_f64().unwrap();
    // Forward again: enough, and one psi less is not.
    for (reading, enough, outcome) in [(needed, true, 0), (needed - 1.0, false, 1)] {
        let (code, answer) = ask(&format!(
            "--cylinder|E|--flow|10 L/min|--minutes|40|--pressure|{reading} psi"
        ));
        assert_eq!(
            (code, &answer["enough"]),
            (outcome, &json!(enough)),
            "{reading} psi"
        );
    }
    // More than the size may be filled to, and more than 300 bar.
    let (code, answer) = ask("--cylinder|D|--flow|15 L/min|--minutes|25");
    assert_eq!((code, &answer["possible"]), (1, &json!(false)));
    assert!(answer["pressure_needed_psi"].as_f64().unwrap() > 2216.5);
    let (code, answer) = ask("--cylinder|D|--flow|15 L/min|--minutes|90");
    assert_eq!((code, &answer["pressure_needed_psi"]), (1, &Value::Null));
    assert!(text("--cylinder|D|--flow|15 L/min|--minutes|90").contains("NOT POSSIBLE"));
}

#[test]
fn which_flow_for_the_minutes() {
    let (code, answer) = ask("--cylinder|D|--pressure|1500 psi|--minutes|40 min");
    assert_eq!((code, &answer["greatest_flow_lpm"]), (0, &json!(5.1)));
    let lasts =
        |flow: &str| ask(&format!("--cylinder|D|--pressure|1500 psi|--flow|{flow}")).1["minutes"].clone();
    assert!(lasts("5.1 L/min").as_u64().unwrap() >= 40);
    assert!(lasts("5.2 L/min").as_u64().unwrap() < 40);
}

#[test]
fn a_leak_is_a_flow_and_the_clock_says_when() {
    let (_, answer) = ask("--cylinder|D|--pressure|1500 psi|--flow|4.5 L/min|--leak|0.5 L/min|--now|23:50");
    // 207.1 L at 5 L/min to 200 psi; 160.8 L to the change at 500 psi (CoolProp 8.0.0, 21 °C).
    assert_eq!(
        (&answer["minutes"], &answer["ends_at"]),
        (&json!(41), &json!("00:31 (1 day later)"))
    );
    assert_eq!(answer["change_over_minutes"], 32);
    assert_eq!(answer["change_over_at"], "00:22 (1 day later)");
    let (_, answer) = ask("--cylinder|D|--pressure|1500 psi|--leak|0.5 L/min");
    assert_eq!(answer["minutes"], 414);
    let (_, answer) = ask("--cylinder|D|--pressure|400 psi|--flow|15 L/min");
    assert_eq!(
        (&answer["change_cylinder_now"], &answer["change_over_minutes"]),
        (&json!(true), &json!(0))
    );
}

#[test]
fn questions_without_an_answer_are_refused_in_a_sentence() {
    for (arguments, words) in [
        ("--cylinder|D", "give --pressure and --flow"),
        ("--cylinder|D|--pressure|900 psi", "give --pressure and --flow"),
        ("--pressure|900 psi|--flow|1 L/min", "--cylinder <SIZE>"),
        (
            "--cylinder|D|--water-capacity|2 L|--pressure|900 psi|--flow|1 L/min",
            "cannot be used with",
        ),
        (
            "--cylinder|D|--factor|1 L/bar|--pressure|900 psi|--flow|1 L/min",
            "--factor",
        ),
        (
            "--cylinder|D|--pressure|900 psi|--flow|1 L/min|--temperature|61 °C",
            "(for the density of oxygen) from -40 to 60 °C, found 61 °C",
        ),
        (
            "--cylinder|D|--pressure|305 bar|--flow|1 L/min",
            "from 0 to 300 bar, found 305 bar",
        ),
        (
            "--cylinder|D|--pressure|900 psi|--flow|0 L/min|--leak|0 L/min",
            "expected a flow above 0 L/min",
        ),
        (
            "--cylinder|D|--pressure|900 psi|--flow|0.0000001 L/min",
            "within 120 years",
        ),
        (
            "--cylinder|D|--pressure|900 psi|--minutes|0",
            "expected at least 1 minute",
        ),
        (
            "--cylinder|D|--pressure|900 psi|--minutes|NaN",
            "expected a time from 0 to",
        ),
        (
            "--cylinder|D|--pressure|150 psi|--minutes|5",
            "found no gas above it",
        ),
        (
            "--cylinder|D|--pressure|900 psi|--flow|1 L/min|--now|24:00",
            "from 00:00 to 23:59",
        ),
        (
            "--cylinder|D|--flow|1 L/min|--minutes|5|--now|12:00",
            "--now needs --pressure",
        ),
        (
            "--water-capacity|0 L|--pressure|900 psi|--flow|1 L/min",
            "expected a water capacity above 0 L",
        ),
    ] {
        let words_of: Vec<&str> = arguments.split('|').collect();
        let arguments = [&["duration"], &words_of[..]].concat();
        assert_eq!(code(&arguments), 2, "{arguments:?}");
        let said = stderr(&arguments);
        assert!(said.contains(words), "{arguments:?}: {said}");
    }
}

/// A residual above the change-over pressure made the change come after the end.
#[test]
fn the_change_never_comes_after_the_end() {
    let (_, answer) = ask("--cylinder|D|--pressure|1500 psi|--flow|5 L/min|--residual|1000 psi");
    assert_eq!(answer["change_over_minutes"], answer["minutes"]);
    assert!((answer["change_over_psi"].as_f64().unwrap() - 1000.0).abs() < 1e-6);
}

/// A reading above what the size may be filled to was answered without a word.
#[test]
fn an_impossible_reading_is_said_to_be_one() {
    for question in ["--flow|15 L/min", "--minutes|20"] {
        let asked = format!("--cylinder|D|--pressure|200 bar|{question}");
        let (code, answer) = ask(&asked);
        assert_eq!(
            (code, &answer["above_fill_limit"]),
            (1, &Value::Bool(true)),
            "{question}"
        );
        assert!(text(&asked).contains("Do not rely on this answer."), "{question}");
    }
}

/// H was taken for a slip of the pen of D.
#[test]
fn another_size_is_no_slip_of_the_pen() {
    let (code, answer) = ask("--cylinder|H|--pressure|2000 psi|--flow|15 L/min");
    assert_eq!((code, &answer["cylinder"]), (0, &json!("h-k")));
    for other in ["Q", "M6", "metric-4-l"] {
        let said = stderr(&[
            "duration",
            "--cylinder",
            other,
            "--pressure",
            "2000 psi",
            "--flow",
            "15 L/min",
        ]);
        assert!(said.contains("the rulebook has: d, jumbo-d, e,"), "{said}");
    }
}
