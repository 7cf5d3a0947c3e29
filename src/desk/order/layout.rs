//! Where the steps of a diagram stand: in rows by how many must come before, with few lines crossing.
//!
//! A line that passes a row gets a narrow place of its own in it, so that no line runs under a step.

use super::graph::Graph;

/// How wide a step is drawn.
pub const WIDE: f64 = 172.0;
/// How high a step is drawn.
pub const HIGH: f64 = 44.0;
/// From row to row.
pub const ROW: f64 = 84.0;
/// How wide the place of a passing line is.
const NARROW: f64 = 14.0;
/// Between places of a row.
const GAP: f64 = 20.0;
/// Around the diagram.
const EDGE: f64 = 12.0;

/// A step or a passing line in its row.
#[derive(Clone, Debug)]
struct Place {
    step: Option<usize>,
    row: usize,
    /// The middle.
    x: f64,
    above: Vec<usize>,
    below: Vec<usize>,
}

impl Place {
    const fn half(&self) -> f64 {
        if self.step.is_some() {
            WIDE / 2.0
        } else {
            NARROW / 2.0
        }
    }
}

/// A finished layout.
#[derive(Clone, Debug, Default)]
pub struct Layout {
    /// The whole width.
    pub width: f64,
    /// The whole height.
    pub height: f64,
    /// The middle of each step's upper edge.
    pub steps: Vec<(f64, f64)>,
    /// The lines.
    pub lines: Vec<Line>,
}

/// A line from a step to one that must wait for it.
#[derive(Clone, Debug)]
pub struct Line {
    /// The step it comes from.
    pub from: usize,
    /// The step it leads to.
    pub to: usize,
    /// The points it goes through.
    pub points: Vec<(f64, f64)>,
}

/// Lays out a procedure.
pub fn layout(graph: &Graph) -> Layout {
    let depths = graph.depths();
    let mut places: Vec<Place> = depths
        .iter()
        .enumerate()
        .map(|(step, row)| Place {
            step: Some(step),
            row: *row,
            x: 0.0,
            above: Vec::new(),
            below: Vec::new(),
        })
        .collect();
    let mut ways: Vec<(usize, usize, Vec<usize>)> = Vec::new();
    for (from, to) in graph.lines() {
        let row = |step: usize| depths.get(step).copied().unwrap_or(0);
        let mut way = vec![from];
        for row in row(from) + 1..row(to) {
            places.push(Place {
                step: None,
                row,
                x: 0.0,
                above: Vec::new(),
                below: Vec::new(),
            });
            way.push(places.len() - 1);
        }
        way.push(to);
        for pair in way.windows(2) {
            if let &[upper, lower] = pair {
                if let Some(place) = places.get_mut(upper) {
                    place.below.push(lower);
                }
                if let Some(place) = places.get_mut(lower) {
                    place.above.push(upper);
                }
            }
        }
        ways.push((from, to, way));
    }
    let rows = arranged(&mut places);
    finished(&places, &rows, ways, graph.steps.len())
}

/// Orders each row by its neighbours' middles, down and up again, then moves each place toward them.
fn arranged(places: &mut [Place]) -> Vec<Vec<usize>> {
    let count = places.iter().map(|place| place.row + 1).max().unwrap_or(0);
    let mut rows: Vec<Vec<usize>> = vec![Vec::new(); count];
    for (index, place) in places.iter().enumerate() {
        if let Some(row) = rows.get_mut(place.row) {
            row.push(index);
        }
    }
    for row in &rows {
        packed(places, row);
    }
    for sweep in 0..8 {
        let is_down = sweep % 2 == 0;
        let mut order: Vec<usize> = (0..count).collect();
        if !is_down {
            order.reverse();
        }
        for row in order {
            let Some(row) = rows.get_mut(row) else {
                continue;
            };
            let mut wanted: Vec<(f64, usize)> = row
                .iter()
                .map(|index| (wish(places, *index, is_down), *index))
                .collect();
            wanted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            *row = wanted.into_iter().map(|(_, index)| index).collect();
            packed(places, row);
        }
    }
    for sweep in 0..12 {
        for row in &rows {
            let wishes: Vec<f64> = row
                .iter()
                .map(|index| {
                    let both = (wish(places, *index, true), wish(places, *index, false));
                    if sweep % 2 == 0 {
                        both.0
                    } else {
                        f64::midpoint(both.0, both.1)
                    }
                })
                .collect();
            moved(places, row, &wishes);
        }
    }
    rows
}

