//! Stability of milling against published and recomputed values.
#![cfg(test)]
mod agreement;
#[test]
fn later() {}
