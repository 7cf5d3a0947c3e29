//! One source file with many mutants in it, each asleep until it is asked for by number.
//!
//! Where an operator is mutated, both sides are worked out once and the number decides what is done with them, so nested
//! mutants don't multiply the text. Every piece that is put in stands on lines of its own: what the compiler says of a line
//! is said of the mutants noted for it.

use std::collections::BTreeMap;

use syn::spanned::Spanned;
use syn::visit::{self, Visit};

use crate::mutant::Mutant;

/// A file with its mutants, and which lines each of them wrote.
pub struct Woven {
    pub text: String,
    /// Mutants by line, from 1. A line of one mutant is its own arm.
    pub lines: Vec<Vec<usize>>,
    /// Whose place was not found.
    pub lost: Vec<usize>,
}

struct Edit {
    at: usize,
    /// How many bytes of the old text go.
    goes: usize,
    closes: bool,
    pieces: Vec<(String, Vec<usize>)>,
}

struct Weaver<'a> {
    text: &'a str,
    mutants: &'a BTreeMap<usize, Mutant>,
    /// Numbers of the mutants that begin at a byte, with the byte where they end.
    begin: BTreeMap<usize, Vec<(usize, usize)>>,
    edits: Vec<Edit>,
    placed: Vec<usize>,
    /// Whether the match that is visited would still compile without an arm.
    arms_may_go: bool,
}

/// Weaves the mutants of one file, by number, into its text.
pub fn weave(text: &str, mutants: &BTreeMap<usize, Mutant>) -> Result<Woven, String> {
    let file = syn::parse_file(text).map_err(|error| error.to_string())?;
    let mut begin: BTreeMap<usize, Vec<(usize, usize)>> = BTreeMap::new();
    for (number, mutant) in mutants {
        let span = (mutant.span.start.byte(text), mutant.span.end.byte(text));
        begin.entry(span.0).or_default().push((*number, span.1));
    }
    let mut weaver = Weaver {
        text,
        mutants,
        begin,
        edits: Vec::new(),
        placed: Vec::new(),
        arms_may_go: false,
    };
    weaver.functions();
    weaver.visit_file(&file);
    let Weaver {
        mut edits, placed, ..
    } = weaver;
    // Stable: at one place the outer opens before the inner, and the inner closes before the outer.
    edits.sort_by_key(|edit| (edit.at, !edit.closes));
    let lost = mutants
        .keys()
        .copied()
        .filter(|number| !placed.contains(number))
        .collect();
    let (text, lines) = written(text, &edits);
    Ok(Woven { text, lines, lost })
}

fn written(text: &str, edits: &[Edit]) -> (String, Vec<Vec<usize>>) {
    let (mut out, mut noted, mut from) = (String::new(), Vec::<(usize, Vec<usize>)>::new(), 0);
    for edit in edits {
        out.push_str(&text[from..edit.at]);
        from = edit.at + edit.goes;
        for (piece, numbers) in &edit.pieces {
            out.push('\n');
            let first = out.matches('\n').count() + 1;
            out.push_str(piece);
            let last = out.matches('\n').count() + 1;
            noted.extend((first..=last).map(|line| (line, numbers.clone())));
        }
        out.push('\n');
    }
    out.push_str(&text[from..]);
    let mut lines = vec![Vec::new(); out.matches('\n').count() + 2];
    for (line, numbers) in noted {
        lines[line].extend(numbers);
    }
    (out, lines)
}

fn any_of(numbers: &[usize]) -> String {
    let each: Vec<_> = numbers.iter().map(|number| format!("n != {number}")).collect();
    each.join(" && ")
}

fn holds_let(expr: &syn::Expr) -> bool {
    match expr {
        syn::Expr::Let(_) => true,
        syn::Expr::Binary(binary) => holds_let(&binary.left) || holds_let(&binary.right),
        _ => false,
    }
}

