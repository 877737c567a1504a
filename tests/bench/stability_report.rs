//! What stability costs, and what tests at the machine change, as tables.

use crate::chart::Chart;
use crate::curves::Curve;
use crate::made::{Cutting, MADE, Made};
use crate::peer::Peer;
use crate::report::{line, ms, three};
use crate::spread::spread;
use crate::stability::{Stability, peer_rows};
use thinwright_jobfile::samples;
use thinwright_words::{limit_name, task_name};

/// Above this load other work disturbed what was measured.
const QUIET: f64 = 1.3;
/// A page that draws a chart within this seems to do it at once, ms.
const AIM: f64 = 50.0;

pub(crate) fn report(revision: &str, all: &Stability) -> String {
    let [before, between, after] = all.load.each_ref().map(|l| l.as_deref());
    let tell = |load: Option<&str>| load.unwrap_or("unknown").to_owned();
    let quiet = [before, between].iter().all(|load| {
        let load = load.and_then(|load| load.parse::<f64>().ok());
        load.is_some_and(|load| load < QUIET)
    });
    let mut text = format!(
        "# What the bench measured of stability\n\n\
         Written by `cargo xtask bench`, or by `BENCH_ONLY=stability cargo xtask bench` alone; not edited by hand. Revision \
         {revision}; {} processors. One thread. Load {} before the curves, {} after them, {} in the end: the machine {} quiet.\n",
        std::thread::available_parallelism().map_or(0, usize::from),
        tell(before),
        tell(between),
        tell(after),
        if quiet { "was" } else { "was not" },
    );
    curves(&mut text, all);
    charts(&mut text, all);
    made(&mut text, &all.made);
    text
}

/// What the peers are, and when they ran.
fn peers(peer: &Peer) -> String {
    let told = &peer.told;
    let load = |when: &str| told[when][0].as_f64().unwrap_or_default();
    let when = match peer.now {
        true => "they ran just before",
        false => "they did not run now, but before, on a machine that may be another",
    };
    format!(
        "NumPy {}, SciPy {}: {when}, {}, load {:.2} before, {:.2} after: the machine {} quiet.",
        told["versions"]["numpy"].as_str().unwrap_or("unknown"),
        told["versions"]["scipy"].as_str().unwrap_or("unknown"),
        told["date"].as_str().unwrap_or("unknown"),
        load("load_average_before"),
        load("load_average_after"),
        if told["quiet"] == true {
            "was"
        } else {
            "was not"
        },
    )
}

fn curves(text: &mut String, all: &Stability) {
    *text += &format!(
        "\n## A curve of limits\n\n\
         200 speeds from 5000 to 25000 1/min, the first depth that sings at each up to a greatest one; the set IS04, one mode \
         in feed or the same across it too, down-milling. The peers (`tests/peers/pace.py`) halve to a thousandth of the \
         depth, in 40 intervals: their error stands in their table; ours closes in to rounding. *Plain* forms the map over a \
         tooth period, *strong* marches it. {}\n\
         The quickest run of each, ours also the median of {} runs; *times as fast*: the stronger peer's quickest over \
         ours. *None*: speeds without a limit, ours and the peers'.\n\n\
         | width | modes | up to mm | plain ms | strong ms | ours ms | median | times as fast | none |\n\
         | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n",
        peers(&all.peer),
        all.curves.first().map_or(0, |curve| curve.ms.len()),
    );
    for curve in &all.curves {
        curve_line(text, &all.peer, curve);
    }
}

fn curve_line(text: &mut String, peer: &Peer, curve: &Curve) {
    let rows = || peer_rows(peer, curve.width, curve.modes);
    let peer = |way: &str| {
        let mut rows = rows().filter(|row| row["way"].as_str().is_some_and(|w| w.starts_with(way)));
        rows.find_map(|row| row["seconds_least"].as_f64())
            .map(|s| s * 1.0e3)
    };
    let ways = ["plain", "strong"].map(peer);
    let strongest = ways.into_iter().flatten().fold(f64::INFINITY, f64::min);
    let least = curve.ms.iter().copied().fold(f64::INFINITY, f64::min);
    let [plain, strong] = ways.map(|way| way.map_or("-".to_owned(), ms));
    let none = rows()
        .next()
        .map_or("-".to_owned(), |row| row["none"].to_string());
    line(
        text,
        format_args!(
            "| {} | {} | {:.2} | {plain} | {strong} | {} | {} | {:.0} | {}, {none} |",
            curve.width,
            curve.modes,
            curve.most * 1.0e3,
            ms(least),
            ms(spread(curve.ms.iter().copied()).median),
            strongest / least,
            curve.none,
        ),
    );
}

