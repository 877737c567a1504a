//! Names that are not taken.

/// The name itself, or the first of `name (2)`, `name (3)`, ... that nobody has.
pub fn free_name(name: &str, taken: &[String]) -> String {
    let free = |candidate: &str| taken.iter().all(|t| t != candidate);
    if free(name) {
        return name.to_owned();
    }
    // Counts on where a number was put before.
    let (stem, number) = numbered(name).unwrap_or((name, 1));
    let next = (u64::from(number) + 1..).map(|n| format!("{stem} ({n})"));
    // As many names as are taken are one too few to take all of these.
    let mut next = next.take(taken.len() + 1);
    next.find(|candidate| free(candidate))
        .unwrap_or_else(|| name.to_owned())
}

fn numbered(name: &str) -> Option<(&str, u32)> {
    let (stem, number) = name.strip_suffix(')')?.rsplit_once(" (")?;
    let number = number.parse().ok().filter(|n| *n >= 1)?;
    Some((stem, number))
}
