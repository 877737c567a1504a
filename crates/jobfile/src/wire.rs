//! Values to trees and back: one list of keys a type, from which both directions are made.
//!
//! Every number carries its SI unit in its key (`stock_m`, `n_per_s`), so that what is written is what was computed, to the last bit.

mod gain;
mod keys;
mod outcome;
mod stability;
mod step;

use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{inside, list, not, text, whole};
use thinwright_core::field::FieldId;
use thinwright_quantity::{
    Angle, Duration, Force, Frequency, Length, Power, Speed, SpindleSpeed, Stiffness, Stress,
    Torque,
};

/// Most entries of a list in an outcome.
const MOST_ENTRIES: usize = 5_000;

/// A value that goes over the wire.
pub(crate) trait Wire: Sized {
    /// As a tree.
    fn put(&self) -> Node;
    /// Out of a tree.
    fn take(place: &str, node: &Node) -> Result<Self, JobFileError>;
    /// Out of a key that is not there.
    fn missing(place: String) -> Result<Self, JobFileError> {
        Err(JobFileError::Missing { place })
    }
}

/// A struct as an object: key, field.
macro_rules! wire_struct {
    ($name:ident { $($key:literal $field:ident,)* }) => {
        impl $crate::wire::Wire for $name {
            fn put(&self) -> $crate::node::Node {
                let $name { $($field,)* } = self;
                $crate::node::Node::object([$(($key, $crate::wire::Wire::put($field)),)*])
            }
            fn take(place: &str, node: &$crate::node::Node) -> Result<Self, $crate::error::JobFileError> {
                let mut object = $crate::object::Object::new(place, node)?;
                $(let $field = $crate::wire::at(&mut object, $key)?;)*
                object.end()?;
                Ok($name { $($field,)* })
            }
        }
    };
}

/// An enum as an object whose key `is` names the variant: word, variant, then key, field, name of the field's value.
macro_rules! wire_enum {
    ($name:ident { $($word:literal $variant:ident { $($key:literal $field:tt $bind:ident,)* })* }) => {
        impl $crate::wire::Wire for $name {
            fn put(&self) -> $crate::node::Node {
                match self {
                    $($name::$variant { $($field: $bind,)* } => $crate::node::Node::object([
                        ("is", $crate::node::Node::text($word)),
                        $(($key, $crate::wire::Wire::put($bind)),)*
                    ]),)*
                }
            }
            fn take(place: &str, node: &$crate::node::Node) -> Result<Self, $crate::error::JobFileError> {
                const WORDS: &[&str] = &[$($word,)*];
                let mut object = $crate::object::Object::new(place, node)?;
                let word = object.text("is")?;
                let value = match word.as_str() {
                    $($word => {
                        $(let $bind = $crate::wire::at(&mut object, $key)?;)*
                        $name::$variant { $($field: $bind,)* }
                    })*
                    _ => return Err($crate::object::not(&object.place("is"), $crate::error::Wanted::OneOf(WORDS))),
                };
                object.end()?;
                Ok(value)
            }
        }
    };
}

/// A plain enum as a word.
macro_rules! wire_word {
    ($name:ident { $($word:literal $variant:ident,)* }) => {
        impl $crate::wire::Wire for $name {
            fn put(&self) -> $crate::node::Node {
                $crate::node::Node::text(match self { $($name::$variant => $word,)* })
            }
            fn take(place: &str, node: &$crate::node::Node) -> Result<Self, $crate::error::JobFileError> {
                $crate::object::word(place, node, &[$($word,)*], &[$($name::$variant,)*])
            }
        }
    };
}

pub(crate) use {wire_enum, wire_struct, wire_word};

/// The value at a key.
pub(crate) fn at<T: Wire>(
    object: &mut crate::object::Object<'_>,
    key: &str,
) -> Result<T, JobFileError> {
    match object.optional(key) {
        Some(node) => T::take(&object.place(key), node),
        None => T::missing(object.place(key)),
    }
}

macro_rules! quantities {
    ($($name:ident)*) => {$(
        impl Wire for $name {
            fn put(&self) -> Node {
                self.si().put()
            }
            fn take(place: &str, node: &Node) -> Result<$name, JobFileError> {
                f64::take(place, node).map($name::from_si)
            }
        }
    )*};
}

quantities! { Angle Duration Force Frequency Length Power Speed SpindleSpeed Stiffness Stress Torque }

