//! The shop: what stands on its panel, and what is told of keeping.

use crate::shop::Fault;
use crate::state::{Difference, Lasting, Where};
use thinwright_jobfile::shop::Kind;
use thinwright_words::language::tr;
use thinwright_words::say;

texts! {
    my_shop: "My shop";
    open_shop: "Jobs, machines, racks";
    close: "Close";
    back: "Back";
    undo: "Undo";
    redo: "Redo";
    nothing_to_undo: "Undo: there is nothing to take back";
    nothing_to_redo: "Redo: there is nothing to do again";
    new_job: "New job";
    new_job_why: "Another part: material, machine, cutters and holding stay as they are.";
    open: "Open";
    in_hand: "in hand";
    put_to_use: "Use";
    copy: "Copy";
    rename: "Rename";
    delete: "Delete";
    put_back: "Put back";
    save: "Save";
    new_name: "New name";
    taken_out: "Taken out or replaced in this visit";
    unreadable: "Kept, but it cannot be read";
    as_file: "Save as a file";
    all_in_one: "Everything in one file";
    export: "Save all";
    import: "Bring in";
    needs_name: "A name is missing.";
    untitled: "without a name";
}

/// The kind of things, as the heading of their list.
pub(crate) fn kind(kind: Kind) -> &'static str {
    tr(match kind {
        Kind::Job => "Jobs",
        Kind::Machine => "Machines",
        Kind::Rack => "Racks",
        Kind::Material => "Materials",
        Kind::Holding => "Holding",
    })
}

/// What the form's own things are kept under.
pub(crate) fn save_as(kind: Kind) -> &'static str {
    tr(match kind {
        Kind::Job => "Keep this job under a name",
        Kind::Machine => "Keep this machine under a name",
        Kind::Rack => "Keep this rack under a name",
        Kind::Material => "Keep this material under a name",
        Kind::Holding => "Keep this way of holding under a name",
    })
}

/// The way from the form into the shop.
pub(crate) fn own_things(kind: Kind) -> &'static str {
    tr(match kind {
        Kind::Job => "Jobs of your own",
        Kind::Machine => "Machines of your own",
        Kind::Rack => "Racks of your own",
        Kind::Material => "Materials of your own",
        Kind::Holding => "Ways of holding of your own",
    })
}

/// What is said of an empty list.
pub(crate) fn none_yet(kind: Kind) -> &'static str {
    tr(match kind {
        Kind::Job => "No job is kept yet: a job is kept by itself from its first change on.",
        Kind::Machine => "No machine is kept yet.",
        Kind::Rack => "No rack is kept yet.",
        Kind::Material => "No material is kept yet.",
        Kind::Holding => "No way of holding is kept yet.",
    })
}

/// Where the shop is kept, and for how long.
pub(crate) fn place(place: Where, lasting: Lasting) -> String {
    let first = tr(match place {
        Where::Database => "All this is kept by the browser on this device, and nowhere else.",
        Where::Small => {
            "All this is kept in the browser's small store on this device: it holds some hundred jobs."
        }
        Where::Nowhere => "Nothing of this is kept: save what you need as a file before you leave.",
    });
    let second = match (place, lasting) {
        (Where::Database, Lasting::Promised) => {
            tr("The browser has promised to keep it even when it runs short of room.")
        }
        (Where::Database, Lasting::Refused) => tr(
            "The browser has not promised to keep it when it runs short of room: save all in one file now and then.",
        ),
        _ => return first.to_owned(),
    };
    say!("{first} {second}", first, second)
}

/// What taking back would change.
pub(crate) fn undo_what(what: &Difference, place: &str) -> String {
    match what {
        Difference::Field(_) => say!("Undo: {place}", place),
        Difference::Answers => tr("Undo: several answers").to_owned(),
        Difference::Records => tr("Undo: what was run or confirmed").to_owned(),
        Difference::Job => tr("Undo: back to the job before").to_owned(),
    }
}

/// What doing again would change.
pub(crate) fn redo_what(what: &Difference, place: &str) -> String {
    match what {
        Difference::Field(_) => say!("Redo: {place}", place),
        Difference::Answers => tr("Redo: several answers").to_owned(),
        Difference::Records => tr("Redo: what was run or confirmed").to_owned(),
        Difference::Job => tr("Redo: on to the job after").to_owned(),
    }
}

/// A button of a thing, for those who cannot see beside what it stands.
pub(crate) fn of_thing(action: &str, name: &str) -> String {
    say!("{action}: {name}", action, name)
}

pub(crate) fn kept_as(name: &str) -> String {
    say!("Kept in your shop: \u{201C}{name}\u{201D}.", name)
}

pub(crate) fn used(name: &str) -> String {
    say!("\u{201C}{name}\u{201D} stands in the answers now.", name)
}

