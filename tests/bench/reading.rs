//! How long a rulebook takes to read. `cargo bench` prints the figures that DEVELOPERS.md quotes and fails when one
//! misses its target; then criterion measures the same more closely.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

mod book;

use std::{
    hint::black_box,
    ops::Range,
    process::{Command, Stdio},
    time::{Duration, Instant},
};

use criterion::{BenchmarkId, Criterion, SamplingMode, Throughput};
use oxyfolio::compile::{compile, source::Sources};
use pulldown_cmark::{CodeBlockKind, Event, Options, Parser, Tag};

use book::Chapter;

/// Bytes of a made chapter.
const CHAPTER: usize = 5_000;

fn main() {
    figures();
    let mut criterion = Criterion::default().configure_from_args();
    benches(&mut criterion);
    criterion.final_summary();
}

fn benches(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("check");
    group
        .sample_size(10)
        .sampling_mode(SamplingMode::Flat)
        .measurement_time(Duration::from_secs(4));
    let demo = book::of(0, CHAPTER);
    group.throughput(Throughput::Bytes(bytes(&demo)));
    group.bench_function("demo", |bencher| {
        bencher.iter_with_setup(|| book::sources(&demo), read);
    });
    for megabytes in [1, 2, 5, 10] {
        let made = book::of(megabytes * 200, CHAPTER);
        group.throughput(Throughput::Bytes(bytes(&made)));
        group.bench_with_input(
            BenchmarkId::new("made", format!("{megabytes} MB")),
            &made,
            |bencher, made| {
                bencher.iter_with_setup(|| book::sources(made), read);
            },
        );
    }
    group.finish();
}

/// What is promised, measured and held to.
fn figures() {
    let small = book::of(200, CHAPTER);
    let large = book::of(2_000, CHAPTER);
    let (few, many) = (bytes(&small), bytes(&large));
    let few_take = fastest(9, || {
        read(book::sources(&small));
    });
    let many_take = fastest(5, || {
        read(book::sources(&large));
    });
    let growth = (many_take.as_secs_f64() / many as f64) / (few_take.as_secs_f64() / few as f64);
    println!("{few} bytes in 200 chapters: {few_take:.1?}");
    println!("{many} bytes in 2000 chapters: {many_take:.1?} (target: under 2 s)");
    println!("time for a byte, large book against small: {growth:.2} times (target: under 2)");

    let demo = book::of(0, CHAPTER);
    let ours = fastest(200, || {
        read(book::sources(&demo));
    });
    let bare = fastest(200, || bare(&demo));
    let ratio = ours.as_secs_f64() / bare.as_secs_f64();
    println!(
        "demo, {} bytes: {ours:.2?}; bare Markdown and YAML: {bare:.2?}; {ratio:.2} times (target: at most 3)",
        bytes(&demo)
    );

    let process = fastest(50, || {
        let status = Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
            .args(["check", "--rules", concat!(env!("CARGO_MANIFEST_DIR"), "/rules")])
            .stdout(Stdio::null())
            .status()
            .unwrap();
        assert!(status.success());
    });
    println!("`oxyfolio check --rules rules`, the whole process: {process:.1?} (target: under 30 ms)\n");

    assert!(many_take < Duration::from_secs(2), "a book of 10 MB");
    assert!(growth < 2.0, "time grows with the size of the book");
    assert!(ratio <= 3.0, "against bare reading");
    assert!(process < Duration::from_millis(30), "the whole process");
}

fn read(sources: Sources) {
    black_box(
        compile(black_box(sources))
            .unwrap_or_else(|rejected| panic!("the made book: {}", &rejected.render(false)[..2000])),
    );
}

/// What reading costs at the least: the same libraries on the same bytes, and nothing done with what they give.
fn bare(book: &[Chapter]) {
    for (_, text) in book {
        let mut rule: Option<Range<usize>> = None;
        for (event, range) in Parser::new_ext(text, Options::ENABLE_TABLES).into_offset_iter() {
            match event {
                Event::Start(Tag::CodeBlock(CodeBlockKind::Fenced(info))) if info.starts_with("yaml ") => {
                    rule = Some(range.end..range.start);
                }
                // The text of a block comes in pieces.
                Event::Text(_) if rule.is_some() => {
                    rule = rule.map(|rule| rule.start.min(range.start)..rule.end.max(range.end));
                }
                Event::End(_) => {
                    if let Some(rule) = rule.take() {
                        let value: serde_json::Value = serde_yaml::from_str(&text[rule]).expect("YAML");
                        black_box(value);
                    }
                }
                event => {
                    black_box((event, range));
                }
            }
        }
    }
}

fn fastest(times: u32, mut run: impl FnMut()) -> Duration {
    let once = |_| {
        let start = Instant::now();
        run();
        start.elapsed()
    };
    (0..times).map(once).min().unwrap()
}

fn bytes(book: &[Chapter]) -> u64 {
    book.iter().map(|(_, text)| text.len() as u64).sum()
}