/// The middle of the neighbours above or below; its own where it has none.
fn wish(places: &[Place], index: usize, above: bool) -> f64 {
    let Some(place) = places.get(index) else {
        return 0.0;
    };
    let neighbours = if above { &place.above } else { &place.below };
    let middles: Vec<f64> = neighbours
        .iter()
        .filter_map(|other| places.get(*other))
        .map(|other| other.x)
        .collect();
    if middles.is_empty() {
        place.x
    } else {
        middles.iter().sum::<f64>() / middles.len() as f64
    }
}

/// Puts a row's places beside each other, around the middle.
fn packed(places: &mut [Place], row: &[usize]) {
    let half = |places: &[Place], index: usize| places.get(index).map_or(0.0, Place::half);
    let width: f64 = row.iter().map(|index| half(places, *index) * 2.0 + GAP).sum();
    let mut x = -width / 2.0;
    for &index in row {
        let half = half(places, index);
        if let Some(place) = places.get_mut(index) {
            place.x = x + half;
        }
        x += half * 2.0 + GAP;
    }
}

/// Moves a row's places toward what they wish, none over another: from the left and from the right, and between.
fn moved(places: &mut [Place], row: &[usize], wishes: &[f64]) {
    let halves: Vec<f64> = row
        .iter()
        .map(|index| places.get(*index).map_or(0.0, Place::half))
        .collect();
    let mut from_left = Vec::new();
    let mut least = f64::NEG_INFINITY;
    for (wish, half) in wishes.iter().zip(&halves) {
        let x = wish.max(least + half);
        from_left.push(x);
        least = x + half + GAP;
    }
    let mut from_right = Vec::new();
    let mut most = f64::INFINITY;
    for (wish, half) in wishes.iter().zip(&halves).rev() {
        let x = wish.min(most - half);
        from_right.push(x);
        most = x - half - GAP;
    }
    from_right.reverse();
    for ((index, left), right) in row.iter().zip(from_left).zip(from_right) {
        if let Some(place) = places.get_mut(*index) {
            place.x = f64::midpoint(left, right);
        }
    }
}

fn finished(
    places: &[Place],
    rows: &[Vec<usize>],
    ways: Vec<(usize, usize, Vec<usize>)>,
    steps: usize,
) -> Layout {
    let left = places
        .iter()
        .map(|place| place.x - place.half())
        .fold(0.0, f64::min);
    let right = places
        .iter()
        .map(|place| place.x + place.half())
        .fold(0.0, f64::max);
    let at = |index: usize| {
        places.get(index).map_or((0.0, 0.0), |place| {
            (place.x - left + EDGE, EDGE + place.row as f64 * ROW)
        })
    };
    let lines = ways
        .into_iter()
        .map(|(from, to, way)| {
            let last = way.len().saturating_sub(1);
            let mut points = Vec::new();
            for (number, index) in way.into_iter().enumerate() {
                let (x, y) = at(index);
                // Out at the foot, in at the head, straight through a row that is passed.
                if number > 0 {
                    points.push((x, y));
                }
                if number < last {
                    points.push((x, y + HIGH));
                }
            }
            Line { from, to, points }
        })
        .collect();
    Layout {
        width: right - left + 2.0 * EDGE,
        height: rows.len().saturating_sub(1) as f64 * ROW + HIGH + 2.0 * EDGE,
        steps: (0..steps).map(at).collect(),
        lines,
    }
}
