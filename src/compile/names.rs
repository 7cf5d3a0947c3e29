//! Every name of the book with the place where it was given, so that references resolve before rules are built.

use std::collections::BTreeMap;

use super::{
    diagnostic::Diagnostics,
    fields,
    source::Span,
    suggest::{listed, nearest},
    yaml::Node,
};
use crate::book::Kind;

/// The names of one kind, in the order of the book.
#[derive(Clone, Debug)]
pub struct Table {
    what: &'static str,
    names: Vec<(String, Span)>,
    places: BTreeMap<String, u16>,
    /// Whether a rule of this kind has an id that can't be read.
    unread: bool,
}

impl Table {
    /// An empty table.
    #[must_use]
    pub const fn new(what: &'static str) -> Self {
        Self {
            what,
            names: Vec::new(),
            places: BTreeMap::new(),
            unread: false,
        }
    }

    /// Remembers that an id could not be read. It may be any name, so none is called unknown until it is put right.
    pub const fn leave_unread(&mut self) {
        self.unread = true;
    }

    /// Whether an id could not be read.
    #[must_use]
    pub const fn has_unread(&self) -> bool {
        self.unread
    }

    /// Adds a name; a name given before is an error. Gives whether it was new.
    pub fn add(&mut self, name: &str, span: Span, found: &mut Diagnostics) -> bool {
        if let Some(first) = self.index(name).and_then(|index| self.span(index.into())) {
            found
                .error(
                    "duplicate-id",
                    span,
                    format!("found the {} `{name}` a second time", self.what),
                )
                .label(first, "first defined here")
                .hint("give one of them another id");
            return false;
        }
        let Some(place) = u16::try_from(self.names.len())
            .ok()
            .filter(|place| *place < u16::MAX)
        else {
            found
                .error(
                    "too-many-rules",
                    span,
                    format!("expected at most {} of a kind, found more", u16::MAX),
                )
                .hint("read a folder that holds one rulebook");
            return false;
        };
        self.places.insert(name.to_owned(), place);
        self.names.push((name.to_owned(), span));
        true
    }

    /// A name's place in the table.
    #[must_use]
    pub fn index(&self, name: &str) -> Option<u16> {
        self.places.get(name).copied()
    }

    /// All names, in the order of the book.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.names.iter().map(|(name, _)| name.as_str())
    }

    /// Where a name was given.
    #[must_use]
    pub fn span(&self, index: usize) -> Option<Span> {
        self.names.get(index).map(|(_, span)| *span)
    }

    /// Looks a name up; reports one that isn't known, with the nearest that is.
    pub fn resolve<Id>(
        &self,
        name: &str,
        span: Span,
        found: &mut Diagnostics,
        make: impl FnOnce(u16) -> Id,
    ) -> Option<Id> {
        if let Some(index) = self.index(name) {
            return Some(make(index));
        }
        if self.unread || found.is_unread(name) {
            return None;
        }
        let error = found.error(
            "unknown-name",
            span,
            format!("expected the id of a {}, found `{name}`", self.what),
        );
        match nearest(name, self.names()) {
            _ if name.contains(", ") => error.hint(format!("write a list: `[{name}]`")),
            Some(near) => error.hint(format!("did you mean `{near}`?")),
            None if self.names.is_empty() => error.hint(format!("the book defines no {}", self.what)),
            None => error.hint(format!("the book defines {}", listed(self.names(), "and"))),
        };
        None
    }

    /// Looks up the name written in a node.
    pub fn reference<Id>(
        &self,
        node: &Node,
        found: &mut Diagnostics,
        make: impl FnOnce(u16) -> Id,
    ) -> Option<Id> {
        let name = fields::plain(node, found)?;
        self.resolve(name, node.span, found, make)
    }
}

/// The names of all kinds that have one.
#[derive(Clone, Debug)]
pub struct Names {
    /// Patient groups.
    pub groups: Table,
    /// Devices.
    pub devices: Table,
    /// Cylinders.
    pub cylinders: Table,
    /// Connections.
    pub connections: Table,
    /// Policies.
    pub policies: Table,
    /// Conditions, named by targets.
    pub conditions: Table,
    /// Targets.
    pub targets: Table,
    /// Procedures.
    pub procedures: Table,
    /// Hazards.
    pub hazards: Table,
    /// Cards.
    pub cards: Table,
    /// Worked cases.
    pub cases: Table,
}

impl Default for Names {
    /// No names yet.
    fn default() -> Self {
        Self {
            groups: Table::new("group"),
            devices: Table::new("device"),
            cylinders: Table::new("cylinder"),
            connections: Table::new("connection"),
            policies: Table::new("policy"),
            conditions: Table::new("condition"),
            targets: Table::new("target"),
            procedures: Table::new("procedure"),
            hazards: Table::new("hazard"),
            cards: Table::new("card"),
            cases: Table::new("case"),
        }
    }
}

impl Names {
    /// The table of a kind; the agency has no name.
    pub fn table(&mut self, kind: Kind) -> Option<&mut Table> {
        Some(match kind {
            Kind::Agency => return None,
            Kind::Group => &mut self.groups,
            Kind::Device => &mut self.devices,
            Kind::Cylinder => &mut self.cylinders,
            Kind::Connection => &mut self.connections,
            Kind::Policy => &mut self.policies,
            Kind::Target => &mut self.targets,
            Kind::Procedure => &mut self.procedures,
            Kind::Hazard => &mut self.hazards,
            Kind::Card => &mut self.cards,
            Kind::Case => &mut self.cases,
        })
    }
}
