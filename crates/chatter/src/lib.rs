//! Stability of milling: closed forms so far.
