//! The one macro that declares a quantity.

/// Declares a quantity: its name, and for each unit a constructor, a getter and the unit's size in SI.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident { $($(#[$unit_doc:meta])* $make:ident $get:ident $size:expr;)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            $(
                $(#[$unit_doc])*
                pub const fn $make(value: f64) -> $name { $name(value * $size) }
                #[doc = concat!("The value in the unit of [`", stringify!($name), "::", stringify!($make), "`].")]
                pub const fn $get(self) -> f64 { self.0 / $size }
            )*
            /// From the value in SI.
            pub const fn from_si(value: f64) -> $name { $name(value) }
            /// The value in SI.
            pub const fn si(self) -> f64 { self.0 }
            /// Whether it is a number at all.
            pub const fn is_finite(self) -> bool { self.0.is_finite() }
            /// The lesser of two.
            pub const fn min(self, other: $name) -> $name { $name(self.0.min(other.0)) }
            /// The greater of two.
            pub const fn max(self, other: $name) -> $name { $name(self.0.max(other.0)) }
            /// Without its sign.
            pub const fn abs(self) -> $name { $name(self.0.abs()) }
        }
        impl core::ops::Add for $name {
            type Output = $name;
            fn add(self, other: $name) -> $name { $name(self.0 + other.0) }
        }
        impl core::ops::Sub for $name {
            type Output = $name;
            fn sub(self, other: $name) -> $name { $name(self.0 - other.0) }
        }
        impl core::ops::Neg for $name {
            type Output = $name;
            fn neg(self) -> $name { $name(-self.0) }
        }
        impl core::ops::Mul<f64> for $name {
            type Output = $name;
            fn mul(self, factor: f64) -> $name { $name(self.0 * factor) }
        }
        impl core::ops::Div<f64> for $name {
            type Output = $name;
            fn div(self, factor: f64) -> $name { $name(self.0 / factor) }
        }
        impl core::ops::Div for $name {
            type Output = f64;
            fn div(self, other: $name) -> f64 { self.0 / other.0 }
        }
    };
}

pub(crate) use quantity;
