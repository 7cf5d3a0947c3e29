//! Connections; only oxygen's may be mated.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        yaml::Node,
    },
    Raw, rule,
};
use crate::book::Connection;

const KEYS: Keys = Keys {
    of: "connection",
    required: &["id", "name", "gas", "may-be-mated"],
    optional: &["pins", "thread", "number", "note"],
};

/// Reads a connection.
pub fn read(raw: &Raw, found: &mut Diagnostics) -> Option<Connection> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let gas = fields.read("gas", found, fields::text);
    let pins = fields.list("pins", found, |node, found| fields::each(node, found, pin));
    let thread = fields.maybe("thread", found, fields::text);
    let number = fields.maybe("number", found, fields::text);
    let may_be_mated = fields.read("may-be-mated", found, fields::yes_or_no);
    let note = fields.maybe("note", found, fields::text);
    if let Some(pins) = &pins
        && let Some(node) = fields.get("pins")
        && !(pins.len() == 1 || (pins.len() == 2 && pins.first() < pins.last()))
    {
        found
            .error(
                "not-pins",
                node.span,
                "expected one pin position, or two in rising order",
            )
            .hint("write `[2, 5]`");
    }
    if !["pins", "thread", "number"].iter().any(|key| fields.has(key)) {
        found
            .error(
                "missing-key",
                fields.span,
                "this connection lacks `pins`, `thread` or `number`",
            )
            .hint("say at least one way to tell it from others");
    }
    if may_be_mated == Some(true)
        && let Some(gas) = &gas
        && &**gas != "oxygen"
        && let Some(node) = fields.get("may-be-mated")
    {
        found
            .error(
                "only-oxygen-may-be-mated",
                node.span,
                format!("expected `no` for a connection of {gas}, found `yes`"),
            )
            .hint(if gas.eq_ignore_ascii_case("oxygen") {
                "write the gas as `oxygen`"
            } else {
                "an oxygen regulator is mated with oxygen's connections only"
            });
    }
    Some(Connection {
        rule: rule?,
        gas: gas?,
        pins: pins?,
        thread: thread?,
        number: number?,
        may_be_mated: may_be_mated?,
        note: note?,
    })
}

fn pin(node: &Node, found: &mut Diagnostics) -> Option<u8> {
    let text = fields::plain(node, found)?;
    let pin = text.parse().ok().filter(|pin| (1..=7).contains(pin));
    if pin.is_none() {
        found
            .error(
                "not-pins",
                node.span,
                format!("expected a pin position from 1 to 7, found `{text}`"),
            )
            .hint("ISO 407 has positions 1 to 6, and 7 in the middle");
    }
    pin
}
