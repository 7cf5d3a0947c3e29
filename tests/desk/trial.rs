//! Try a set-up: the answer is the library's.

use oxyfolio::check::{Setup, check_setup};
use oxyfolio::compile::folder;
use oxyfolio::quantity::{Flow, Percent, Pressure, Temperature, Time, TimeUnit};

use super::{
    common,
    support::{as_written, open},
};

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

#[test]
fn the_answer_is_the_librarys() {
    let desk = open(&common::rules());
    let book = folder::load(&common::rules()).unwrap().book;
    let mut compared = 0;
    for device in &*book.devices {
        for flow in [0.5, 2.0, 8.0, 15.0] {
            for (group, spo2, pressure) in [("adult", 91.0, 1500.0), ("infant", 99.0, 190.0)] {
                let id = &*device.rule.id;
                let setup = Setup::new(
                    book.find_device(id).unwrap(),
                    Flow::litres_per_minute(flow).unwrap(),
                )
                .group(book.find_group(group).unwrap())
                .conditions(&[])
                .spo2(Percent::new(spo2).unwrap())
                .cylinder(book.find_cylinder("d").unwrap())
                .pressure(Pressure::psi(pressure).unwrap())
                .temperature(Temperature::celsius(5.0).unwrap())
                .minutes_wanted(Time::of(40.0, TimeUnit::Minute).unwrap());
                let page = desk.page(&format!(
                    "/try?device={id}&flow={flow}+L/min&group={group}&condition=none&spo2={spo2}&cylinder=d&pressure={pressure}&temperature=5&minutes=40"
                ));
                let mut findings = 0;
                check_setup(&book, &setup, |finding| {
                    findings += 1;
                    let words = format!(
                        "<strong>{}</strong>: {} <code>[{}]</code>",
                        finding.level.word(),
                        escaped(&finding.to_string()),
                        finding.code()
                    );
                    assert!(page.contains(&words), "{id} at {flow}: {words}");
                    assert!(page.contains(&format!("class=\"finding {}\"", finding.level.code())));
                })
                .unwrap();
                assert_eq!(page.matches("<li class=\"finding ").count(), findings);
                compared += findings;
            }
        }
    }
    assert!(compared > 100, "{compared}");
}

#[test]
fn what_is_not_given_is_told_as_unknown_and_never_as_a_pass() {
    let desk = open(&common::rules());
    let page = desk.page("/try?device=non-rebreather&flow=12");
    assert!(page.contains("class=\"finding unknown\""));
    assert!(!page.contains("Nothing against the book"));
}

#[test]
fn every_mistake_of_a_form_is_told_at_its_field() {
    let desk = open(&common::rules());
    let page = as_written(&desk.page(
        "/try?device=non-rebreathr&flow=many&spo2=101&pressure=10+L/min&condition=none&condition=retains-co2",
    ));
    for (field, words) in [
        ("device", "did you mean `non-rebreather`?"),
        ("flow", "expected a number with its unit, found `many`"),
        ("spo2", "expected at most 100 %"),
        ("pressure", "expected a pressure"),
        ("condition", "can&apos;t both be"),
    ] {
        assert!(page.contains(&format!("id=\"{field}-wrong\"")), "{field}: {page}");
        assert!(
            page.contains(words) || page.contains(&words.replace("&apos;", "'")),
            "{words}: {page}"
        );
    }
    assert!(
        !page.contains("class=\"finding "),
        "nothing is answered to half a question"
    );
}

#[test]
fn a_book_with_errors_is_not_asked() {
    let rules = common::copy_of_rules();
    common::edit(
        rules.path(),
        "05-delivery-devices.md",
        "flow: 1 to 6 L/min",
        "flow: 6 to 1 L/min",
    );
    let desk = open(rules.path());
    let page = desk.page("/try?device=nasal-cannula&flow=2");
    assert!(page.contains("so no set-up can be checked"));
    assert!(!page.contains("class=\"finding "));
    assert!(desk.page("/cards").contains("so no cards can be printed"));
}
