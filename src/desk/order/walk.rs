//! An order that isn't safe, walked step by step: what each step does to the equipment, up to the one that does harm.

use maud::{Markup, html};

use super::super::{
    chapter,
    query::{Query, escaped},
    reading::Reading,
};
use super::drawing::Shown;
use crate::book::{Kind, Procedure, Rulebook, Step, StepId};
use crate::compile::{
    proof::{Unsafe, Wrong},
    render::visible,
};
use crate::equipment::{Known, Part, State};

/// A walk, and how far it has come.
pub struct Walk<'a> {
    reading: &'a Reading,
    book: &'a Rulebook,
    procedure: &'a Procedure,
    /// All walks of the procedure.
    all: Vec<&'a Unsafe>,
    /// Which of them.
    which: usize,
    one: &'a Unsafe,
    /// The step that is looked at, counted from 0.
    at: usize,
}

impl<'a> Walk<'a> {
    /// The walk that is asked for; none where every order is safe, or where none can be tried.
    pub fn asked(reading: &'a Reading, id: &str, query: &Query) -> Option<Self> {
        let book = reading.book.as_ref()?;
        let procedure = book.procedure(book.find_procedure(id)?)?;
        let mut all: Vec<&Unsafe> = reading
            .unsafe_orders()
            .iter()
            .filter(|one| {
                book.procedure(one.procedure)
                    .is_some_and(|own| own.rule.id == procedure.rule.id)
            })
            .collect();
        // What can be shown on the equipment says more than which step relies on which.
        all.sort_by_key(|one| one.begun.is_none());
        let number = |name: &str| query.get(name).and_then(|text| text.parse::<usize>().ok());
        let which = number("walk").unwrap_or(1).clamp(1, all.len().max(1)) - 1;
        let one = all.get(which).copied()?;
        let last = one.steps.len().max(1);
        let at = number("at").unwrap_or(last).clamp(1, last) - 1;
        Some(Self {
            reading,
            book,
            procedure,
            all,
            which,
            one,
            at,
        })
    }

    /// How the diagram marks it.
    pub fn shown(&self) -> Shown {
        let places = self.one.steps.iter().map(|step| step.index());
        Shown {
            done: places.clone().take(self.at).collect(),
            now: places.clone().nth(self.at),
            is_wrong: self.at + 1 == self.one.steps.len(),
        }
    }

