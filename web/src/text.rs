//! The page's own words: what stands on buttons and beside figures. Whatever speaks of the job stands in `words`.

mod said;
mod searched;

pub(crate) use said::*;
pub(crate) use searched::*;

macro_rules! texts {
    ($($name:ident: $text:literal;)*) => {
        $(pub(crate) const $name: &str = $text;)*
    };
}

texts! {
    PRODUCT: "Thinwright";
    MARK: "\u{25B2}";
    SKIP: "Skip to the strategy";
    ANSWERS: "Answers";
    DRAWING: "Drawing";
    STRATEGY: "Strategy";
    PARTS: "Parts of the page";
    JOB: "Job";
    NO_NAME: "without a name";
    UNITS: "Units";
    MILLIMETRES: "mm";
    INCHES: "inch";
    SAMPLE: "Sample";
    CHOOSE_SAMPLE: "open one";
    FILE: "Job file";
    OPEN: "Open";
    SAVE: "Save";
    SHEET: "Sheet";
    PRINT: "Print";
    NOT_PRINTABLE: "There is no checked strategy for these answers yet, so there is nothing to print.";
    THEME: "Paper";
    THEME_SYSTEM: "as the system";
    THEME_LIGHT: "light";
    THEME_DARK: "dark";
    PUT_AWAY: "Put away";
    MESSAGES: "Messages";
    NO_WORKER: "This browser starts no worker: the page does the work itself, and may lag while it does.";
    SEARCH_BROKE: "The search broke down over these answers. Change one of them, or save the file and report it.";
    NOT_KEPT: "The browser keeps nothing on this machine: save the job as a file before you leave.";
    NOT_READ: "The file could not be read.";
    AS_ABOVE: "the same";
    STARTER_RACK: "From the starter rack";
    ADD_STARTER: "Put in";
    ADD_CUTTER: "Add an empty cutter";
    COPY_CUTTER: "Copy";
    REMOVE_CUTTER: "Take out";
    OWN_MACHINE: "Saved machine";
    USE_MACHINE: "Use";
    FORGET_MACHINE: "Forget";
    MACHINE_NAME: "Save this machine under a name";
    SAVE_MACHINE: "Save";
    SHOW_PROBLEMS: "Show them";
    UP_TO_DATE: "The strategy belongs to these answers.";
    STALE: "Below stands the last good strategy; it does not belong to these answers.";
    NONE_YET: "No strategy yet.";
    CUTTER: "cutter";
    SPEED: "spindle speed";
    FEED: "feed";
    STEPOVER: "stepover";
    STEP_DOWN: "step-down";
    WHAT_AND_HOW: "What and how";
    ENTRY: "Entry";
    CAUTIONS: "Cautions";
    WEB: "The web under this cut";
    RIBS: "The ribs beside the slots";
    WEB_UNKNOWN: "The web";
    LOADS: "Loads, at likely values";
    CONSIDERED: "Worked out and set aside";
    LIMITS: "Limits";
    HOW_BARS_READ: "Bar: what the cut asks for, over what is allowed, at the unfavourable end of what is estimated. \
        Long line: the limit, 1. Short line: at likely values.";
    WOULD_HELP: "would help";
    COPY: "Copy";
    ORDERS: "Orders worked out";
    APPLY: "Apply";
    CHANGES_THAT_HELP: "Single changes that would help, the smallest first";
    TRIED: "Tried";
    CHANGED: "What changed";
    TIME: "time in all";
    VERDICT: "verdict";
    NOW_REFUSED: "there is no way any more";
    NOW_FEASIBLE: "there is a way now";
    LEFT_TO_TABLE: "left to the table";
    WEB_STIFFNESS: "softest web under a cut";
    WEB_STIFFNESS_ALONE: "softest web without backing or bolt";
    ORDER: "order and holding";
    NO_SUCH_STEP: "no such step";
    WHOLE: "Whole strategy as text";
    COPY_WHOLE: "Copy the whole strategy";
}
