//! Backs come behind their fronts, whichever way the printer turns the paper.

use oxyfolio::book::CardSize;
use oxyfolio::cards::Paper;
use oxyfolio::cards::format::{of_card, of_paper};
use oxyfolio::cards::impose::{Backs, Imposition, Shift};

use super::common;
use super::pdf;
use super::printed::sizes;

fn every(mut look: impl FnMut(CardSize, Paper, Backs, &Imposition)) {
    for size in CardSize::ALL {
        for paper in Paper::ALL {
            for backs in Backs::ALL {
                let page = of_paper(paper).unwrap();
                let placed = Imposition::new(&of_card(size), &page, backs, true, Shift::default()).unwrap();
                look(size, paper, backs, &placed);
            }
        }
    }
}

#[test]
fn pieces_lie_apart_and_inside_the_margin() {
    every(|size, _, _, placed| {
        let (w, h) = (placed.piece_width, placed.piece_height);
        for (index, slot) in placed.slots.iter().enumerate() {
            let (x, y) = (slot.front.x, slot.front.y);
            assert!(x >= 5.99 && y >= 5.99, "{size:?}");
            assert!(
                x + w <= placed.width - 5.99 && y + h <= placed.height - 5.99,
                "{size:?}"
            );
            for other in &placed.slots[index + 1..] {
                let apart = (other.front.x - x).abs() >= w + 1.99 || (other.front.y - y).abs() >= h + 1.99;
                assert!(apart, "{size:?}: two cards overlap or leave no room for marks");
            }
        }
    });
}

/// Paper is a thing: turned about an axis, the point at x of its back lies behind the point at width − x of its front.
#[test]
fn the_back_of_each_card_lies_behind_its_front() {
    every(|size, _, backs, placed| {
        let card = of_card(size);
        // The long edge stands upright unless the paper lies on its side.
        let upright = placed.height >= placed.width;
        for slot in &placed.slots {
            let (x, y) = (slot.back.x, slot.back.y);
            let (behind_x, behind_y, on_its_head) = match backs {
                Backs::Fold => {
                    // Folded back about the lower edge of the front.
                    let fold = slot.front.y + card.height_mm;
                    (x, 2.0 * fold - y - card.height_mm, true)
                }
                Backs::LongEdge if upright => (placed.width - x - card.width_mm, y, false),
                Backs::ShortEdge if !upright => (placed.width - x - card.width_mm, y, false),
                _ => (x, placed.height - y - card.height_mm, true),
            };
            assert!((behind_x - slot.front.x).abs() < 1e-9, "{size:?} {backs:?}");
            assert!((behind_y - slot.front.y).abs() < 1e-9, "{size:?} {backs:?}");
            // Turned about the other axis the paper's top comes to its foot: the back must stand on its head there, to be
            // upright when the cut card is turned like a page.
            assert_eq!(placed.back_turned, on_its_head, "{size:?} {backs:?}");
        }
    });
}

#[test]
fn a_shift_moves_the_backs_and_nothing_else() {
    let (card, page) = (of_card(CardSize::Id1), of_paper(Paper::A4).unwrap());
    for backs in [Backs::LongEdge, Backs::ShortEdge] {
        let still = Imposition::new(&card, &page, backs, true, Shift::default()).unwrap();
        let moved = Imposition::new(&card, &page, backs, true, Shift { x: 1.5, y: -2.0 }).unwrap();
        for (a, b) in still.slots.iter().zip(&moved.slots) {
            assert_eq!(a.front, b.front);
            assert!((b.back.x - a.back.x - 1.5).abs() < 1e-9 && (b.back.y - a.back.y + 2.0).abs() < 1e-9);
        }
    }
}

#[test]
fn ten_small_cards_go_on_a4_and_nine_on_letter() {
    for (paper, count) in [(Paper::A4, 10), (Paper::Letter, 9)] {
        let page = of_paper(paper).unwrap();
        let placed = Imposition::new(
            &of_card(CardSize::Id1),
            &page,
            Backs::LongEdge,
            true,
            Shift::default(),
        );
        assert_eq!(placed.unwrap().count(), count);
    }
}

/// The outlines of the cards as they are printed: those of a back page, seen through the paper, lie on those of its front.
#[test]
fn printed_backs_lie_behind_printed_fronts() {
    let folder = tempfile::tempdir().unwrap();
    for (backs, shift, stated) in [
        (
            "long-edge",
            "0,0",
            "turn on the long edge, shift 0 mm to the right, 0 mm down",
        ),
        (
            "short-edge",
            "1.5,-2",
            "turn on the short edge, shift 1.5 mm to the right, −2 mm down",
        ),
    ] {
        let out = folder.path().join(backs);
        let output = common::oxyfolio(&[
            "cards",
            "--size",
            "a7",
            "--paper",
            "a4",
            "--backs",
            backs,
            "--back-shift",
            shift,
            "--out",
            out.to_str().unwrap(),
        ]);
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
        let file = out.join("cards-a7-a4.pdf");
        let (width, height) = sizes()[2].2;
        let (dx, dy) = shift.split_once(',').unwrap();
        let (dx, dy): (f64, f64) = (dx.parse().unwrap(), dy.parse().unwrap());
        let pages = pdf::of(&file);
        let boxes = pdf::boxes(&file);
        assert!(
            pages.len() > 2 && pages.len().is_multiple_of(2),
            "fronts and backs alternate"
        );
        let mut compared = 0;
        for (pair, page) in pages.chunks(2).zip(&boxes) {
            let cards = |page: &pdf::Drawn| -> Vec<(f64, f64)> {
                page.strokes
                    .iter()
                    .filter(|stroke| (stroke[2] - width).abs() < 0.1 && (stroke[3] - height).abs() < 0.1)
                    .map(|stroke| (stroke[0], stroke[1]))
                    .collect()
            };
            let fronts = cards(&pair[0]);
            let upright = page.1 >= page.0;
            for (x, y) in cards(&pair[1]) {
                // PDF counts from below.
                let (x, y) = (x - dx, y + dy);
                let behind = if (backs == "long-edge") == upright {
                    (page.0 - x - width, y)
                } else {
                    (x, page.1 - y - height)
                };
                assert!(
                    fronts
                        .iter()
                        .any(|front| (front.0 - behind.0).abs() < 0.05 && (front.1 - behind.1).abs() < 0.05),
                    "{backs}: nothing before the back at {x}, {y}"
                );
                compared += 1;
            }
        }
        assert!(compared > 20, "{compared}");
        let text = common::poppler("pdftotext", &["-layout"], &file);
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains(stated), "{backs}");
    }
}

#[test]
fn folded_backs_stand_below_their_fronts() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().to_str().unwrap();
    let output = common::oxyfolio(&[
        "cards", "--size", "id-1", "--paper", "letter", "--backs", "fold", "--out", out,
    ]);
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let file = folder.path().join("cards-id-1-letter.pdf");
    let (width, height) = sizes()[0].2;
    let mut pairs = 0;
    for page in pdf::of(&file) {
        let cards: Vec<(f64, f64)> = page
            .strokes
            .iter()
            .filter(|stroke| (stroke[2] - width).abs() < 0.1 && (stroke[3] - height).abs() < 0.1)
            .map(|stroke| (stroke[0], stroke[1]))
            .collect();
        pairs += cards
            .iter()
            .filter(|front| {
                cards
                    .iter()
                    .any(|back| (back.0 - front.0).abs() < 0.05 && (back.1 + height - front.1).abs() < 0.05)
            })
            .count();
    }
    assert!(pairs > 20, "{pairs}");
}
