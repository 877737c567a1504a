//! Words of the view at the machine.

use thinwright_words::say;

texts! {
    at_machine: "At the machine";
    close: "Close";
    back: "Back";
    forward: "Forward";
    cautions_of_job: "Cautions of the whole job: manuals, local rules and trained people come first";
    after_turning: "After turning over, before anything else";
    before_start: "Before the start: tick what is done";
    beside: "Beside the four numbers";
    stop_and_measure: "Stop the spindle, then measure";
    stop: "Stop and check";
    caution: "Caution";
    hands_off: "Only to be read while the spindle turns.";
    stays_on: "screen stays on";
    goes_off: "This browser cannot keep the screen on: set the machine that you read on so.";
    waits: "The strategy is being worked out. Nothing to type from stands here until it is checked.";
    outdated: "There is no checked strategy for these answers: the numbers that stood here do not belong to them. Close this view \
        and see what the page says.";
    kept: "kept by hand";
    knobs: "Knobs";
    knobs_heading: "What the knobs of the machine are turned to";
    feed_knob: "Feed knob";
    speed_knob: "Speed knob";
    knobs_how: "Turn the knobs at the machine, not here while it cuts: stop, enter where they stand, read what follows.";
    checking: "Being checked against every limit.";
}

/// Which step of how many.
pub(crate) fn step_of(number: usize, count: usize) -> String {
    say!("Step {number} of {count}", number, count)
}

/// Which page of how many of the same.
pub(crate) fn page_of(number: usize, count: usize) -> String {
    say!("page {number} of {count}", number, count)
}

/// Which setup.
pub(crate) fn setup(number: usize) -> String {
    say!("Setup {number}", number)
}

/// The way to a step, for those who hear it.
pub(crate) fn open_step(number: u32) -> String {
    say!("At the machine: step {number}", number)
}

/// Where a knob stands.
pub(crate) fn percent(value: u32) -> String {
    say!("{value}\u{A0}%", value)
}

/// What a button of a knob does, for those who hear it.
pub(crate) fn less(knob: &str) -> String {
    say!("{knob}: less", knob)
}

/// What a button of a knob does, for those who hear it.
pub(crate) fn more(knob: &str) -> String {
    say!("{knob}: more", knob)
}

/// What a button of a knob does, for those who hear it.
pub(crate) fn as_typed(knob: &str) -> String {
    say!("{knob}: back to 100\u{A0}%", knob)
}

/// How many of the checks before the start are ticked.
pub(crate) fn ticked(done: usize, of: usize) -> String {
    say!("Checks: {done} of {of} ticked.", done, of)
}
