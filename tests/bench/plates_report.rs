//! What plates cost, as tables.

use crate::model::Solved;
use crate::peer::Peer;
use crate::plates::{Plates, off};
use crate::report::{line, ms};
use serde_json::Value;
use thinwright_jobfile::samples;

/// Natively, as WASM, and by the peers.
pub(crate) struct AllPlates {
    pub(crate) native: Plates,
    pub(crate) wasm: Plates,
    pub(crate) peer: Peer,
    /// Deflections of the solid, m.
    pub(crate) solid: Vec<f64>,
    /// Load when plates began and when they were through, if the system tells.
    pub(crate) load: [Option<String>; 2],
}

pub(crate) fn plates(text: &mut String, all: &AllPlates) {
    let load = all.load.each_ref();
    let [before, after] = load.map(|load| load.as_deref().unwrap_or("unknown"));
    *text += &format!(
        "\n## Plates: model problem (c)\n\n\
         `shared/reference/plates.md`, 4 mm thick, on the coarsest mesh from which on all finer ones keep both ribs within \
         3 % of the solid. One thread; load {before} before, {after} after. The quickest of nine runs, stage by stage.\n\
         {}\n\n",
        peer(&all.peer)
    );
    stages(text, all);
    accuracy(text, all);
    searches(text, all);
}

/// What the peer is, and when it ran.
fn peer(peer: &Peer) -> String {
    let told = &peer.told;
    let word = |value: &Value| value.as_str().unwrap_or("unknown").to_owned();
    let version = |of: &str| word(&told["versions"][of]);
    let load = |when: &str| told[when][0].as_f64().unwrap_or_default();
    let when = match peer.now {
        true => "between native and WASM".to_owned(),
        false => format!(
            "not now, but on {}, on a machine that may be another",
            word(&told["date"])
        ),
    };
    format!(
        "The peer: scikit-fem {}, SciPy {}, Python {}, quadratic triangles (`tests/peers`); it ran {when}, load {:.2} before, \
         {:.2} after. Its map is reckoned from 200 of the patches.",
        version("scikit_fem"),
        version("scipy"),
        version("python"),
        load("load_average_before"),
        load("load_average_after")
    )
}

fn stages(text: &mut String, all: &AllPlates) {
    let places = all.peer.mindlin()["vertices"].as_f64();
    let places = places.expect("places of the peer's map");
    let nodes = all.native.solved.nodes;
    let patches = format!("map: a patch around each node ({nodes}, {nodes}, {places})");
    let peer = |stage| all.peer.ms(stage);
    let map = all.peer.mindlin()["whole_map_s"].as_f64().expect("a time") * 1.0e3;
    let peers = [
        Some(peer("mesh")),
        Some(peer("assembly") + peer("factor")),
        None,
        Some(map),
        Some(peer("tones_6")),
    ];
    let names = [
        "mesh, made ready",
        "assembly and factor",
        "map: each node by selected inversion",
        &patches,
        "six tones",
    ];
    *text += "| ms | native | WASM | scikit-fem |\n| --- | ---: | ---: | ---: |\n";
    let ours = [&all.native.solved, &all.wasm.solved];
    for (at, (name, peer)) in names.into_iter().zip(peers).enumerate() {
        let [native, wasm] = ours.map(|solved| ms(solved.ms[at]));
        let peer = peer.map_or("-".to_owned(), ms);
        line(
            text,
            format_args!("| {name} | {native} | {wasm} | {peer} |"),
        );
    }
    let whole: f64 = peers.into_iter().flatten().sum();
    let share = places / nodes;
    for (name, nodal, patches) in [
        ("all, the map of nodes", 1.0, 0.0),
        ("all, a map of as many patches as the peer's", 0.0, share),
        ("all, a map of all patches", 0.0, 1.0),
    ] {
        let sum = |s: &Solved| s.ms[0] + s.ms[1] + nodal * s.ms[2] + patches * s.ms[3] + s.ms[4];
        let [native, wasm] = ours.map(sum);
        line(
            text,
            format_args!(
                "| {name} | {} ({:.1} times as fast) | {} ({:.1} times) | {} |",
                ms(native),
                whole / native,
                ms(wasm),
                whole / wasm,
                ms(whole)
            ),
        );
    }
    let [native, wasm] = ours.map(|solved| ms(solved.first));
    line(
        text,
        format_args!("| both maps, the first run of all | {native} | {wasm} | |"),
    );
}

fn accuracy(text: &mut String, all: &AllPlates) {
    *text += "\nOff the solid; the same bits natively and as WASM.\n\n\
        | | nodes | unknowns | boss | rib | rib | open web | near the boss |\n\
        | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n";
    let shares = |off: &[f64]| {
        let shares: Vec<String> = off.iter().map(|o| format!("{:+.1} %", 100.0 * o)).collect();
        shares.join(" | ")
    };
    let solved = &all.native.solved;
    let ours = shares(&off(solved, &all.solid));
    let (nodes, unknowns) = (solved.nodes, 3.0 * solved.nodes);
    line(
        text,
        format_args!("| native, WASM | {nodes} | {unknowns} | {ours} |"),
    );
    let peer = all.peer.mindlin();
    let theirs = peer["off"].as_array().into_iter().flatten();
    let theirs: Vec<f64> = theirs.filter_map(Value::as_f64).collect();
    line(
        text,
        format_args!(
            "| scikit-fem | {} corners | {} | {} |",
            peer["vertices"],
            peer["unknowns"],
            shares(&theirs)
        ),
    );
}

fn searches(text: &mut String, all: &AllPlates) {
    *text += "\n## Plates: the samples\n\n\
        What a search takes less when it knows its webs and nothing else is what they cost. *One web*: one state of the part, \
        meshes shared. *Picture*: what the page shows of a web, a patch around each node; the first with all meshes.\n\n\
        | job | where | webs | one web | of checked | of all told | first picture | coarse | fine |\n\
        | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n";
    for (at, sample) in samples().iter().enumerate() {
        for (place, plates) in [("native", &all.native), ("WASM", &all.wasm)] {
            let [webs, checked, done, known_checked, known_done, seen @ ..] = plates.webs[at];
            let part = |all: f64, known: f64| match webs > 0.0 {
                true => {
                    let of = (all - known).max(0.0);
                    format!("{} of {} ({:.0} %)", ms(of), ms(all), 100.0 * of / all)
                }
                false => format!("0 of {}", ms(all)),
            };
            let some = |value: f64| {
                if value > 0.0 {
                    ms(value)
                } else {
                    "-".to_owned()
                }
            };
            let one = some((done - known_done).max(0.0) / webs.max(1.0) * webs.min(1.0));
            let [first, coarse, fine] = seen.map(some);
            let (checked, done) = (part(checked, known_checked), part(done, known_done));
            line(
                text,
                format_args!(
                    "| {} | {place} | {webs} | {one} | {checked} | {done} | {first} | {coarse} | {fine} |",
                    sample.id
                ),
            );
        }
    }
}
