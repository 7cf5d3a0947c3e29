//! The sizes of type in a PDF, in points on paper: font size times the scale of the text and page matrices.

use std::path::Path;

use lopdf::{Document, Object, content::Content};

type Matrix = [f64; 6];
const UNIT: Matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];

/// The size of every run of text that is shown.
pub fn of(file: &Path) -> Vec<f64> {
    let document = Document::load(file).unwrap();
    let mut sizes = Vec::new();
    for page in document.get_pages().into_values() {
        let bytes = document.get_page_content(page);
        let resources = document.get_dictionary(page).unwrap().get(b"Resources").ok();
        let resources = resources
            .and_then(|found| document.dereference(found).ok())
            .map(|(_, found)| found.clone());
        walk(&document, &bytes, resources.as_ref(), UNIT, &mut sizes);
    }
    sizes
}

fn walk(document: &Document, bytes: &[u8], resources: Option<&Object>, start: Matrix, sizes: &mut Vec<f64>) {
    let (mut page, mut saved) = (start, Vec::new());
    let (mut text, mut size) = (UNIT, 0.0);
    for operation in Content::decode(bytes).unwrap().operations {
        let number = |index: usize| f64::from(operation.operands[index].as_float().unwrap());
        let matrix = || [0, 1, 2, 3, 4, 5].map(number);
        match operation.operator.as_str() {
            "q" => saved.push(page),
            "Q" => page = saved.pop().unwrap_or(start),
            "cm" => page = times(matrix(), page),
            "BT" => text = UNIT,
            "Tm" => text = matrix(),
            "Tf" => size = number(1),
            "Tj" | "TJ" => sizes.push(size * scale(times(text, page))),
            "Do" => {
                let name = operation.operands[0].as_name().unwrap();
                if let Some(form) = form(document, resources, name) {
                    let inner = form.dict.get(b"Resources").ok();
                    let inner = inner
                        .and_then(|found| document.dereference(found).ok())
                        .map(|(_, found)| found);
                    walk(
                        document,
                        &form.decompressed_content().unwrap(),
                        inner.or(resources),
                        page,
                        sizes,
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
