//! The rules of the house. Each is a function from text to complaints, shown to fail on a bad sample, then run on the tree.
#![allow(
    clippy::unwrap_used,
    reason = "a broken rule is told by a failing test"
)]
mod drawn_anew;
mod imports;
mod layers;
mod length;
mod places;
mod rust_text;
mod sources;
mod tables;
mod tree;

/// Demands that no file of the tree gives cause for complaint, and that there were files to look at.
#[cfg(test)]
fn hold(looked_at: usize, complaints: &[String]) {
    assert!(looked_at > 0, "no file to look at");
    assert!(
        complaints.is_empty(),
        "{} complaints:\n{}",
        complaints.len(),
        complaints.join("\n")
    );
}
