//! Fills a page's tables: what each answer leaves of each line.

use alloc::{vec, vec::Vec};

use super::{
    lower::{End, Line, Question},
    page::{Levels, Limits, NO_LIMIT, Page, Pair, Threes},
    steps::near,
};
use crate::book::{Comparison, Device, DeviceId, Fact, GroupId, Measure, Rulebook, Value};
use crate::guard::{
    MAX_CONDITIONS, Truth, compare,
    mask::{Doubt, Sign, by_three},
};
use crate::quantity::{Flow, Range};

/// A line that has its bit.
struct Placed {
    bit: u8,
    line: Line,
}

/// A page of hazards that follow each other, each with its lines; the lines of all of them fit. A hazard without lines
/// is never there.
pub(super) fn page(first: u16, hazards: Vec<Vec<Line>>, book: &Rulebook) -> Page {
    let count = hazards.len() as u8;
    let mut page = Page {
        first,
        hazards: count,
        ..Page::default()
    };
    let mut placed: Vec<Placed> = Vec::new();
    let mut next = count;
    for (hazard, lines) in (0..count).zip(hazards) {
        if lines.is_empty() {
            page.always = page.always.and(Doubt::needed(1 << hazard, Truth::False));
        }
        let last = lines.len().saturating_sub(1);
        let mut bits: Vec<u8> = Vec::new();
        for (place, line) in lines.into_iter().enumerate() {
            let bit = if place == last {
                hazard
            } else {
                next += 1;
                next - 1
            };
            // A line needs only lines before it.
            let not = line.not.iter().filter_map(|line| bits.get(*line));
            page.links.extend(not.map(|from| (*from, bit)));
            bits.push(bit);
            placed.push(Placed { bit, line });
        }
    }
    let builder = Builder { placed, book };
    for measure in Measure::ALL {
        page.levels.extend(builder.levels(*measure));
    }
    let places = |count: usize| count + 2;
    page.devices = builder.table(places(book.devices.len()), |question, place| match question {
        Question::Device(id) => Some(known(place).map(|at| at == id.index()).into()),
        Question::Reservoir => {
            let device = device(book, place);
            Some(device.map(|device| device.reservoir).into())
        }
        _ => None,
    });
    page.groups = builder.table(places(book.groups.len()), |question, place| match question {
        Question::Group(id) => Some(known(place).map(|at| at == id.index()).into()),
        _ => None,
    });
    page.facts = builder.threes(Fact::ALL.len(), |question| match question {
        Question::Fact(fact) => Some(*fact as usize),
        _ => None,
    });
    page.conditions = builder.threes(MAX_CONDITIONS, |question| match question {
        Question::Condition(id) => Some(id.index()),
        _ => None,
    });
    builder.compared(&mut page);
    let nothing = builder.doubt(|question| (*question == Question::Nothing).then_some(Truth::Unknown));
    page.always = page.always.and(nothing);
    page
}

/// A place in a table, as an identifier's place in the book; `None` for "not known", which comes first.
fn known(place: usize) -> Option<usize> {
    place.checked_sub(1)
}

fn device(book: &Rulebook, place: usize) -> Option<&Device> {
    book.device(DeviceId(u16::try_from(known(place)?).ok()?))
}

struct Builder<'a> {
    placed: Vec<Placed>,
    book: &'a Rulebook,
}

