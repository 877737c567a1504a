//! How close a finding comes, and what a broken limit may do, in words.

use crate::figures::marked;
use crate::language::tr;
use thinwright_core::limits::Severity;
use thinwright_core::strategy::Finding;
use thinwright_quantity::{Kind, Rounding, UnitSystem, format};

/// How close a finding comes to its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    /// With room to spare.
    Holds,
    /// Within the limit, but close.
    Tight,
    /// Beyond the limit.
    Fails,
}

/// The band of a utilisation; `holds` is the number up to which there is room to spare.
pub fn band(utilisation: f64, holds: f64) -> Band {
    if utilisation <= holds {
        Band::Holds
    } else if utilisation <= 1.0 {
        Band::Tight
    } else {
        Band::Fails
    }
}

impl Band {
    /// In a word.
    pub fn word(self) -> &'static str {
        tr(match self {
            Band::Holds => "holds",
            Band::Tight => "tight",
            Band::Fails => "fails",
        })
    }
}

/// What a finding's band is called: only a limit that can refuse fails; advice warns; a tone is listened for.
pub fn verdict(finding: &Finding, holds: f64) -> &'static str {
    match (band(finding.utilisation(), holds), finding.severity) {
        (Band::Fails, Severity::Advice) => tr("warning"),
        (Band::Fails, Severity::Listen) => tr("listen"),
        (band, _) => band.word(),
    }
}

/// What a broken limit of this severity means.
pub fn severity(severity: Severity) -> &'static str {
    tr(match severity {
        Severity::Stop => "stops the job",
        Severity::Quality => "stops the job, because a tolerance asks for it",
        Severity::Advice => "a warning; it never stops a job by itself",
        Severity::Listen => "something to listen for; it never stops a job",
    })
}

/// A utilisation as printed: two decimals, up, so that nothing beyond its limit reads 1; `over 100` beyond that.
pub fn utilisation(value: f64) -> String {
    if value.is_nan() || value > 100.0 {
        return tr("over 100").to_owned();
    }
    let hundredths = format(
        Kind::Count,
        (value * 100.0 - 1.0e-6).ceil(),
        UnitSystem::Metric,
        Rounding::Nearest,
    );
    let hundredths: u32 = hundredths.replace('\u{202F}', "").parse().unwrap_or(0);
    marked(&std::format!(
        "{}.{:02}",
        hundredths / 100,
        hundredths % 100
    ))
}
