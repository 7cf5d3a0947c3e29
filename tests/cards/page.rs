//! Tags: title, language, headings, table heads, alternatives of images.

use std::process::Command;

use lopdf::{Document, Object};

use super::printed::printed;

/// The roles of a structure tree.
fn roles(document: &Document, object: &Object, found: &mut Vec<String>, depth: usize) {
    let Ok((_, object)) = document.dereference(object) else {
        return;
    };
    if depth > 60 {
        return;
    }
    match object {
        Object::Array(items) => items
            .iter()
            .for_each(|item| roles(document, item, found, depth + 1)),
        Object::Dictionary(fields) => {
            if let Ok(role) = fields.get(b"S").and_then(|role| role.as_name()) {
                let role = String::from_utf8_lossy(role).into_owned();
                if role == "Figure" {
                    assert!(fields.has(b"Alt"), "an image has no words beside it");
                }
                found.push(role);
            }
            if let Ok(kids) = fields.get(b"K") {
                roles(document, kids, found, depth + 1);
            }
        }
        _ => {}
    }
}

/// qpdf reads every object and table of a file and tells whatever is out of order.
#[test]
fn qpdf_finds_nothing_wrong() {
    for printed in printed().values() {
        let output = Command::new("qpdf")
            .arg("--check")
            .arg(&printed.file)
            .output()
            .expect("qpdf is needed (Debian package qpdf)");
        let said = String::from_utf8_lossy(&output.stdout).into_owned();
        let wrong = String::from_utf8_lossy(&output.stderr).into_owned();
        // Warnings end it with 3.
        assert_eq!(output.status.code(), Some(0), "{}: {said}{wrong}", printed.name);
        assert!(
            said.contains("No syntax or stream encoding errors found"),
            "{said}"
        );
    }
}

#[test]
fn every_document_is_tagged_to_pdf_ua() {
    for printed in printed().values() {
        let document = Document::load(&printed.file).unwrap();
        let catalog = document.catalog().unwrap();
        let language = catalog.get(b"Lang").unwrap().as_str().unwrap();
        assert_eq!(language, b"en", "{}", printed.name);
        let marked = document
            .dereference(catalog.get(b"MarkInfo").unwrap())
            .unwrap()
            .1
            .as_dict()
            .unwrap();
        assert!(marked.get(b"Marked").unwrap().as_bool().unwrap());
        let metadata = document.dereference(catalog.get(b"Metadata").unwrap()).unwrap().1;
        let metadata = metadata.as_stream().unwrap();
        let metadata = metadata
            .decompressed_content()
            .unwrap_or_else(|_| metadata.content.clone());
        let metadata = String::from_utf8_lossy(&metadata).into_owned();
        assert!(
            metadata.contains("pdfuaid:part>1<"),
            "{}: {metadata}",
            printed.name
        );
        assert!(metadata.contains("code "), "the title tells the code");
        assert!(metadata.contains("Local protocol and medical direction come first."));

        let tree = document
            .dereference(catalog.get(b"StructTreeRoot").unwrap())
            .unwrap()
            .1;
        let mut found = Vec::new();
        roles(
            &document,
            tree.as_dict().unwrap().get(b"K").unwrap(),
            &mut found,
            0,
        );
        let count = |role: &str| found.iter().filter(|known| *known == role).count();
        assert!(count("H1") > 0, "{}: {found:?}", printed.name);
        if printed.name.starts_with("cards-") {
            // Tables of devices, minutes and cylinders; the QR codes.
            assert!(count("Table") > 8 && count("TH") > 40, "{}", printed.name);
            assert!(count("Figure") >= 25, "{}", printed.name);
        }
        if printed.name.starts_with("check-off") || printed.name.starts_with("inspection") {
            assert!(count("TH") >= 6, "{}", printed.name);
        }
    }
}
