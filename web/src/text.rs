//! The page's own words: what stands on buttons and beside figures. Whatever speaks of the job stands in `words`.

/// Texts that take nothing in: each a function that gives it in the language that is spoken.
macro_rules! texts {
    ($($name:ident: $text:literal;)*) => {
        $(pub(crate) fn $name() -> &'static str {
            thinwright_words::language::tr($text)
        })*
    };
}

pub(crate) mod confirm;
mod faults;
pub(crate) mod lectern;
pub(crate) mod links;
mod run;
mod said;
mod samples;
mod searched;
pub(crate) mod shop;
mod version;

pub(crate) use faults::*;
pub(crate) use run::*;
pub(crate) use said::*;
pub(crate) use samples::*;
pub(crate) use searched::*;
pub(crate) use version::*;

/// Name of the program; the same in every language.
pub(crate) const PRODUCT: &str = "Thinwright";
/// Stands before what is wrong.
pub(crate) const MARK: &str = "\u{25B2}";

texts! {
    skip: "Skip to the strategy";
    answers: "Answers";
    drawing: "Drawing";
    strategy: "Strategy";
    parts: "Parts of the page";
    job: "Job";
    no_name: "without a name";
    units: "Units";
    language: "Language";
    millimetres: "mm";
    inches: "inch";
    sample: "Sample";
    choose_sample: "open one";
    file: "Job file";
    open: "Open";
    save: "Save";
    sheet: "Sheet";
    print: "Print";
    not_printable: "There is no checked strategy for these answers yet, so there is nothing to print.";
    theme: "Paper";
    theme_system: "as the system";
    theme_light: "light";
    theme_dark: "dark";
    put_away: "Put away";
    messages: "Messages";
    no_worker: "This browser starts no worker: the page does the work itself, and may lag while it does.";
    search_broke: "The search broke down over these answers. Change one of them, or save the file and report it.";
    not_kept: "The browser keeps nothing on this machine: save the job as a file before you leave.";
    not_read: "The file could not be read.";
    as_above: "the same";
    starter_rack: "From the starter rack";
    add_starter: "Put in";
    add_cutter: "Add an empty cutter";
    copy_cutter: "Copy";
    remove_cutter: "Take out";
    show_problems: "Show them";
    up_to_date: "The strategy belongs to these answers.";
    stale: "Below stands the last good strategy; it does not belong to these answers.";
    none_yet: "No strategy yet.";
    cutter: "cutter";
    speed: "spindle speed";
    feed: "feed";
    stepover: "stepover";
    step_down: "step-down";
    what_and_how: "What and how";
    entry: "Entry";
    cautions: "Cautions";
    web: "The web under this cut";
    ribs: "The ribs beside the slots";
    web_unknown: "The web";
    loads: "Loads, at likely values";
    considered: "Worked out and set aside";
    limits: "Limits";
    how_bars_read: "Bar: what the cut asks for, over what is allowed, at the unfavourable end of what is estimated. \
        Long line: the limit, 1. Short line: at likely values.";
    would_help: "would help";
    copy: "Copy";
    orders: "Orders worked out";
    apply: "Apply";
    changes_that_help: "Single changes that would help, the smallest first";
    tried: "Tried";
    changed: "What changed";
    time: "time in all";
    verdict: "verdict";
    now_refused: "there is no way any more";
    now_feasible: "there is a way now";
    left_to_table: "left to the table";
    web_stiffness: "softest web under a cut";
    web_stiffness_alone: "softest web without backing or bolt";
    order: "order and holding";
    no_such_step: "no such step";
    whole: "Whole strategy as text";
    copy_whole: "Copy the whole strategy";
}
