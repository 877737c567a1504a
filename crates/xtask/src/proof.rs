//! `cargo xtask proof`: what takes too long for every day. The whole visit in a browser, as a new user makes it
//! (`tests/proof`), with figures and Lighthouse.

mod fuzz;

use crate::errand::{Fallible, command, run};
use crate::{bench, dist, page, single, tools};

/// Programs that the scripts start.
const PROGRAMS: &[&str] = &["python3", "npm"];
const SCRIPT: &str = "tests/proof/proof.py";

/// Builds the page and runs the parts that are named, or all of them; `fuzz` alone needs no page.
pub(crate) fn proof(parts: impl Iterator<Item = String>) -> Fallible<()> {
    let parts: Vec<String> = parts.collect();
    if parts.first().is_some_and(|part| part == "fuzz") {
        return fuzz::fuzz(parts.get(1).map(String::as_str));
    }
    tools::all()?;
    for program in PROGRAMS {
        tools::find(program)
            .ok_or_else(|| format!("{program} is not on the PATH: {SCRIPT} needs it"))?;
    }
    let built = page::build()?;
    dist::write_folder(&built)?;
    single::write_file(&built)?;
    let mut script = command("python3", &[SCRIPT, &bench::revision()]);
    run(script.args(parts))
}
