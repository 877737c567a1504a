//! What must hold of any bytes, reader by reader: no panic, and what is read well loses nothing when it is written and read
//! again. The fuzzer searches for bytes that break it; an ordinary test replays what it has found on the way.

use thinwright_jobfile::shop::{Shop, ShopFile, Thing};
use thinwright_jobfile::{
    FromWorker, JobFile, LinkedJob, Order, SavedMachine, Store, ToWorker, decode, digest, encode,
    samples,
};

/// A reader's name and what is held of it.
pub(crate) type Target = (&'static str, fn(&[u8]));

/// One link in so many is written and read again.
const WRITTEN_AGAIN: usize = 32;

/// All readers.
pub(crate) const TARGETS: [Target; 6] = [
    ("job", job),
    ("link", link),
    ("shop", shop),
    ("store", store),
    ("message", message),
    ("words", words),
];

/// A job file.
pub(crate) fn job(bytes: &[u8]) {
    match JobFile::read(bytes) {
        Ok(file) => again(&file),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

fn again(file: &JobFile) {
    let written = file.write();
    let read = JobFile::read(written.as_bytes()).expect("what was written is read");
    // The engine and the digest are those of the writing.
    assert_eq!(read.write(), written);
    assert_eq!(digest(&read.answers), digest(&file.answers));
    assert_eq!(read.answers.units, file.answers.units);
    assert_eq!((&read.title, &read.records), (&file.title, &file.records));
    assert_eq!(read.confirmed, file.confirmed);
}

/// A link, given in one of three ways: as it stands in an address; as packed bytes; as lines of answers. Only so does the
/// search get behind the check over the letters.
pub(crate) fn link(bytes: &[u8]) {
    let Some(fragment) = fragment(bytes) else {
        return;
    };
    let read = match LinkedJob::read(&fragment) {
        Ok(read) => read,
        Err(error) => return assert!(!error.to_string().is_empty()),
    };
    // Packing takes a hundred times as long as reading: one input in so many is written again.
    if bytes.iter().map(|b| usize::from(*b)).sum::<usize>() % WRITTEN_AGAIN != 0 {
        return;
    }
    // A fragment may be packed tighter than by our packer; near the bound it may then not be written again.
    let Ok(written) = read.write() else {
        return assert!(fragment.len() > 9_000, "{fragment}");
    };
    let back = LinkedJob::read(&written).expect("what was written is read");
    assert_eq!(back.write().as_ref(), Ok(&written));
    assert_eq!(back.digest(), read.digest());
    assert_eq!((&back.title, &back.engine), (&read.title, &read.engine));
    again(&back.file());
}

/// The fragment that an input of [`link`] means.
pub(crate) fn fragment(bytes: &[u8]) -> Option<String> {
    let (way, rest) = bytes.split_first()?;
    Some(match way % 3 {
        0 => String::from_utf8_lossy(rest).into_owned(),
        1 => letters(rest),
        _ => letters(&stored(rest)),
    })
}

/// Bytes behind a good check, in the letters of a link: written here anew, from the description in `jobfile`.
fn letters(packed: &[u8]) -> String {
    const LETTERS: &[u8; 41] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ+-./:";
    let mut hash = 0xcbf2_9ce4_8422_2325_u64;
    for byte in packed {
        hash = (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
    }
    let [a, b, c, d, e, f, g, h] = hash.to_le_bytes();
    let mut all = vec![a ^ e, b ^ f, c ^ g, d ^ h];
    all.extend_from_slice(packed);
    let mut out = String::from("j=1");
    for pair in all.chunks(2) {
        let mut value = pair.iter().fold(0_usize, |v, b| v * 256 + usize::from(*b));
        for _ in 0..=pair.len() {
            out.push(char::from(LETTERS[value % 41]));
            value /= 41;
        }
    }
    out + "Z"
}

/// Bytes as a deflate stream that stores them as they are (RFC 1951, 3.2.4).
fn stored(bytes: &[u8]) -> Vec<u8> {
    let bytes = &bytes[..bytes.len().min(0xFFFF)];
    let length = u16::try_from(bytes.len()).unwrap_or(u16::MAX);
    let mut out = vec![1];
    out.extend(length.to_le_bytes());
    out.extend((!length).to_le_bytes());
    out.extend_from_slice(bytes);
    out
}

/// A thing of the shop, a file of things, and a store that holds the text.
pub(crate) fn shop(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    if let Ok(thing) = Thing::read(&text) {
        let written = thing.write();
        let read = Thing::read(&written).expect("what was written is read");
        assert_eq!((read.write(), &read.id), (written, &thing.id));
        assert!(read.content.same(&thing.content));
    }
    if let Ok(file) = ShopFile::read(bytes) {
        let written = ShopFile::write(&file.things);
        let read = ShopFile::read(written.as_bytes()).expect("what was written is read");
        assert_eq!(ShopFile::write(&read.things), written);
        assert_eq!(
            (read.things.len(), read.left),
            (file.things.len(), Vec::new())
        );
    }
    let kept = Shop::sort([("j-1".to_owned(), text.clone().into_owned())]);
    assert_eq!(kept.things.len() + kept.unread.len(), 1);
    assert!(kept.unread.iter().all(|unread| unread.text == text));
}

/// The store of earlier versions of the page: a text that cannot be read comes back whole.
pub(crate) fn store(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match Store::read(&text) {
        Ok(store) => {
            let written = store.write();
            let read = Store::read(&written).expect("what was written is read");
            assert_eq!(read.write(), written);
            assert_eq!(read.machines.len(), store.machines.len());
            again(&store.job);
        }
        Err(damaged) => assert_eq!(damaged.text, text),
    }
}

/// Messages between page and worker, and outcomes.
pub(crate) fn message(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    if let Ok(message) = ToWorker::decode(&text) {
        let written = message.encode();
        let read = ToWorker::decode(&written).expect("what was written is read");
        assert_eq!(read.encode(), written);
    }
    if let Ok(message) = FromWorker::decode(&text) {
        let written = message.encode();
        let read = FromWorker::decode(&written).expect("what was written is read");
        assert_eq!(read.encode(), written);
    }
    if let Ok(outcome) = decode(&text) {
        let written = encode(&outcome);
        let read = decode(&written).expect("what was written is read");
        assert_eq!(encode(&read), written);
    }
}

/// A dictionary.
pub(crate) fn words(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match thinwright_catalog::dictionary("words.json", &text) {
        Ok(pairs) => assert!(pairs.len() <= text.len()),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// Inputs to begin a search with.
pub(crate) fn first(target: &str) -> Vec<Vec<u8>> {
    let full = r#"{"thinwright_job":2,"title":"t","units":"mm","answers":{"part.web":{"text":"4","known":"measured"},
"cutter.1.diameter":{"text":"6","known":"data-sheet"}},"records":[{"step":1,"date":"d","values":{"n":"18000 rpm"},"note":"ok"}],
"confirmed":["loose_piece@clamps"]}"#;
    let files = samples().iter().map(|s| s.text).chain([full]);
    let jobs = files.map(|text| JobFile::read(text.as_bytes()).expect("a file that is good"));
    let jobs: Vec<JobFile> = jobs.collect();
    let order = |job: &JobFile| ToWorker {
        generation: 1,
        order: Order::Work(job.answers.clone()),
    };
    let lines = "t\nmm\nthinwright 0.4.0\npart.web\tm\t4\ncutter.diameter\td-e\t6\t3\n";
    match target {
        "job" => jobs
            .iter()
            .map(|j| j.write().into_bytes())
            .chain([full.into()])
            .collect(),
        "link" => {
            let links = jobs.iter().filter_map(|j| LinkedJob::of(j).write().ok());
            let links = links.map(|link| format!("0{link}").into_bytes());
            links
                .chain([
                    format!("2{lines}").into_bytes(),
                    [b"1", stored(lines.as_bytes()).as_slice()].concat(),
                ])
                .collect()
        }
        "shop" => {
            let things = jobs
                .into_iter()
                .map(|j| Thing::new("j-1", "2026-01-01", j.into()));
            let things: Vec<Thing> = things.collect();
            let all = ShopFile::write(&things[..1]).into_bytes();
            things
                .iter()
                .map(|t| t.write().into_bytes())
                .chain([all])
                .collect()
        }
        "store" => {
            let machine = |j: &JobFile| SavedMachine::of("mine", &j.answers);
            let stores = jobs.into_iter().map(|job| Store {
                machines: vec![machine(&job)],
                job,
            });
            stores.map(|s| s.write().into_bytes()).collect()
        }
        "message" => jobs
            .iter()
            .map(|j| order(j).encode().into_bytes())
            .collect(),
        _ => vec![br#"{"{depth} at {speed}": "bei {speed}: {depth}", "Stop": "Halt"}"#.to_vec()],
    }
}
