//! The figures as a table that people read.

use crate::measured::{Jobs, Measured};
use crate::page::{Page, Slowed};
use crate::plates_report::{AllPlates, plates};
use crate::sizes::Size;
use crate::spread::{Spread, spread};
use thinwright_jobfile::samples;

/// All that was measured.
pub(crate) struct Figures {
    /// The engine's revision.
    pub(crate) revision: String,
    /// Programs that ran or waited for a processor when the bench began, on average over a minute, if the system tells.
    pub(crate) load: Option<String>,
    pub(crate) native: Jobs,
    pub(crate) wasm: Jobs,
    /// The page as it is, and with a slower processor.
    pub(crate) pages: Vec<(Slowed, Page)>,
    pub(crate) plates: AllPlates,
    pub(crate) sizes: Vec<Size>,
}

/// So many of the slowest jobs are named.
const SLOWEST: usize = 5;

pub(crate) fn report(figures: &Figures) -> String {
    let mut text = format!(
        "# What the bench measured\n\n\
         Written by `cargo xtask bench`; not edited by hand. Revision {}; {} processors, load {} before \
         it began.\n\
         Times in ms; of many, the median, the 95th percentile and the worst. *checked*: the strategy is final; \
         *all told*: what would change it is known too. Stability stands in `STABILITY.md`.\n",
        figures.revision,
        std::thread::available_parallelism().map_or(0, usize::from),
        figures.load.as_deref().unwrap_or("unknown")
    );
    jobs(&mut text, figures);
    slowest(&mut text, figures);
    plates(&mut text, &figures.plates);
    pages(&mut text, &figures.pages);
    text +=
        "\n## What is fetched\n\n| file | bytes | gzip | brotli |\n| --- | ---: | ---: | ---: |\n";
    for size in &figures.sizes {
        line(
            &mut text,
            format_args!(
                "| {} | {} | {} | {} |",
                size.name, size.raw, size.gzip, size.brotli
            ),
        );
    }
    text
}

/// Adds a line.
pub(crate) fn line(text: &mut String, what: std::fmt::Arguments<'_>) {
    *text += &format!("{what}\n");
}

fn jobs(text: &mut String, figures: &Figures) {
    let drawn = figures.native.jobs.len().saturating_sub(samples().len());
    line(
        text,
        format_args!("\n## One job, nothing at hand from before\n"),
    );
    line(
        text,
        format_args!("| job | where | checked | all told | checks | checks per second |"),
    );
    line(
        text,
        format_args!("| --- | --- | ---: | ---: | ---: | ---: |"),
    );
    for (at, sample) in samples().iter().enumerate() {
        for (place, jobs) in places(figures) {
            let Some(job) = jobs.jobs.get(at) else {
                continue;
            };
            let (checked, done) = (ms(job.checked), ms(job.done));
            line(
                text,
                format_args!(
                    "| {} | {place} | {checked} | {done} | {:.0} | {:.0} |",
                    sample.id,
                    job.checks,
                    rate([job])
                ),
            );
        }
    }
    for (place, jobs) in places(figures) {
        let of = jobs.jobs.get(samples().len()..).unwrap_or_default();
        let checked = spread(of.iter().map(|j| j.checked));
        let done = spread(of.iter().map(|j| j.done));
        let checks = spread(of.iter().map(|j| j.checks));
        line(
            text,
            format_args!(
                "| {drawn} drawn by lot | {place} | {} | {} | {:.0} / {:.0} / {:.0} | {:.0} |",
                three(&checked),
                three(&done),
                checks.median,
                checks.p95,
                checks.worst,
                rate(of)
            ),
        );
    }
    let feasible = figures.native.jobs.iter().skip(samples().len());
    let feasible = feasible.filter(|j| j.feasible).count();
    line(
        text,
        format_args!(
            "\nOf the jobs drawn by lot {feasible} have a strategy, {} are refused. Most memory over all jobs: \
             native process {:.1} MiB, WASM memory {:.1} MiB.",
            drawn - feasible,
            figures.native.memory / MIB,
            figures.wasm.memory / MIB
        ),
    );
}

const MIB: f64 = 1024.0 * 1024.0;

fn places(figures: &Figures) -> [(&'static str, &Jobs); 2] {
    [("native", &figures.native), ("WASM", &figures.wasm)]
}

/// Checks per second over jobs.
fn rate<'a>(jobs: impl IntoIterator<Item = &'a Measured>) -> f64 {
    let (checks, time) = jobs
        .into_iter()
        .fold((0.0, 0.0), |(c, t), j| (c + j.checks, t + j.done));
    if time > 0.0 {
        checks / time * 1.0e3
    } else {
        0.0
    }
}

fn slowest(text: &mut String, figures: &Figures) {
    let mut order: Vec<&Measured> = figures.native.jobs.iter().collect();
    order.sort_by(|a, b| b.done.total_cmp(&a.done));
    let named: Vec<String> = order
        .iter()
        .take(SLOWEST)
        .map(|job| format!("{} ({} ms)", job.name, ms(job.done)))
        .collect();
    line(
        text,
        format_args!("Slowest natively: {}.", named.join(", ")),
    );
}

fn pages(text: &mut String, pages: &[(Slowed, Page)]) {
    line(text, format_args!("\n## The page, with its first sample\n"));
    line(
        text,
        format_args!(
            "| processor | from nothing: checked | all told | from a key: checked | all told | \
             a key to its own letter | longest task: loading | longest task: typing |"
        ),
    );
    line(
        text,
        format_args!("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |"),
    );
    for (slowed, page) in pages {
        let processor = match slowed {
            Slowed::Not => "as it is".to_owned(),
            Slowed::Page(times) => format!("page {times} times slower, worker as it is"),
            Slowed::Both(times) => format!("{times} times slower, engine in the page's own thread"),
        };
        line(
            text,
            format_args!(
                "| {processor} | {} | {} | {} | {} | {} | {} | {} |",
                three(&page.load[0]),
                three(&page.load[1]),
                three(&page.key[0]),
                three(&page.key[1]),
                over(page.slowest, 16),
                over(page.longest.0, 50),
                over(page.longest.1, 50)
            ),
        );
    }
}

/// Tenths only where they say something.
pub(crate) fn ms(value: f64) -> String {
    if value < 10.0 {
        format!("{value:.1}")
    } else {
        format!("{value:.0}")
    }
}

pub(crate) fn three(spread: &Spread) -> String {
    let Spread { median, p95, worst } = *spread;
    format!("{} / {} / {}", ms(median), ms(p95), ms(worst))
}

/// A browser tells no task under a least length.
fn over(value: f64, least: u32) -> String {
    if value > 0.0 {
        ms(value)
    } else {
        format!("under {least}")
    }
}