pub(crate) fn used_and_let_go(name: &str, gone: &[String]) -> String {
    let gone = gone.join("; ");
    say!(
        "\u{201C}{name}\u{201D} stands in the answers now. What was kept of the cutters before is let go: {gone}.",
        name,
        gone
    )
}

pub(crate) fn kept_again(name: &str) -> String {
    say!(
        "\u{201C}{name}\u{201D} was deleted in another window. It is kept again, as it is open here.",
        name
    )
}

pub(crate) fn kept_both(name: &str) -> String {
    say!(
        "This job was changed in another window too. Both are kept: yours goes on as \u{201C}{name}\u{201D}.",
        name
    )
}

pub(crate) fn changed_elsewhere(name: &str) -> String {
    say!(
        "\u{201C}{name}\u{201D} was changed in another window. What is open here is as it was before: open it from your shop to \
         see the change. If you go on here, both are kept.",
        name
    )
}

pub(crate) fn put_aside(name: &str, error: &str) -> String {
    say!(
        "What was kept of \u{201C}{name}\u{201D} cannot be read ({error}). It is put aside; what is open here is kept in its place.",
        name,
        error
    )
}

pub(crate) fn beside_newer(name: &str, error: &str) -> String {
    say!(
        "\u{201C}{name}\u{201D} stands in your shop as a newer version of this page wrote it ({error}). That is left alone; what is \
         open here is kept beside it.",
        name,
        error
    )
}

pub(crate) fn job_not_kept(why: &str) -> String {
    say!(
        "This job could not be kept: {why} Save it as a file before you leave.",
        why
    )
}

pub(crate) fn thing_not_kept(name: &str, why: &str) -> String {
    say!("\u{201C}{name}\u{201D} could not be kept: {why}", name, why)
}

pub(crate) fn not_taken_out(name: &str, why: &str) -> String {
    say!(
        "\u{201C}{name}\u{201D} could not be deleted: {why}",
        name,
        why
    )
}

pub(crate) fn changed_so_left(name: &str) -> String {
    say!(
        "\u{201C}{name}\u{201D} was changed in another window meanwhile, so it was not deleted. The list shows it as it is now.",
        name
    )
}

pub(crate) fn in_small_store(why: &str) -> String {
    say!(
        "{why} Your shop is kept in the browser's small store instead, and goes over when there is a database.",
        why
    )
}

pub(crate) fn kept_nowhere(why: &str) -> String {
    say!(
        "{why} The browser keeps nothing on this machine: save the job as a file before you leave.",
        why
    )
}

/// Why something was not kept, as a whole sentence.
pub(crate) fn fault(fault: &Fault) -> String {
    match fault {
        Fault::Full => {
            tr("The browser has no room left for this page: delete what you do not need.")
                .to_owned()
        }
        Fault::Newer => {
            tr("What is kept here was written by a newer version of this page, and is left alone.")
                .to_owned()
        }
        Fault::TakenOver => {
            tr("A newer version of this page has taken the database over: load this page again.")
                .to_owned()
        }
        Fault::Missing(_) => tr("This browser gives the page no database here.").to_owned(),
        Fault::Silent => {
            tr("The browser's database does not answer: another window may hold it.").to_owned()
        }
        Fault::Broken(words) => {
            say!("The browser's database failed ({words}).", words)
        }
    }
}

pub(crate) fn unread(count: usize) -> String {
    if count == 1 {
        tr("One entry of your shop cannot be read. It is left as it is; your shop shows it.")
            .to_owned()
    } else {
        say!(
            "{count} entries of your shop cannot be read. They are left as they are; your shop shows them.",
            count
        )
    }
}

pub(crate) fn came_renamed(before: &str, now: &str) -> String {
    say!(
        "\u{201C}{before}\u{201D} stands in your shop with other content. Both are kept: what came is \u{201C}{now}\u{201D}.",
        before,
        now
    )
}

pub(crate) fn brought_in(file: &str, new: usize, same: usize) -> String {
    say!(
        "From {file}: {new} brought in, {same} here already.",
        file,
        new,
        same
    )
}

pub(crate) fn left_out(file: &str, place: &str, error: &str) -> String {
    say!(
        "From {file}, not read: {place}: {error}.",
        file,
        place,
        error
    )
}

pub(crate) fn not_brought_in(file: &str, error: &str) -> String {
    say!("{file} was not brought in: {error}.", file, error)
}

pub(crate) fn changed_on(date: &str) -> String {
    say!("changed {date}", date)
}

pub(crate) fn runs(count: usize) -> String {
    if count == 1 {
        tr("1 note of what was run").to_owned()
    } else {
        say!("{count} notes of what was run", count)
    }
}
