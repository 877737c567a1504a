//! Thin plates: closed forms so far.
