//! How long it takes to ask which of the demonstration's hazards a set-up has: ours, written by hand, and other engines, on
//! the same invented records in one process. Prints a table and fails when a target is missed.

mod engines;
mod floor;
mod record;
mod translate;

use std::{
    hint::black_box,
    ops::Range,
    process::ExitCode,
    time::{Duration, Instant},
};

use oxyfolio::{
    RULEBOOK,
    book::{DeviceId, GroupId, Kind, Rule},
    check::{About, Level, Setup, check_setup},
    guard::{Broken, Evaluator, Row},
    hazard,
    lookup::Lookup,
    quantity::PressureUnit,
};

use floor::{Found, Mask, Tables};
use record::{Device, Group, Record};

const RECORDS: usize = 4096;
/// Engines are slower by so much that a round holds a few records only.
const ENGINE_CHUNK: usize = 16;
/// Others share the machine: the best of so many short rounds counts, some of which nobody interrupts.
const ROUNDS: usize = 300;
const ROUND: Duration = Duration::from_micros(800);

/// One way to the answer.
struct Way<'a> {
    name: String,
    /// Answers for the record at a place.
    one: Box<dyn FnMut(Range<usize>) + 'a>,
    records: usize,
    /// How many records are answered before the clock is looked at.
    chunk: usize,
    /// The next record.
    next: usize,
    /// Nanoseconds for each record.
    best: f64,
}

impl<'a> Way<'a> {
    fn new(name: impl Into<String>, records: usize, chunk: usize, mut one: impl FnMut(usize) + 'a) -> Self {
        Self {
            name: name.into(),
            one: Box::new(move |places| places.for_each(&mut one)),
            records: records / chunk * chunk,
            chunk,
            next: 0,
            best: f64::INFINITY,
        }
    }

    /// Goes on where the last round ended, so that every record has its turn.
    fn round(&mut self) {
        let (mut done, start) = (0, Instant::now());
        let taken = loop {
            (self.one)(self.next..self.next + self.chunk);
            self.next = (self.next + self.chunk) % self.records;
            done += self.chunk;
            let taken = start.elapsed();
            if taken >= ROUND {
                break taken;
            }
        };
        self.best = self.best.min(taken.as_secs_f64() * 1e9 / done as f64);
    }
}

