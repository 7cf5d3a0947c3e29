//! What is allocated: nothing for a check of a set-up, nothing for an event once the buffers have grown, and no more for a long file than for a short one.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "records")]

use allocation_counter::measure;
use oxyfolio::book::{DeviceId, Rulebook};
use oxyfolio::check::review::{Notes, Reviewer};
use oxyfolio::check::{Findings, Setup, check_setup};
use oxyfolio::quantity::{Flow, Percent, Pressure, Temperature, Time};
use oxyfolio::records::run::{Input, Names, Options, RunBuffer, Written, review};
use oxyfolio::{RULEBOOK, cylinder, group, hazard};

static BOOK: &Rulebook = &RULEBOOK;

/// A run without mistakes; some texts with escapes, which need a buffer.
fn run(number: usize, events: usize) -> String {
    let event = |index: usize| {
        format!(
            r#"{{"at":"2026-03-01T14:{:02}:{:02}+01:00","do":"set-flow","cylinder":"D","pressure_psi":{}.5,"flow_lpm":12,"device":"n\u0072b","spo2_percent":94,"by":"crew-{}"}}"#,
            index / 60 % 60,
            index % 60,
            2000 - index % 1000,
            index % 3
        )
    };
    let events: Vec<String> = (0..events).map(event).collect();
    format!(
        r#"{{"run":"LV-{number:06}","group":"adult","conditions":["retains-co2"],"temperature_c":18,"events":[{}]}}"#,
        events.join(",")
    )
}

/// Whatever is found, by either way of asking, with minutes and words.
#[test]
fn a_check_of_a_set_up_allocates_nothing() {
    struct Counted(usize);

    impl core::fmt::Write for Counted {
        fn write_str(&mut self, piece: &str) -> core::fmt::Result {
            self.0 += piece.len();
            Ok(())
        }
    }

    let book = BOOK;
    let mut checked = 0;
    for device in 0..u16::try_from(book.devices.len()).unwrap() {
        for (litres, psi, spo2) in [
            (0.0, 0.0, 70.0),
            (4.0, 450.0, 93.0),
            (15.0, 2000.0, 99.0),
            (120.0, 4000.0, 150.0),
        ] {
            let setup = Setup::new(DeviceId(device), Flow::litres_per_minute(litres).unwrap())
                .group(group::CHILD)
                .conditions(&[])
                .cylinder(cylinder::D)
                .pressure(Pressure::psi(psi).unwrap())
                .temperature(Temperature::celsius(-20.0).unwrap())
                .minutes_wanted(Time::minutes(40.0).unwrap())
                .spo2(Percent::new(spo2).unwrap());
            let counted = measure(|| {
                let mut words = Counted(0);
                let mut found = Findings::<32>::new();
                let left = check_setup(book, &setup, |finding| found.push(finding)).unwrap();
                assert!(left.hazards().count() > 0);
                check_setup(hazard::Guards, &setup, |finding| found.push(finding)).unwrap();
                for finding in found.iter() {
                    core::fmt::write(&mut words, format_args!("{finding}")).unwrap();
                }
                checked += usize::from(words.0 > 0);
            });
            assert_eq!(counted.count_total, 0);
        }
    }
    assert!(checked > 20, "{checked}");
}

#[test]
fn reading_an_event_allocates_nothing() {
    let names = Names::new(BOOK);
    let mut buffer = RunBuffer::new();
    let (short, long) = (run(1, 10), run(2, 2_000));
    buffer.read_json(long.as_bytes(), 1, &names).unwrap();
    for line in [&short, &long, &long, &short] {
        let counted = measure(|| buffer.read_json(line.as_bytes(), 1, &names).unwrap());
        assert_eq!((counted.count_total, buffer.problems().len()), (0, 0));
    }
    assert_eq!(buffer.run().events.len(), 10);
}

#[test]
fn reviewing_an_event_allocates_nothing() {
    let names = Names::new(BOOK);
    let (mut buffer, mut notes) = (RunBuffer::new(), Notes::default());
    let reviewer = Reviewer::new(BOOK);
    let mut found = 0;
    for (line, warm) in [(run(1, 2_000), false), (run(2, 2_000), true), (run(3, 10), true)] {
        buffer.read_json(line.as_bytes(), 1, &names).unwrap();
        let counted = measure(|| reviewer.review(&buffer.run(), &mut notes, |_| found += 1));
        assert!(!warm || counted.count_total == 0, "{counted:?}");
    }
}

/// Allocations of a pass on one thread, and the most bytes held at once.
fn pass(runs: usize, csv: bool) -> (u64, u64) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(if csv { "a.csv" } else { "a.ndjson" });
    let mut text = String::new();
    if csv {
        text.push_str("run,at,do,device,flow_lpm\n");
    }
    for number in 0..runs {
        if csv {
            for second in 10..50 {
                text += &format!("R{number},2026-03-01T14:05:{second}Z,set-flow,nrb,12\n");
            }
        } else {
            text += &run(number, 40);
            text.push('\n');
        }
    }
    std::fs::write(&path, text).unwrap();
    let options = Options {
        threads: 1,
        written: Written::Lines,
        ..Options::default()
    };
    let reviewer = Reviewer::new(BOOK);
    let inputs = [Input::File(path)];
    let mut read = 0;
    let counted = measure(|| {
        let tally = review(BOOK, &reviewer, &inputs, &options, &mut std::io::sink()).unwrap();
        read = tally.runs;
    });
    assert_eq!(read as usize, runs);
    (counted.count_total, counted.bytes_max)
}

#[test]
fn memory_does_not_grow_with_the_file() {
    for csv in [false, true] {
        let ((few, small), (many, large)) = (pass(500, csv), pass(4_500, csv));
        // The names of the last 65,536 runs are kept, as hashes: 4,000 more of them, and tables that double.
        let window = 4_000 * 8 * 8;
        assert!(large <= small + window, "{small} to {large} bytes");
        // By batch, not by event: 160,000 events more.
        assert!(many - few < 160_000 / 4, "{few} to {many} allocations");
        println!("csv {csv}: {small} to {large} bytes at once; {few} to {many} allocations");
    }
}
