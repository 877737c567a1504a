//! A job as a link: what stands on the panel, and what is told of a link that was opened.

use super::fault;
use crate::share::Home;
use thinwright_jobfile::LinkError;
use thinwright_words::language::tr;
use thinwright_words::say;

texts! {
    share: "Share";
    link_and_code: "Link and code";
    job_as_link: "This job as a link";
    goes_along: "The answers are in the link itself, behind its #: nothing is sent to anybody. What was run and what was \
        confirmed stays on this device.";
    link: "Link";
    code_name: "QR code of the link";
    scan_me: "Scan to open this job again.";
    no_code_address: "No code: the page was opened from a file and knows no address.";
    no_code_size: "No code: too many answers for one.";
    copied: "The link is copied.";
    not_copied: "This browser does not copy: select the link and copy it.";
    close: "Close";
    code_too_large: "These answers are too many for a code that a phone scans from paper: copy the link, or save the file.";
    code_needs_address: "A code would lead another device nowhere: it needs an address at which this page is served.";
    served_at: "Address at which this page is served for others";
    no_address: "This is no address of a page: it begins with https:// or http://.";
    changed_since: "The answers have changed since this sheet was printed";
    written_otherwise: "Every answer means the same; only how it is written differs.";
    keep_present: "Keep the answers as they are now";
    open_printed: "Open the answers of the sheet";
    answer: "Answer";
    on_the_sheet: "On the sheet";
    now: "Now";
    nothing_changed: "The job of the link is open: no answer has changed since.";
}

/// Who can open the page's own address, where that is not everybody.
pub(crate) fn who_can_open(home: Home) -> Option<&'static str> {
    match home {
        Home::Served => None,
        Home::ThisDevice => Some(tr(
            "This page is served by the device itself: another device cannot open its address.",
        )),
        Home::File => Some(tr(
            "This page was opened from a file: its link works only where the same file lies at the same place.",
        )),
    }
}

pub(crate) fn links_lead(nowhere: bool) -> &'static str {
    if nowhere {
        tr("Links and codes lead to this page's own address again.")
    } else {
        tr("Links and codes lead to the address that you named.")
    }
}

pub(crate) fn stamp(digest: &str, engine: &str) -> String {
    say!("Revision {digest}, {engine}", digest, engine)
}

pub(crate) fn sheet_of(digest: &str, engine: &str) -> String {
    say!(
        "The sheet is revision {digest}, made by {engine}. Nothing has been changed yet.",
        digest,
        engine
    )
}

pub(crate) fn value_known(value: &str, known: &str) -> String {
    say!("{value}, {known}", value, known)
}

pub(crate) fn other_engine(then: &str, now: &str) -> String {
    say!(
        "The sheet was made by {then}, this is {now}: the same answers may give another strategy.",
        then,
        now
    )
}

pub(crate) fn and_other_engine(told: &str, then: &str, now: &str) -> String {
    format!("{told} {}", other_engine(then, now))
}

pub(crate) fn came_by_link(name: &str, before: &str) -> String {
    match (name.is_empty(), before.is_empty()) {
        (false, false) => say!(
            "Opened by a link: {name}. Undo brings back what was open before: {before}.",
            name,
            before
        ),
        (false, true) => say!(
            "Opened by a link: {name}. Undo brings back what was open before.",
            name
        ),
        (true, _) => {
            tr("Opened by a link: a job without a name. Undo brings back what was open before.")
                .to_owned()
        }
    }
}

pub(crate) fn no_link(fault: &str) -> String {
    say!(
        "There is no link to this job: {fault}. Save it as a file instead.",
        fault
    )
}

pub(crate) fn link_not_read(fault: &str) -> String {
    say!(
        "The link could not be read: {fault}. Nothing was changed; what was open is still open.",
        fault
    )
}

/// What is wrong with a link, as its `Display` has it for the command line.
pub(crate) fn link_fault(error: &LinkError) -> String {
    match error {
        LinkError::NoJob => tr("the link holds no job").to_owned(),
        LinkError::TooLong { letters, most } => {
            say!(
                "the link has {letters} letters; {most} are the most",
                letters,
                most
            )
        }
        LinkError::TooMuch { most, .. } => {
            say!(
                "the answers are too long for a link: more than {most} bytes",
                most
            )
        }
        LinkError::Version { found } => {
            say!(
                "the link is of format \"{found}\", which is not read here",
                found
            )
        }
        LinkError::CutOff => tr("the end of the link is missing").to_owned(),
        LinkError::Letter { at, found } => {
            say!(
                "letter {at} of the link, \"{found}\", belongs in no link",
                at,
                found
            )
        }
        LinkError::Damaged => tr("letters of the link were changed or lost").to_owned(),
        LinkError::NotText { at } => {
            say!("what the link holds is no text: byte {at} is not UTF-8", at)
        }
        LinkError::Content { error, engine } if engine.is_empty() => fault(error),
        LinkError::Content { error, engine } => {
            say!("{fault} (made by {engine})", fault = fault(error), engine)
        }
        // One that is new here is told as the command line has it.
        other => other.to_string(),
    }
}