fn charts(text: &mut String, all: &Stability) {
    let Chart {
        step,
        modes,
        measured,
        ms: runs,
        limits,
    } = &all.native;
    let stiffness = match *measured > 0.0 {
        true => "a measured stiffness",
        false => "an estimated stiffness (with the same one measured the job is refused)",
    };
    let sings = limits.iter().filter(|depth| **depth > 0.0).count();
    *text += &format!(
        "\n## The chart of a step\n\n\
         Step {step} of `{}` with a tone of its first cutter and {stiffness}; {modes} modes told, {} speeds, a limit \
         at {sings} of them; the same bits natively and as WASM in Chromium. {} runs: median, 95th percentile, worst; \
         aim: {AIM} ms.\n\n\
         | where | all runs | the quickest | the first | aim |\n| --- | ---: | ---: | ---: | --- |\n",
        samples()[0].id,
        limits.len(),
        runs.len(),
    );
    for (place, chart) in [("native", &all.native), ("WASM", &all.wasm)] {
        let all = spread(chart.ms.iter().copied());
        let least = chart.ms.iter().copied().fold(f64::INFINITY, f64::min);
        let first = chart.ms.first().copied().unwrap_or_default();
        let kept = if all.median <= AIM { "kept" } else { "missed" };
        line(
            text,
            format_args!(
                "| {place} | {} | {} | {} | {kept} |",
                three(&all),
                ms(least),
                ms(first)
            ),
        );
    }
}

fn made(text: &mut String, all: &[[Made; MADE.len()]]) {
    *text += "\n## What a tap and a push change\n\n\
        *Tap*: 1850 Hz for the first cutter, 2400 Hz for all others. *Push*: 50 N, 25 mm below the nut, on a rod of 8 mm: 0.035 \
        and 0.03 mm along X, 0.03 and 0.026 mm along Y. A step: cutter / speed, 1/min / step-down, mm; what differs from the \
        sample as it is stands in bold. Natively, the quickest of three runs, nothing at hand from before.\n";
    for (sample, made) in samples().iter().zip(all) {
        let cells = |cell: &dyn Fn(&Made) -> String| -> String {
            let cells: Vec<String> = made.iter().map(cell).collect();
            cells.join(" | ")
        };
        let names = MADE.map(|(name, ..)| name).join(" | ");
        *text += &format!(
            "\n| {} | {names} |\n| --- | ---: | ---: | ---: | ---: |\n",
            sample.id
        );
        line(text, format_args!("| time, min | {} |", cells(&time)));
        let most = made.iter().map(|made| made.steps.len()).max();
        for at in 0..most.unwrap_or_default() {
            let plain = made[0].steps.get(at);
            let name = plain.map_or("", |step| task_name(step.task));
            let step = |made: &Made| step_cell(plain, made.steps.get(at));
            line(
                text,
                format_args!("| {} {name} | {} |", at + 1, cells(&step)),
            );
        }
        for (name, at) in [("deciding, ms", 0), ("all told, ms", 1)] {
            let took = |made: &Made| ms(made.ms[at]);
            line(text, format_args!("| {name} | {} |", cells(&took)));
        }
    }
}

/// Minutes, or what is refused and why.
fn time(made: &Made) -> String {
    match &made.minutes {
        Ok(minutes) => format!("{minutes:.2}"),
        Err((task, conflict)) => {
            let limits: Vec<&str> = conflict.iter().map(|limit| limit_name(*limit)).collect();
            format!("refused: {} ({})", task_name(*task), limits.join(", "))
        }
    }
}

/// The numbers of a step; its name too where it is another.
fn step_cell(plain: Option<&Cutting>, step: Option<&Cutting>) -> String {
    let Some(step) = step else {
        return "-".to_owned();
    };
    let Cutting {
        task,
        cutter,
        n,
        ap,
    } = *step;
    let name = match plain {
        Some(plain) if plain.task == task => "",
        _ => task_name(task),
    };
    let cell = format!("{name} {cutter} / {n:.0} / {ap:.2}");
    let cell = cell.trim();
    match plain == Some(step) {
        true => cell.to_owned(),
        false => format!("**{cell}**"),
    }
}