/// Every way in turn, so that a busy moment of the machine hits all.
fn measure(ways: &mut [Way<'_>]) {
    for _ in 0..ROUNDS {
        ways.iter_mut().for_each(Way::round);
    }
}

fn main() -> ExitCode {
    if cfg!(debug_assertions) {
        eprintln!("error: expected an optimised build, found none; run tests/peers/run");
        return ExitCode::from(2);
    }
    let texts = record::texts(RECORDS);
    let parse = |text: &str| -> Record { serde_json::from_str(text).unwrap() };
    let records: Vec<Record> = texts.iter().map(|text| parse(text)).collect();
    let rows: Vec<Row> = records.iter().map(Record::row).collect();
    let tables = tables();
    let known = known();
    let lookup = Lookup::new(&RULEBOOK);
    let mut peers = engines::all(&RULEBOOK, &texts);

    // Nothing is timed before all say the same.
    let expected: Vec<Mask> = rows.iter().map(one_by_one).collect();
    for (index, expected) in expected.iter().enumerate() {
        let same = |name: &str, found: Mask| assert_eq!(found, *expected, "{name}: {}", texts[index]);
        same("emitted", of(hazard::Guards.broken_row(&rows[index])));
        same("looked up", of(lookup.broken_row(&rows[index])));
        same("by hand", floor::mask_stopping(&records[index], &tables));
        same("by hand, eager", floor::mask_eager(&records[index], &tables));
        for peer in &mut peers {
            same(peer.name, (peer.ask)(index));
            same(peer.name, (peer.whole)(&texts[index]));
        }
        same_findings(&rows[index], &records[index], &tables, &known);
    }
    let there: u32 = expected.iter().map(|mask| mask.there.count_ones()).sum();
    let unknown: u32 = expected.iter().map(|mask| mask.unknown.count_ones()).sum();
    println!(
        "{RECORDS} set-ups, {} hazards; {:.1} there and {:.1} unknown in each\n",
        RULEBOOK.hazards.len(),
        f64::from(there) / RECORDS as f64,
        f64::from(unknown) / RECORDS as f64
    );

    let setups: Vec<Setup<'static>> = records.iter().filter_map(setup).collect();
    let (mut one, mut other, mut ours) = (Vec::new(), Vec::new(), Vec::new());
    let mut ways = vec![
        Way::new("by hand, stopping", RECORDS, 1024, |at| {
            black_box(floor::mask_stopping(black_box(&records[at]), &tables));
        }),
        Way::new("by hand, eager", RECORDS, 1024, |at| {
            black_box(floor::mask_eager(black_box(&records[at]), &tables));
        }),
        Way::new("emitted look-ups", RECORDS, 1024, |at| {
            black_box(hazard::Guards.broken_row(black_box(&rows[at])));
        }),
        Way::new("look-ups made at run time", RECORDS, 1024, |at| {
            black_box(lookup.broken_row(black_box(&rows[at])));
        }),
        Way::new("emitted functions, one by one", RECORDS, 1024, |at| {
            black_box(rows[at].observed(|seen| functions(seen)));
        }),
        Way::new("walked, one by one", RECORDS, 1024, |at| {
            black_box((&RULEBOOK).broken_row(black_box(&rows[at])));
        }),
        Way::new("findings by hand, stopping", RECORDS, 1024, |at| {
            one.clear();
            floor::findings_stopping(black_box(&records[at]), &tables, &known, &mut one);
            black_box(&one);
        }),
        Way::new("findings by hand, eager", RECORDS, 1024, |at| {
            other.clear();
            floor::findings_eager(black_box(&records[at]), &tables, &known, &mut other);
            black_box(&other);
        }),
        Way::new("findings of the emitted look-ups", RECORDS, 1024, |at| {
            ours.clear();
            findings(black_box(&rows[at]), &mut ours);
            black_box(&ours);
        }),
        Way::new("whole check of a set-up", setups.len(), 1024, |at| {
            let checked = check_setup(hazard::Guards, black_box(&setups[at]), |finding| {
                black_box(finding);
            });
            black_box(&checked);
        }),
        Way::new("JSON to a typed record alone", RECORDS, 1024, |at| {
            black_box(parse(black_box(&texts[at])));
        }),
        Way::new("JSON to emitted look-ups", RECORDS, 1024, |at| {
            let row = parse(black_box(&texts[at])).row();
            black_box(hazard::Guards.broken_row(&row));
        }),
    ];
    let engines = peers.len();
    for peer in peers {
        let (name, mut ask, mut whole) = (peer.name, peer.ask, peer.whole);
        ways.push(Way::new(name, RECORDS, ENGINE_CHUNK, move |at| {
            black_box(ask(black_box(at)));
        }));
        let texts = &texts;
        ways.push(Way::new(
            format!("JSON to {name}"),
            RECORDS,
            ENGINE_CHUNK,
            move |at| {
                black_box(whole(black_box(&texts[at])));
            },
        ));
    }
    measure(&mut ways);
    judge(&ways, engines)
}

/// Prints the table and says whether every target is met.
fn judge(ways: &[Way<'_>], engines: usize) -> ExitCode {
    let time = |name: &str| {
        let way = ways.iter().find(|way| way.name == name);
        way.unwrap_or_else(|| panic!("nothing is called {name}")).best
    };
    let mask = time("emitted look-ups");
    println!("{:<36} {:>12} {:>10}", "", "ns a set-up", "times ours");
    for way in ways {
        println!("{:<36} {:>12.1} {:>10.2}", way.name, way.best, way.best / mask);
    }
    let by_hand = time("by hand, stopping").min(time("by hand, eager"));
    let findings_by_hand = time("findings by hand, stopping").min(time("findings by hand, eager"));
    let first = ways.len() - 2 * engines;
    let evaluate = ways[first..].iter().step_by(2).map(|way| way.best);
    let best = evaluate.fold(f64::INFINITY, f64::min);
    let targets = [
        (
            "look-ups against the better by hand, at most",
            mask / by_hand,
            1.0,
            true,
        ),
        (
            "look-ups made at run time, ns, at most",
            time("look-ups made at run time"),
            100.0,
            true,
        ),
        (
            "findings against the better by hand, at most",
            time("findings of the emitted look-ups") / findings_by_hand,
            2.0,
            true,
        ),
        ("best engine against look-ups, at least", best / mask, 50.0, false),
    ];
    println!();
    let mut code = ExitCode::SUCCESS;
    for (what, found, target, at_most) in targets {
        let met = if at_most { found <= target } else { found >= target };
        println!("{what} {target}: {found:.2}{}", if met { "" } else { " MISSED" });
        if !met {
            code = ExitCode::FAILURE;
        }
    }
    code
}

fn of(broken: Broken) -> Mask {
    Mask {
        there: broken.there.words()[0],
        unknown: broken.unknown.words()[0],
    }
}

fn one_by_one(row: &Row) -> Mask {
    of((&RULEBOOK).broken_row(row))
}

fn functions(seen: &oxyfolio::guard::Observed<'_>) -> Broken {
    (0..RULEBOOK.hazards.len() as u16)
        .map(oxyfolio::book::HazardId)
        .fold(Broken::default(), |broken, id| {
            broken.with(id, hazard::Guards.evaluate(id, seen))
        })
}

/// What the library's findings hold. Its own are made by its checks only, which do more than is measured here.
#[expect(dead_code, reason = "kind and unit are written, as the library writes them")]
struct Finding {
    level: Level,
    kind: Kind,
    rule: &'static Rule,
    about: About<'static>,
    pressure_unit: PressureUnit,
}

impl Finding {
    fn remedy(&self) -> Option<&'static str> {
        match self.about {
            About::Hazard(hazard) | About::HazardUnknown(hazard) => Some(&hazard.remedy),
            _ => None,
        }
    }
}

/// Our finding of each hazard that is there or can't be told.
fn findings(row: &Row, out: &mut Vec<Finding>) {
    let broken = hazard::Guards.broken_row(row);
    for id in broken.there | broken.unknown {
        let Some(hazard) = RULEBOOK.hazard(id) else {
            continue;
        };
        let (level, about) = if broken.there.contains(id) {
            (hazard.severity.into(), About::Hazard(hazard))
        } else {
            (Level::Unknown, About::HazardUnknown(hazard))
        };
        out.push(Finding {
            level,
            kind: Kind::Hazard,
            rule: &hazard.rule,
            about,
            pressure_unit: RULEBOOK.agency.pressure_unit,
        });
    }
}

/// Both say the same, in the same order.
fn same_findings(row: &Row, record: &Record, tables: &Tables, known: &[Found; 29]) {
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    findings(row, &mut ours);
    floor::findings_stopping(record, tables, known, &mut theirs);
    assert_eq!(ours.len(), theirs.len());
    for (our, their) in ours.iter().zip(&theirs) {
        assert_eq!((&*our.rule.id, our.remedy()), (their.code, Some(their.remedy)));
        assert_eq!(our.level == Level::Unknown, their.level == floor::Level::Unknown);
        if let About::Hazard(hazard) = our.about {
            assert_eq!((&*hazard.say, &*hazard.rule.name), (their.say, their.name));
        }
    }
}

/// What the programmer's tables hold.
fn tables() -> Tables {
    let number = |limit: oxyfolio::quantity::Limit<oxyfolio::quantity::Flow>| {
        limit.value().unwrap().as_litres_per_minute()
    };
    let device = |device: Device| RULEBOOK.device(DeviceId(device as u16)).unwrap();
    let array =
        |make: &dyn Fn(usize) -> (f64, f64)| -> [(f64, f64); Group::ALL.len()] { core::array::from_fn(make) };
    Tables {
        limits: core::array::from_fn(|at| {
            array(&|group| {
                let flow = device(Device::ALL[at]).flow_for(GroupId(group as u16));
                (number(flow.low), number(flow.high))
            })
        }),
        reservoir: core::array::from_fn(|at| device(Device::ALL[at]).reservoir),
    }
}

fn known() -> [Found; 29] {
    core::array::from_fn(|at| {
        let hazard = &RULEBOOK.hazards[at];
        Found {
            level: match hazard.severity.into() {
                Level::Note => floor::Level::Note,
                Level::Unknown => floor::Level::Unknown,
                Level::Warn => floor::Level::Warn,
                Level::Stop => floor::Level::Stop,
            },
            code: &hazard.rule.id,
            name: &hazard.rule.name,
            say: &hazard.say,
            remedy: &hazard.remedy,
        }
    })
}

/// As the whole check takes it, where device and flow are known.
fn setup(record: &Record) -> Option<Setup<'static>> {
    use oxyfolio::quantity::{Flow, Percent, Pressure, Temperature, Time};
    let mut setup = Setup::new(
        DeviceId(record.device? as u16),
        Flow::litres_per_minute(record.flow?).ok()?,
    )
    .cylinder(oxyfolio::cylinder::D)
    .conditions(&[]);
    if let Some(group) = record.group {
        setup = setup.group(GroupId(group as u16));
    }
    if let Some(pressure) = record
        .pressure
        .and_then(|pressure| Pressure::<oxyfolio::quantity::Gauge>::bar(pressure / 1e5).ok())
    {
        setup = setup.pressure(pressure);
    }
    if let Some(temperature) = record
        .temperature
        .and_then(|temperature| Temperature::celsius(temperature).ok())
    {
        setup = setup.temperature(temperature);
    }
    if let Some(spo2) = record.spo2.and_then(|spo2| Percent::new(spo2).ok()) {
        setup = setup.spo2(spo2);
    }
    if let Some(wanted) = record
        .minutes_wanted
        .and_then(|wanted| Time::minutes(wanted).ok())
    {
        setup = setup.minutes_wanted(wanted);
    }
    Some(setup)
}