/// What JSON has no number for.
const INFINITE: &str = "infinite";
const MINUS_INFINITE: &str = "minus infinite";
const NO_NUMBER: &str = "no number";

impl Wire for f64 {
    fn put(&self) -> Node {
        if self.is_nan() {
            Node::text(NO_NUMBER)
        } else if self.is_infinite() {
            Node::text(if *self > 0.0 {
                INFINITE
            } else {
                MINUS_INFINITE
            })
        } else {
            Node::Number(*self)
        }
    }

    fn take(place: &str, node: &Node) -> Result<f64, JobFileError> {
        match node {
            Node::Number(number) => Ok(*number),
            Node::Text(text) if text == INFINITE => Ok(f64::INFINITY),
            Node::Text(text) if text == MINUS_INFINITE => Ok(f64::NEG_INFINITY),
            Node::Text(text) if text == NO_NUMBER => Ok(f64::NAN),
            _ => Err(not(place, Wanted::Number)),
        }
    }
}

impl Wire for u32 {
    fn put(&self) -> Node {
        Node::Number(f64::from(*self))
    }

    fn take(place: &str, node: &Node) -> Result<u32, JobFileError> {
        whole(place, node, u32::MAX)
    }
}

impl Wire for u8 {
    fn put(&self) -> Node {
        Node::Number(f64::from(*self))
    }

    fn take(place: &str, node: &Node) -> Result<u8, JobFileError> {
        let value = whole(place, node, u32::from(u8::MAX))?;
        u8::try_from(value).map_err(|_| not(place, Wanted::WholeUpTo(u32::from(u8::MAX))))
    }
}

impl Wire for usize {
    fn put(&self) -> Node {
        Node::Number(f64::from(u32::try_from(*self).unwrap_or(u32::MAX)))
    }

    fn take(place: &str, node: &Node) -> Result<usize, JobFileError> {
        let most = u32::MAX;
        usize::try_from(whole(place, node, most)?).map_err(|_| not(place, Wanted::WholeUpTo(most)))
    }
}

impl Wire for bool {
    fn put(&self) -> Node {
        Node::Flag(*self)
    }

    fn take(place: &str, node: &Node) -> Result<bool, JobFileError> {
        match node {
            Node::Flag(flag) => Ok(*flag),
            _ => Err(not(place, Wanted::Flag)),
        }
    }
}

impl Wire for String {
    fn put(&self) -> Node {
        Node::text(self)
    }

    fn take(place: &str, node: &Node) -> Result<String, JobFileError> {
        text(place, node)
    }
}

impl Wire for FieldId {
    fn put(&self) -> Node {
        Node::text(self.key())
    }

    fn take(place: &str, node: &Node) -> Result<FieldId, JobFileError> {
        FieldId::by_key(&text(place, node)?).ok_or_else(|| not(place, Wanted::KnownName))
    }
}

impl<T: Wire> Wire for Option<T> {
    fn put(&self) -> Node {
        self.as_ref().map_or(Node::Null, Wire::put)
    }

    fn take(place: &str, node: &Node) -> Result<Option<T>, JobFileError> {
        if *node == Node::Null {
            Ok(None)
        } else {
            T::take(place, node).map(Some)
        }
    }

    fn missing(_: String) -> Result<Option<T>, JobFileError> {
        Ok(None)
    }
}

impl<T: Wire> Wire for Vec<T> {
    fn put(&self) -> Node {
        Node::List(self.iter().map(Wire::put).collect())
    }

    fn take(place: &str, node: &Node) -> Result<Vec<T>, JobFileError> {
        list(place, node, MOST_ENTRIES)?
            .iter()
            .map(|(place, node)| T::take(place, node))
            .collect()
    }
}

impl<T: Wire> Wire for Box<T> {
    fn put(&self) -> Node {
        (**self).put()
    }

    fn take(place: &str, node: &Node) -> Result<Box<T>, JobFileError> {
        T::take(place, node).map(Box::new)
    }
}

/// A pair as a list of two.
impl<A: Wire, B: Wire> Wire for (A, B) {
    fn put(&self) -> Node {
        Node::List(vec![self.0.put(), self.1.put()])
    }

    fn take(place: &str, node: &Node) -> Result<(A, B), JobFileError> {
        match node {
            Node::List(items) if items.len() == 2 => Ok((
                A::take(&inside(place, "1"), &items[0])?,
                B::take(&inside(place, "2"), &items[1])?,
            )),
            _ => Err(not(place, Wanted::List)),
        }
    }
}
