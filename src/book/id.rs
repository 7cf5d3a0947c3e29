//! An identifier type for each kind of name, so that a cylinder can't be asked for by a device's number.
//!
//! An identifier is a rule's place in its table. It belongs to the rulebook it came from.

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident),+ $(,)?) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u16);

        impl $name {
            /// The place in the table.
            #[must_use]
            pub const fn index(self) -> usize {
                self.0 as usize
            }
        }
    )+};
}

ids! {
    /// Names a patient group.
    GroupId,
    /// Names a delivery device.
    DeviceId,
    /// Names a cylinder size.
    CylinderId,
    /// Names a connection.
    ConnectionId,
    /// Names a policy.
    PolicyId,
    /// Names a patient's condition, such as retaining carbon dioxide.
    ConditionId,
    /// Names a saturation target.
    TargetId,
    /// Names a procedure.
    ProcedureId,
    /// Names a step by its place in its procedure.
    StepId,
    /// Names a hazard.
    HazardId,
    /// Names a card.
    CardId,
}
