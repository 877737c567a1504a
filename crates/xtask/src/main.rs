//! The errands: build and serve the page, run every test.
fn main() {}