impl Weaver<'_> {
    /// Mutants of a kind that begin at a place.
    fn at(&mut self, at: usize, genre: &str) -> Vec<usize> {
        let here = self.begin.get(&at).into_iter().flatten();
        let found: Vec<usize> = here
            .map(|(number, _)| *number)
            .filter(|number| self.mutants[number].genre == genre)
            .collect();
        self.placed.extend(&found);
        found
    }

    fn put(&mut self, at: usize, goes: usize, closes: bool, pieces: Vec<(String, Vec<usize>)>) {
        self.edits.push(Edit {
            at,
            goes,
            closes,
            pieces,
        });
    }

    /// A body that gives something else begins with going back at once.
    fn functions(&mut self) {
        for (at, here) in self.begin.clone() {
            let mut pieces = Vec::new();
            for (number, _) in here {
                let mutant = &self.mutants[&number];
                if mutant.genre == "FnValue" {
                    let back = format!(
                        "if crate::woven::is({number}) {{ return {}; }}",
                        mutant.replacement
                    );
                    pieces.push((back, vec![number]));
                    self.placed.push(number);
                }
            }
            if !pieces.is_empty() {
                self.put(at, 0, false, pieces);
            }
        }
    }

    /// The arms of a choice among mutants: first what the text says itself.
    fn arms(
        &self,
        numbers: &[usize],
        unchanged: &str,
        write: impl Fn(&str) -> String,
    ) -> Vec<(String, Vec<usize>)> {
        let head = format!(
            "match crate::woven::on() {{ n if {} => {{ {unchanged} }}",
            any_of(numbers)
        );
        let mut pieces = vec![(head, numbers.to_vec())];
        for number in numbers {
            let arm = format!("{number} => {{ {} }}", write(&self.mutants[number].replacement));
            pieces.push((arm, vec![*number]));
        }
        pieces.push(("_ => loop {} }".into(), numbers.to_vec()));
        pieces
    }

    fn lazy(&mut self, node: &syn::ExprBinary, numbers: &[usize], and: bool) {
        // `||` beside `let` is no Rust: cargo-mutants itself says so of it.
        if holds_let(&node.left) || holds_let(&node.right) {
            self.placed.retain(|placed| !numbers.contains(placed));
            visit::visit_expr_binary(self, node);
            return;
        }
        let (whole, op) = (node.span().byte_range(), node.op.span().byte_range());
        let number = numbers[0];
        let (middle, end) = if and {
            (
                format!(") {{ l => if l != crate::woven::is({number}) {{"),
                "} else { l } })",
            )
        } else {
            (
                format!(") {{ l => if l != crate::woven::is({number}) {{ l }} else {{"),
                "} })",
            )
        };
        self.put(whole.start, 0, false, vec![("(match (".into(), numbers.to_vec())]);
        self.put(op.start, op.len(), false, vec![(middle, numbers.to_vec())]);
        visit::visit_expr_binary(self, node);
        self.put(whole.end, 0, true, vec![(end.into(), numbers.to_vec())]);
    }

    fn eager(&mut self, node: &syn::ExprBinary, numbers: &[usize], compares: bool) {
        let (whole, op) = (node.span().byte_range(), node.op.span().byte_range());
        let sign = self.text[op.clone()].to_owned();
        let (refer, star) = if compares { ("&", "*") } else { ("", "") };
        let all = numbers.to_vec();
        self.put(
            whole.start,
            0,
            false,
            vec![(format!("(match ({refer}("), all.clone())],
        );
        self.put(
            op.start,
            op.len(),
            false,
            vec![(format!("), {refer}("), all.clone())],
        );
        visit::visit_expr_binary(self, node);
        let mut close = vec![(")) { (l, r) => ".to_owned(), all.clone())];
        close.extend(self.arms(numbers, &format!("{star}l {sign} {star}r"), |new| {
            format!("{star}l {new} {star}r")
        }));
        close.push(("})".into(), all));
        self.put(whole.end, 0, true, close);
    }

    fn assigning(&mut self, node: &syn::ExprBinary, numbers: &[usize]) {
        let whole = node.span().byte_range();
        let left = self.text[node.left.span().byte_range()].to_owned();
        let right = self.text[node.right.span().byte_range()].to_owned();
        let mut open = vec![("(match crate::woven::on() {".to_owned(), numbers.to_vec())];
        for number in numbers {
            let arm = format!(
                "{number} => {{ {left} {} {right} }}",
                self.mutants[number].replacement
            );
            open.push((arm, vec![*number]));
        }
        // What the text says itself stands last, where it can go on being woven.
        open.push(("_ => {".into(), numbers.to_vec()));
        self.put(whole.start, 0, false, open);
        visit::visit_expr_binary(self, node);
        self.put(whole.end, 0, true, vec![("} })".into(), numbers.to_vec())]);
    }
}

