//! What a page of the desk may be made of: its own elements and attributes, its own addresses, and text in which nothing is markup.
//!
//! A page is read sign by sign. What somebody wrote in a chapter or an address can only be text or a quoted value; were it let
//! through as markup, there would be an element, an attribute or a sign here that the desk's own pages don't have.

/// The elements of the desk's pages.
const ELEMENTS: &[&str] = &[
    "a",
    "article",
    "blockquote",
    "body",
    "br",
    "button",
    "caption",
    "code",
    "dd",
    "details",
    "div",
    "dl",
    "dt",
    "em",
    "fieldset",
    "figcaption",
    "figure",
    "footer",
    "form",
    "g",
    "h1",
    "h2",
    "h3",
    "h4",
    "h5",
    "h6",
    "head",
    "header",
    "hr",
    "html",
    "img",
    "input",
    "label",
    "legend",
    "li",
    "line",
    "link",
    "main",
    "mark",
    "meta",
    "nav",
    "ol",
    "option",
    "p",
    "path",
    "pre",
    "rect",
    "script",
    "section",
    "select",
    "small",
    "span",
    "strong",
    "summary",
    "svg",
    "table",
    "tbody",
    "td",
    "text",
    "th",
    "thead",
    "time",
    "title",
    "tr",
    "ul",
];

/// Checks a page.
pub fn check(page: &str) {
    let mut rest = page.strip_prefix("<!DOCTYPE html>").expect("a page");
    loop {
        let (text, tag) = rest.split_once('<').unwrap_or((rest, ""));
        assert!(!text.contains('>'), "text that isn't escaped: {text:?}");
        entities(text);
        if tag.is_empty() {
            break;
        }
        let (tag, after) = tag.split_once('>').expect("a tag is closed");
        element(tag);
        rest = after;
    }
}

/// A sign that begins an entity does so.
fn entities(text: &str) {
    for after in text.split('&').skip(1) {
        let known = ["lt;", "gt;", "amp;", "quot;", "#39;", "#x27;"]
            .iter()
            .any(|entity| after.starts_with(entity));
        assert!(known, "& that isn't escaped: {text:?}");
    }
}

fn element(tag: &str) {
    if let Some(name) = tag.strip_prefix('/') {
        assert!(ELEMENTS.contains(&name), "</{name}>");
        return;
    }
    let (name, mut rest) = tag.split_once(' ').unwrap_or((tag, ""));
    assert!(ELEMENTS.contains(&name), "<{tag}>");
    assert!(name != "script" || rest == "src=\"/desk.js\" defer", "<{tag}>");
    while !rest.is_empty() {
        let end = rest.find([' ', '=']).unwrap_or(rest.len());
        let attribute = &rest[..end];
        let fine = |sign: char| sign.is_ascii_alphabetic() || sign == '-' || sign.is_ascii_digit();
        assert!(!attribute.is_empty() && attribute.chars().all(fine), "<{tag}>");
        assert!(
            !attribute.starts_with("on") && attribute != "style" && attribute != "srcdoc",
            "<{tag}>"
        );
        rest = match rest[end..].strip_prefix("=\"") {
            None => rest[end..].trim_start_matches(' '),
            Some(value) => {
                let (value, after) = value.split_once('"').expect("a value is closed");
                entities(value);
                if ["href", "src", "action", "formaction", "data", "poster"].contains(&attribute) {
                    let is_own = value.starts_with('#')
                        || (value.starts_with('/') && !value.starts_with("//") && !value.starts_with("/\\"));
                    assert!(is_own, "<{tag}>");
                }
                assert!(after.is_empty() || after.starts_with(' '), "<{tag}>");
                after.trim_start_matches(' ')
            }
        };
    }
}

#[cfg(test)]
mod tests {
    use std::panic::catch_unwind;

    /// Whether a page with this in it passes.
    fn passes(part: &'static str) -> bool {
        let page = format!("<!DOCTYPE html><html><body><p>{part}</p></body></html>");
        catch_unwind(|| super::check(&page)).is_ok()
    }

    #[test]
    fn what_is_markup_by_mistake_is_seen() {
        for fine in [
            "a &lt; b &amp;&amp; c &gt; d",
            "<a href=\"/order/x?case=1&amp;b=2#top\" title=\"&quot;&lt;b&gt;\">x</a>",
            "<input type=\"text\" value=\"onclick=\" disabled>",
            "<script src=\"/desk.js\" defer></script>",
        ] {
            assert!(passes(fine), "{fine}");
        }
        for wrong in [
            "<b>x</b>",
            "<iframe>",
            "a > b",
            "a & b",
            "<a href=\"//example.com\">x</a>",
            "<a href=\"javascript:x\">x</a>",
            "<a title=\"x\"onclick=\"y\">x</a>",
            "<a title=\"x\" onclick=\"y\">x</a>",
            "<a title=x>x</a>",
            "<p style=\"x\">",
            "<script>x</script>",
            "<script src=\"/other.js\" defer>",
        ] {
            assert!(!passes(wrong), "{wrong}");
        }
    }
}
