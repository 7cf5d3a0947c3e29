//! The shape shared by the quantities that are one number in one unit.

/// Declares a quantity: the type, its checked constructor in its own unit, its reader, and how it prints.
macro_rules! scalar {
    (
        $(#[$doc:meta])*
        $name:ident, $bounds:expr, $unit:literal,
        $(#[$new_doc:meta])* new $new:ident,
        $(#[$get_doc:meta])* get $get:ident
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            $(#[$new_doc])*
            ///
            /// # Errors
            ///
            /// [`OutOfBounds`](crate::quantity::OutOfBounds) when the number is not finite or outside the bounds.
            pub const fn $new(value: f64) -> Result<Self, $crate::quantity::OutOfBounds> {
                match $bounds.accept(value) {
                    Ok(value) => Ok(Self(value)),
                    Err(error) => Err(error),
                }
            }

            /// For generated tables, whose numbers were checked when they were made.
            #[doc(hidden)]
            #[must_use]
            pub const fn tabled(value: f64) -> Self {
                Self(value)
            }

            $(#[$get_doc])*
            #[must_use]
            pub const fn $get(self) -> f64 {
                self.0
            }
        }

        impl $crate::quantity::Quantity for $name {
            fn fmt_before(&self, _: &Self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                write!(f, "{}", $crate::quantity::Number(self.0))
            }
        }

        impl core::fmt::Display for $name {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                write!(f, concat!("{} ", $unit), $crate::quantity::Number(self.0))
            }
        }
    };
}

pub(crate) use scalar;
