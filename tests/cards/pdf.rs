//! What a PDF draws: the sizes of type in points on paper, the shades of letters, and the boxes of strokes.

use std::path::Path;

use lopdf::{Document, Object, content::Content};

type Matrix = [f64; 6];
const UNIT: Matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];

/// What one page draws.
#[derive(Default)]
pub struct Drawn {
    /// The size of every run of text.
    pub sizes: Vec<f64>,
    /// The lightness of every run of text: 0 black, 1 white; colours are an error.
    pub shades: Vec<f64>,
    /// The boxes of stroked paths, in millimetres: left, bottom, width, height.
    pub strokes: Vec<[f64; 4]>,
}

/// Every page of a file.
pub fn of(file: &Path) -> Vec<Drawn> {
    let document = Document::load(file).unwrap();
    document
        .get_pages()
        .into_values()
        .map(|page| {
            let mut drawn = Drawn::default();
            let bytes = document.get_page_content(page);
            let resources = document.get_dictionary(page).unwrap().get(b"Resources").ok();
            let resources = resources
                .and_then(|found| document.dereference(found).ok())
                .map(|(_, found)| found.clone());
            walk(&document, &bytes, resources.as_ref(), UNIT, &mut drawn);
            drawn
        })
        .collect()
}

fn walk(document: &Document, bytes: &[u8], resources: Option<&Object>, start: Matrix, drawn: &mut Drawn) {
    let (mut page, mut saved) = (start, Vec::new());
    let (mut text, mut size, mut shade) = (UNIT, 0.0, 0.0);
    let mut path: Vec<(f64, f64)> = Vec::new();
    for operation in Content::decode(bytes).unwrap().operations {
        let number = |index: usize| f64::from(operation.operands[index].as_float().unwrap());
        let matrix = || [0, 1, 2, 3, 4, 5].map(number);
        match operation.operator.as_str() {
            "q" => saved.push((page, shade)),
            "Q" => (page, shade) = saved.pop().unwrap_or((start, 0.0)),
            "cm" => page = times(matrix(), page),
            "BT" => text = UNIT,
            "Tm" => text = matrix(),
            "Tf" => size = number(1),
            "g" => shade = number(0),
            "sc" | "scn" => match operation.operands.len() {
                1 => shade = operation.operands[0].as_float().map_or(shade, f64::from),
                3 => {
                    assert!(
                        (number(0) - number(1)).abs() < 1e-3 && (number(1) - number(2)).abs() < 1e-3,
                        "a colour"
                    );
                    shade = number(0);
                }
                _ => {}
            },
            "rg" => {
                assert!(
                    (number(0) - number(1)).abs() < 1e-3 && (number(1) - number(2)).abs() < 1e-3,
                    "a colour"
                );
                shade = number(0);
            }
            "Tj" | "TJ" => {
                drawn.sizes.push(size * scale(times(text, page)));
                drawn.shades.push(shade);
            }
            "m" | "l" => path.push(point(page, number(0), number(1))),
            "c" => path.push(point(page, number(4), number(5))),
            "re" => {
                path.push(point(page, number(0), number(1)));
                path.push(point(page, number(0) + number(2), number(1) + number(3)));
            }
            "S" | "s" | "B" | "b" => {
                drawn.strokes.push(bounds(&path));
                path.clear();
            }
            "f" | "F" | "f*" | "n" => path.clear(),
            "Do" => {
                let name = operation.operands[0].as_name().unwrap();
                if let Some(form) = form(document, resources, name) {
                    let inner = form.dict.get(b"Resources").ok();
                    let inner = inner
                        .and_then(|found| document.dereference(found).ok())
                        .map(|(_, found)| found);
                    let matrix = form
                        .dict
                        .get(b"Matrix")
                        .ok()
                        .and_then(|found| found.as_array().ok());
                    let matrix = matrix.map_or(UNIT, |found| {
                        [0, 1, 2, 3, 4, 5].map(|index| f64::from(found[index].as_float().unwrap()))
                    });
                    walk(
                        document,
                        &form.decompressed_content().unwrap(),
                        inner.or(resources),
                        times(matrix, page),
                        drawn,
                    );
                }
            }
            _ => {}
        }
    }
}

fn form<'a>(document: &'a Document, resources: Option<&'a Object>, name: &[u8]) -> Option<&'a lopdf::Stream> {
    let objects = resources?.as_dict().ok()?.get(b"XObject").ok()?;
    let (_, objects) = document.dereference(objects).ok()?;
    let (_, found) = document
        .dereference(objects.as_dict().ok()?.get(name).ok()?)
        .ok()?;
    let stream = found.as_stream().ok()?;
    (stream.dict.get(b"Subtype").ok()?.as_name().ok()? == b"Form").then_some(stream)
}

fn times(a: Matrix, b: Matrix) -> Matrix {
    [
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    ]
}

/// How much longer the matrix makes an upright letter.
fn scale(matrix: Matrix) -> f64 {
    matrix[2].hypot(matrix[3])
}

fn point(matrix: Matrix, x: f64, y: f64) -> (f64, f64) {
    (
        x * matrix[0] + y * matrix[2] + matrix[4],
        x * matrix[1] + y * matrix[3] + matrix[5],
    )
}

fn bounds(path: &[(f64, f64)]) -> [f64; 4] {
    let mm = 25.4 / 72.0;
    let fold = |pick: fn(&(f64, f64)) -> f64| {
        path.iter()
            .map(pick)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                (low.min(value), high.max(value))
            })
    };
    let (left, right) = fold(|at| at.0);
    let (bottom, top) = fold(|at| at.1);
    [left * mm, bottom * mm, (right - left) * mm, (top - bottom) * mm]
}

/// The sides of every page, in millimetres.
pub fn boxes(file: &Path) -> Vec<(f64, f64)> {
    let document = Document::load(file).unwrap();
    let pages = document.get_pages();
    pages
        .into_values()
        .map(|page| {
            let page = document.get_dictionary(page).unwrap();
            let media = page.get(b"MediaBox").unwrap().as_array().unwrap();
            let side = |index: usize| f64::from(media[index].as_float().unwrap()) * 25.4 / 72.0;
            (side(2) - side(0), side(3) - side(1))
        })
        .collect()
}
