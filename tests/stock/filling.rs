//! How full a cylinder may be.
//!
//! Sources:
//! - PHMSA Interpretation Response 13-0042 (22 May 2013), on 49 CFR 173.302a(b): ten per cent above the marked service
//!   pressure with a plus after the test date; 3A, 3AX, 3AA, 3AAX and 3T only.
//!   <https://www.phmsa.dot.gov/regulations/title49/interp/13-0042>
//! - CRC Handbook of Chemistry and Physics, section 16, gas cylinder markings: a plus means 10 % of the service pressure.
//! - 2015 psi × 1.1 = 2216.5 psi.
//! - From memory: 3AL, and all without a plus, to the service pressure at 70 °F (49 CFR 173.301(a)(8), 173.302a).

use oxyfolio::check::Level;
use oxyfolio::check::stock::{Marks, Reason, Report, Stocked, Terms};
use oxyfolio::oxygen::free_gas;
use oxyfolio::quantity::{Percent, Temperature, Volume};
use oxyfolio::{RULEBOOK, cylinder};

use super::support::{NO_MARKS, TODAY, bar, codes, codes_on, day, good, psi, report, sized};

const PLUS: Marks = Marks {
    plus: true,
    ..NO_MARKS
};
const PLUS_ON_ALUMINIUM: Marks = Marks {
    aluminium: true,
    ..PLUS
};

#[test]
fn ten_per_cent_with_a_plus_and_nothing_without() {
    let d = |reading: f64, marks: Marks| good("a").pressure(psi(reading)).marks(marks);
    for (one, found) in [
        (d(2015.0, NO_MARKS), &[][..]),
        (d(2016.0, NO_MARKS), &["overfilled"]),
        (d(2016.0, PLUS), &[]),
        (d(2216.5, PLUS), &[]),
        (d(2216.6, PLUS), &["overfilled"]),
        (d(2015.0, PLUS_ON_ALUMINIUM), &["plus-on-aluminium"]),
        (d(2016.0, PLUS_ON_ALUMINIUM), &["overfilled", "plus-on-aluminium"]),
    ] {
        assert_eq!(codes(&one), found, "{one:?}");
    }
    let with_plus = report(&[d(2000.0, PLUS)]).judged[0].filled_at_most;
    assert!((with_plus.as_psi() - 2216.5).abs() < 1e-9, "{with_plus}");
    let without = report(&[d(2000.0, NO_MARKS)]).judged[0].filled_at_most;
    assert!((without.as_psi() - 2015.0).abs() < 1e-9, "{without}");
}

#[test]
fn a_size_without_room_has_none_with_a_plus() {
    let metric = |reading: f64, marks: Marks| {
        sized("a", cylinder::METRIC_2_L)
            .pressure(bar(reading))
            .marks(marks)
    };
    assert!(codes(&metric(200.0, NO_MARKS)).is_empty());
    assert_eq!(codes(&metric(200.0, PLUS)), ["plus-not-used"]);
    assert_eq!(codes(&metric(201.0, PLUS)), ["overfilled", "plus-not-used"]);
    let found = report(&[metric(201.0, NO_MARKS)]);
    // The size's own rule says how full it may be.
    assert_eq!(&*found.judged[0].findings[0].rule.id, "metric-2-l");
}

#[test]
fn a_limit_below_the_service_pressure_counts_without_a_plus_too() {
    let mut book = RULEBOOK.clone();
    book.policies.fill_limit = Percent::new(95.0).unwrap();
    // 2015 × 0.95 = 1914.25.
    assert!(codes_on(&book, &good("a").pressure(psi(1914.0)), TODAY).is_empty());
    assert_eq!(
        codes_on(&book, &good("a").pressure(psi(1915.0)), TODAY),
        ["overfilled"]
    );
}

#[test]
fn overfilled_is_a_stop_and_not_counted() {
    let report = report(&[good("a").pressure(psi(2300.0))]);
    let judged = &report.judged[0];
    assert_eq!(judged.findings[0].level, Level::Stop);
    assert_eq!(
        (judged.first(), judged.is_counted()),
        (Some(Reason::Unsafe), false)
    );
    assert_eq!(&*judged.findings[0].rule.id, "fill-limit");
    assert!(judged.findings[0].note.unwrap().contains("latest test date"));
}

/// At one gas content, pressure goes at least as absolute temperature does: an ideal gas would read 2110 psi at 35 °C
/// where it reads 2015 at 21 °C, and 1802 psi at -10 °C. Oxygen, whose molecules attract each other,
/// changes by more.
#[test]
fn where_the_temperature_is_known_the_gas_decides() {
    let at = |celsius: f64, reading: f64| {
        let one = [good("a").pressure(psi(reading))];
        let temperature = Temperature::celsius(celsius).unwrap();
        let terms = Terms::on(day(TODAY)).temperature(temperature);
        let report = Report::of(&RULEBOOK, &one, &terms).unwrap();
        let found: Vec<_> = report.judged[0]
            .findings
            .iter()
            .map(|found| found.code())
            .collect();
        (found, report.judged[0].is_counted())
    };
    assert_eq!(at(35.0, 2100.0), (vec!["only-warm"], true));
    assert_eq!(at(35.0, 2300.0), (vec!["overfilled"], false));
    assert_eq!(at(-10.0, 1950.0), (vec!["overfilled-and-cold"], false));
    assert_eq!(at(-10.0, 1600.0), (vec![], true));
    // A hundredth above it after three degrees: no gauge shows that, and it is told as a note.
    assert_eq!(at(18.0, 2010.0), (vec!["overfilled-and-cold"], true));
    assert_eq!(at(21.0, 2015.0), (vec![], true));
    assert_eq!(at(21.0, 2020.0), (vec!["overfilled"], false));
    // The same by what the cylinder holds.
    let held = |celsius: f64, reading: f64| {
        let litre = Volume::litres(1.0).unwrap();
        free_gas(litre, psi(reading), Temperature::celsius(celsius).unwrap())
            .unwrap()
            .as_litres()
    };
    let full = held(21.11, 2015.0);
    assert!(held(35.0, 2100.0) < full && held(35.0, 2300.0) > full && held(-10.0, 1950.0) > full);
}

#[test]
fn the_temperature_itself_is_judged_once() {
    let stock: Vec<Stocked> = (0..3).map(|number| good(&number.to_string())).collect();
    let terms = Terms::on(day(TODAY)).temperature(Temperature::celsius(-38.0).unwrap());
    let report = Report::of(&RULEBOOK, &stock, &terms).unwrap();
    let found: Vec<_> = report.findings.iter().map(|found| found.code()).collect();
    assert_eq!(found, ["outside-storage-temperature", "gauge-misleads"]);
    let beyond = Terms::on(day(TODAY)).temperature(Temperature::celsius(61.0).unwrap());
    assert!(Report::of(&RULEBOOK, &stock, &beyond).is_err());
}