impl Builder<'_> {
    /// Every question that is asked, with the bit of its line and the answer needed.
    fn asked(&self) -> impl Iterator<Item = (u64, &Question, bool)> {
        self.placed.iter().flat_map(|Placed { bit, line }| {
            let answers = line.answers.iter();
            answers.map(|(question, yes)| (1 << *bit, question, *yes))
        })
    }

    /// What these answers leave of each line; a question without an answer here is in another table.
    fn doubt(&self, answer: impl Fn(&Question) -> Option<Truth>) -> Doubt {
        self.asked().fold(Doubt::NONE, |doubt, (line, question, yes)| {
            let Some(answer) = answer(question) else {
                return doubt;
            };
            doubt.and(Doubt::needed(line, if yes { answer } else { !answer }))
        })
    }

    /// A table by places; empty when nobody asks.
    fn table(&self, places: usize, answer: impl Fn(&Question, usize) -> Option<Truth>) -> Vec<Doubt> {
        if self.asked().all(|(_, question, _)| answer(question, 0).is_none()) {
            return Vec::new();
        }
        let doubt = |place| self.doubt(|question| answer(question, place));
        (0..places).map(doubt).collect()
    }

    fn levels(&self, measure: Measure) -> Option<Levels> {
        let answer = |question: &Question, number: Option<f64>| match question {
            Question::Level(asked, comparison, level) if *asked == measure => {
                Some(compare::compare(number, *comparison, Some(*level)))
            }
            Question::Within(asked, range) if *asked == measure => Some(compare::in_range(number, range)),
            _ => None,
        };
        let mut found: Vec<f64> = Vec::new();
        for (_, question, _) in self.asked() {
            match question {
                Question::Level(asked, _, level) if *asked == measure => found.extend(near(*level)),
                Question::Within(asked, range) if *asked == measure => found.extend(ends(range)),
                _ => {}
            }
        }
        found.sort_by(f64::total_cmp);
        let mut levels = Levels {
            measure,
            steps: Vec::new(),
            doubts: vec![self.doubt(|question| answer(question, None))],
        };
        for step in core::iter::once(f64::MIN).chain(found) {
            let doubt = self.doubt(|question| answer(question, Some(step)));
            if levels.doubts.last() != Some(&doubt) || step == f64::MIN {
                levels.steps.push(step);
                levels.doubts.push(doubt);
            }
        }
        levels
            .doubts
            .iter()
            .any(|doubt| *doubt != Doubt::NONE)
            .then_some(levels)
    }

    fn threes(&self, count: usize, place: impl Fn(&Question) -> Option<usize>) -> Vec<Threes> {
        let mut signs = vec![Sign::NONE; count.next_multiple_of(3)];
        for (line, question, yes) in self.asked() {
            let Some(sign) = place(question).and_then(|place| signs.get_mut(place)) else {
                continue;
            };
            if yes {
                sign.yes |= line;
            } else {
                sign.no |= line;
            }
        }
        let (chunks, _) = signs.as_chunks();
        (0..)
            .step_by(3)
            .zip(chunks)
            .filter(|(_, signs)| signs.iter().any(|sign| *sign != Sign::NONE))
            .map(|(shift, signs)| Threes {
                shift,
                signs: *signs,
                doubts: by_three(*signs),
            })
            .collect()
    }

    /// Comparisons of two observed numbers, each once.
    fn compared(&self, page: &mut Page) {
        let mut seen: Vec<Question> = Vec::new();
        for (_, question, _) in self.asked() {
            if seen.contains(question) {
                continue;
            }
            let doubt = |answer| self.doubt(|asked| (asked == question).then_some(answer));
            let [unknown, yes, no] = [Truth::Unknown, Truth::True, Truth::False].map(doubt);
            match question {
                Question::Pair(left, comparison, right) => page.pairs.push(Pair {
                    left: *left,
                    comparison: *comparison,
                    right: *right,
                    doubts: [unknown, yes, no, Doubt::NONE],
                }),
                Question::DeviceFlow(measure, comparison, end) => {
                    let (below, above) = match comparison {
                        Comparison::Less => (yes, no),
                        _ => (no, yes),
                    };
                    page.limits.push(Limits {
                        measure: *measure,
                        comparison: *comparison,
                        end: *end,
                        steps: self.limits(*comparison, *end),
                        doubts: [unknown, below, unknown, above],
                    });
                }
                _ => continue,
            }
            seen.push(*question);
        }
    }

    fn limits(&self, comparison: Comparison, end: End) -> Vec<[f64; 2]> {
        let step = |limits: Range<Flow>| {
            let limit = match end {
                End::Least => limits.low,
                End::Most => limits.high,
            };
            let [from, past] = near(limit.value()?.as_litres_per_minute());
            Some(if comparison == Comparison::Less {
                from
            } else {
                past
            })
        };
        let groups = self.book.groups.len();
        let mut steps = Vec::new();
        for place in 0..self.book.devices.len() + 2 {
            let Some(device) = device(self.book, place) else {
                steps.extend(vec![NO_LIMIT; groups + 2]);
                continue;
            };
            let of = |group: usize| {
                u16::try_from(group)
                    .ok()
                    .and_then(|id| step(device.flow_for(GroupId(id))))
            };
            // Of a patient of unknown group it is known when it is the same for all.
            let all = (0..groups)
                .map(of)
                .reduce(|one, other| one.zip(other).map(|_| 0.0));
            let known = all.flatten().map(|_| {
                let each = || (0..groups).filter_map(of);
                [
                    each().fold(f64::INFINITY, f64::min),
                    each().fold(f64::NEG_INFINITY, f64::max),
                ]
            });
            steps.push(known.unwrap_or(NO_LIMIT));
            // The last place is that of a group of another book.
            steps.extend((0..=groups).map(|group| of(group).map_or(NO_LIMIT, |step| [step; 2])));
        }
        steps
    }
}

/// Whether a guard of these lines can be looked up: a flow that must equal a device's limit, where groups' limits differ
/// and the group may be unknown, has more steps than a table of limits holds.
pub(super) fn fits(lines: &[Line]) -> bool {
    let answers = lines.iter().flat_map(|line| &line.answers);
    lines.len() <= 64
        && !answers
            .into_iter()
            .any(|(question, _)| matches!(question, Question::DeviceFlow(_, Comparison::Equal, _)))
}

fn ends(range: &Value) -> impl Iterator<Item = f64> {
    let (low, high) = compare::ends(range).unwrap_or_default();
    low.into_iter().chain(high).flat_map(near)
}
