//! Coverage-guided search for bytes that break a reader.
#![no_main]

#[path = "../../targets.rs"]
#[allow(dead_code, reason = "one target a program")]
mod targets;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| targets::shop(bytes));