impl<'ast> Visit<'ast> for Weaver<'_> {
    fn visit_expr_binary(&mut self, node: &'ast syn::ExprBinary) {
        use syn::BinOp as Op;
        let numbers = self.at(node.op.span().byte_range().start, "BinaryOperator");
        if numbers.is_empty() {
            return visit::visit_expr_binary(self, node);
        }
        match node.op {
            Op::And(_) => self.lazy(node, &numbers, true),
            Op::Or(_) => self.lazy(node, &numbers, false),
            Op::Eq(_) | Op::Ne(_) | Op::Lt(_) | Op::Le(_) | Op::Gt(_) | Op::Ge(_) => {
                self.eager(node, &numbers, true)
            }
            Op::Add(_)
            | Op::Sub(_)
            | Op::Mul(_)
            | Op::Div(_)
            | Op::Rem(_)
            | Op::BitAnd(_)
            | Op::BitOr(_)
            | Op::BitXor(_)
            | Op::Shl(_)
            | Op::Shr(_) => self.eager(node, &numbers, false),
            _ => self.assigning(node, &numbers),
        }
    }

    fn visit_expr_unary(&mut self, node: &'ast syn::ExprUnary) {
        let (whole, op) = (node.span().byte_range(), node.op.span().byte_range());
        let numbers = self.at(op.start, "UnaryOperator");
        let Some(number) = numbers.first() else {
            return visit::visit_expr_unary(self, node);
        };
        let sign = self.text[op.clone()].to_owned();
        let end = format!(") {{ e => if crate::woven::is({number}) {{ e }} else {{ {sign}e }} }})");
        self.put(
            whole.start,
            op.len(),
            false,
            vec![("(match (".into(), numbers.clone())],
        );
        visit::visit_expr_unary(self, node);
        self.put(whole.end, 0, true, vec![(end, numbers.clone())]);
    }

    fn visit_expr_match(&mut self, node: &'ast syn::ExprMatch) {
        let catches_all = node
            .arms
            .iter()
            .any(|arm| arm.guard.is_none() && matches!(arm.pat, syn::Pat::Wild(_)));
        let before = std::mem::replace(&mut self.arms_may_go, catches_all);
        visit::visit_expr_match(self, node);
        self.arms_may_go = before;
    }

    fn visit_arm(&mut self, node: &'ast syn::Arm) {
        let start = node.span().byte_range().start;
        let gone = if self.arms_may_go {
            self.at(start, "MatchArm")
        } else {
            Vec::new()
        };
        let stays: String = gone
            .iter()
            .map(|number| format!("!crate::woven::is({number})"))
            .collect();
        if let Some((_, guard)) = &node.guard {
            let span = guard.span().byte_range();
            let numbers = self.at(span.start, "MatchArmGuard");
            let all: Vec<usize> = gone.iter().chain(&numbers).copied().collect();
            if !all.is_empty() {
                let mut open = stays.clone();
                if !stays.is_empty() {
                    open.push_str(" && ");
                }
                let mut pieces = vec![(format!("{open} (match crate::woven::on() {{"), all.clone())];
                for number in &numbers {
                    pieces.push((
                        format!("{number} => {},", self.mutants[number].replacement),
                        vec![*number],
                    ));
                }
                pieces.push(("_ => (".into(), all.clone()));
                self.put(span.start, 0, false, pieces);
                visit::visit_arm(self, node);
                self.put(span.end, 0, true, vec![(") })".into(), all)]);
                return;
            }
        } else if !gone.is_empty() {
            let end = node.pat.span().byte_range().end;
            self.put(end, 0, false, vec![(format!("if {stays}"), gone)]);
        }
        visit::visit_arm(self, node);
    }
}