    fn step(&self, id: StepId) -> Option<&'a Step> {
        self.procedure.steps.get(id.index())
    }

    /// The walk as a part of the page.
    pub fn page(&self, id: &str) -> Markup {
        let states = self.states();
        let last = self.one.steps.len().saturating_sub(1);
        html! {
            section.walk aria-labelledby="walk" {
                h2 #walk { "An order that isn't safe, step by step" }
                @if self.all.len() > 1 {
                    p {
                        "There are " (self.all.len()) ": "
                        @for number in 1..=self.all.len() {
                            a href=(address(id, number, None)) aria-current=[(number == self.which + 1).then_some("true")] { (number) } " "
                        }
                    }
                }
                p { (self.begins()) }
                @if self.one.steps.is_empty() {
                    p.wrong { (self.wrong()) }
                } @else {
                    ol.walked {
                        @for (number, step) in self.one.steps.iter().enumerate() {
                            li.now[number == self.at] aria-current=[(number == self.at).then_some("step")] {
                                @if let Some(step) = self.step(*step) {
                                    a href=(address(id, self.which + 1, Some(number + 1))) { (visible(&step.id)) }
                                    ": " (visible(&step.say))
                                }
                                @if number == last { p.wrong { (self.wrong()) } }
                            }
                        }
                    }
                    p.paces {
                        @if self.at > 0 {
                            a #back href=(address(id, self.which + 1, Some(self.at))) { "One step back" }
                        }
                        " Step " (self.at + 1) " of " (self.one.steps.len()) " "
                        @if self.at < last {
                            a #on href=(address(id, self.which + 1, Some(self.at + 2))) { "One step on" }
                        }
                    }
                    @if let Some(states) = &states { (self.equipment(states)) }
                    (self.mend())
                }
            }
        }
    }

    fn begins(&self) -> Markup {
        let follows = self.one.follows.and_then(|id| self.book.procedure(id));
        let device = self.one.device.and_then(|id| self.book.device(id));
        html! {
            "The procedure allows the order below"
            @if let Some(follows) = follows { ", begun after " em { (visible(&follows.rule.name)) } }
            @if let Some(device) = device { ", with the device " em { (visible(&device.rule.name)) } }
            "."
        }
    }

    /// What is wrong, in the words of the book where it has them.
    fn wrong(&self) -> Markup {
        let hazard = |id| {
            let hazard = self.book.hazard(id);
            html! {
                @if let Some(hazard) = hazard {
                    (visible(&hazard.say)) " "
                    @if let Some(address) = chapter::rule_address(self.reading, Kind::Hazard, &hazard.rule.id) {
                        a href=(address) { "The hazard in its chapter" } "."
                    }
                }
            }
        };
        html! {
            strong { "Harm: " }
            @match &self.one.wrong {
                Wrong::Hazard(id) => (hazard(*id)),
                Wrong::BeginsWith(id) => { "it begins with a state that must never be. " (hazard(*id)) }
                Wrong::Refused(why) => { "this step comes too early: " (visible(why)) }
                Wrong::NeverPossible(why) => { "this step can be done in no order: " (visible(why)) }
                Wrong::UnsafeEnd(why) => { "it ends here, and promises a safe end: " (visible(why)) }
                Wrong::TooEarly(on) => {
                    "this step relies on " code { (self.step(*on).map_or("", |step| &*step.id)) } ", which may come later"
                }
                Wrong::NeverBegins => "it begins only after procedures that never begin",
                Wrong::TooManyOrders => "there are too many orders to try them all",
                Wrong::TooManySteps => "there are too many steps to try all orders",
            }
        }
    }

    fn mend(&self) -> Markup {
        html! {
            @if let Some((later, earlier)) = self.one.forbid {
                @let (later, earlier) = (self.step(later), self.step(earlier));
                @if let (Some(later), Some(earlier)) = (later, earlier) {
                    p.hint {
                        "To forbid it: add " code { (visible(&earlier.id)) } " to the " code { "after" } " of the step "
                        code { (visible(&later.id)) } "."
                    }
                }
            }
        }
    }

    /// The equipment before the first step and after each; the one that is refused changes nothing.
    fn states(&self) -> Option<Vec<State>> {
        let mut state = self.one.begun?;
        let mut states = vec![state];
        for step in &self.one.steps {
            state = state.after(self.step(*step)?.action).unwrap_or(state);
            states.push(state);
        }
        Some(states)
    }

    /// What the equipment is like after the step that is looked at, and what it was like before.
    fn equipment(&self, states: &[State]) -> Markup {
        let says = |at: usize, part: Part| {
            let known = states
                .get(at)
                .map_or(Known::NOTHING, |state| Known::exactly(*state));
            known.words(part).collect::<Vec<_>>().join(" or ")
        };
        html! {
            table.equipment {
                caption { "The equipment after step " (self.at + 1) }
                thead { tr { th scope="col" { "Part" } th scope="col" { "Before the step" } th scope="col" { "After it" } } }
                tbody {
                    @for part in Part::ALL {
                        @let (before, after) = (says(self.at, *part), says(self.at + 1, *part));
                        tr.changed[before != after] {
                            th scope="row" { (part.words()) }
                            td { (before) }
                            td { @if before == after { (after) } @else { strong { (after) } } }
                        }
                    }
                }
            }
        }
    }
}

fn address(id: &str, walk: usize, at: Option<usize>) -> String {
    let at = at.map_or_else(String::new, |at| format!("&at={at}"));
    format!("/order/{}?walk={walk}{at}#walk", escaped(id))
}
