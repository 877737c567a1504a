//! A job as a link: printed as a code, read from the paper by a decoder that knows nothing of the page, opened by it, and
//! held against the answers that have changed since. Whatever else stands behind the `#` touches nothing.

use crate::paper::Paper;
use crate::person::plain_blanks;
use crate::visit::{Visit, pictures, visit};
use serde_json::json;
use std::path::Path;
use std::process::Command;
use thinwright_core::Field;
use thinwright_jobfile::{LinkedJob, Sample, digest};

/// Dots per inch at which the paper is looked at, one after the other, as a camera that comes nearer.
const LOOKS: [u32; 6] = [120, 150, 200, 250, 300, 400];

/// What the codes on a printed page say, at the first look that finds any.
fn codes(pdf: &Path) -> Vec<String> {
    let mut looks = LOOKS.iter().map(|dots| codes_at(pdf, *dots));
    looks.find(|found| !found.is_empty()).unwrap_or_default()
}

fn codes_at(pdf: &Path, dots: u32) -> Vec<String> {
    let picture = Command::new("pdftoppm")
        .args(["-gray", "-f", "1", "-l", "1", "-r", &dots.to_string()])
        .arg(pdf)
        .output()
        .expect("pdftoppm is on the PATH");
    let bytes = picture.stdout;
    // Three numbers of the header, each behind a line end or a blank: width, height, white.
    let mut rest = bytes.strip_prefix(b"P5").expect("a grey picture");
    let mut numbers = [0_usize; 3];
    for number in &mut numbers {
        rest = rest.trim_ascii_start();
        let end = rest.iter().position(|b| !b.is_ascii_digit()).unwrap();
        *number = String::from_utf8_lossy(&rest[..end]).parse().unwrap();
        rest = &rest[end..];
    }
    let ([width, height, _], pixels) = (numbers, &rest[1..]);
    let grey = |x: usize, y: usize| pixels[y * width + x];
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(width, height, grey);
    let grids = image.detect_grids();
    let whole = grids.iter().filter_map(|g| g.decode().ok());
    whole.map(|(_, said)| said).collect()
}

/// Puts something behind the `#`, as a scanner or a person would.
async fn address(visit: &Visit, fragment: &str) {
    visit
        .run("location.hash = arguments[0];", json!(fragment))
        .await;
}

async fn hash(visit: &Visit) -> String {
    let hash = visit.run("return location.hash;", json!(null)).await;
    hash.as_str().unwrap().to_owned()
}

/// Waits until something is there.
async fn wait(visit: &Visit, css: &str) {
    let found = visit
        .client
        .wait()
        .for_element(fantoccini::Locator::Css(css))
        .await;
    found.unwrap_or_else(|e| panic!("{css}: {e}"));
}

async fn put_away(visit: &Visit) {
    let script = "document.querySelectorAll('.message button').forEach(b => b.click());";
    visit.run(script, json!(null)).await;
    while visit.count(".message").await > 0 {
        tokio::task::yield_now().await;
    }
}

#[tokio::test]
async fn the_code_on_paper_brings_the_job_back() {
    visit("code", |visit| async move {
        visit.settled().await;
        visit.open_sample("filter-cover").await;
        visit.printed("code", Paper::A4).await;
        let [code] = <[String; 1]>::try_from(codes(&pictures().join("code-a4.pdf"))).unwrap();
        let (base, fragment) = code.split_once('#').unwrap();
        assert_eq!(base, visit.address);
        let job = Sample::by_id("filter-cover").unwrap().job();
        let linked = LinkedJob::read(fragment).unwrap();
        assert_eq!(linked, LinkedJob::of(&job));

        // Scanned while another job is in hand.
        visit.open_sample("grille-frame").await;
        put_away(&visit).await;
        address(&visit, fragment).await;
        wait(&visit, ".message").await;
        let told = visit.texts(".message span").await.concat();
        assert!(told.contains(job.name()), "{told}");
        visit.settled().await;
        assert_eq!(
            visit.typed("part.name").await,
            job.answers.text(Field::Name.into())
        );
        assert_eq!(hash(&visit).await, "");
        put_away(&visit).await;

        // The same again changes nothing; changed answers are told, and the person chooses.
        address(&visit, fragment).await;
        wait(&visit, ".message").await;
        assert_eq!(visit.count(".arrived").await, 0);
        put_away(&visit).await;
        visit.type_over("part.web", "5.5").await;
        address(&visit, fragment).await;
        wait(&visit, ".arrived").await;
        visit.no_barriers().await;
        let rows = visit.texts(".arrived-table tbody tr").await;
        assert!(
            rows.len() == 1 && plain_blanks(&rows[0]).contains("5.5 mm"),
            "{rows:?}"
        );
        let printed = visit
            .by_role("button", "Open the answers of the sheet")
            .await;
        printed.click().await.unwrap();
        visit.settled().await;
        assert_eq!(
            visit.typed("part.web").await,
            job.answers.text(Field::Web.into())
        );
        assert_eq!(visit.count(".arrived").await, 0);
    })
    .await;
}

#[tokio::test]
async fn what_is_no_good_link_touches_nothing() {
    visit("bad-link", |visit| async move {
        visit.settled().await;
        let stamp = digest(&Sample::by_id("mirror-back-plate").unwrap().job().answers);
        for bad in [
            "j=",
            "j=1",
            "j=2ABCZ",
            "j=1abcZ",
            "j=1ABCDEFZ",
            "j=%00%ff\u{1F600}",
            "j=1000Z",
        ] {
            address(&visit, bad).await;
            wait(&visit, ".message-alarm").await;
            // It stays where it is, so that a newer page may still read it.
            assert!(hash(&visit).await.starts_with("#j="), "{bad}");
            assert_eq!(visit.status().await, crate::person::UP_TO_DATE, "{bad}");
            let shown = visit.texts(".sheet-fact dd").await.join(" ");
            assert!(shown.contains(&stamp), "{shown}");
            put_away(&visit).await;
        }
        address(&visit, "strategy").await;
        assert_eq!(visit.count(".message").await, 0);
        assert_eq!(hash(&visit).await, "#strategy");
    })
    .await;
}

#[tokio::test]
async fn a_job_is_handed_on_from_the_panel() {
    visit("share", |visit| async move {
        visit.settled().await;
        let open = visit.by_role("button", "Link and code").await;
        open.click().await.unwrap();
        wait(&visit, "#share-link").await;
        visit.no_barriers().await;
        assert_eq!(visit.count(".share-code").await, 1);
        let value = visit.run("return document.getElementById('share-link').value;", json!(null)).await;
        let (base, fragment) = value.as_str().unwrap().split_once('#').unwrap();
        assert_eq!(base, visit.address);
        assert!(LinkedJob::read(fragment).is_ok());
        // This test's server is the device's own: the page says so, and takes an address that others can open.
        assert_eq!(visit.count(".share-who").await, 1);
        let named = visit.client.find(fantoccini::Locator::Css("#share-address")).await.unwrap();
        named.send_keys("https://example.org/page\t").await.unwrap();
        let lead = "return document.getElementById('share-link').value.startsWith('https://example.org/page#j=');";
        while visit.run(lead, json!(null)).await != json!(true) {
            tokio::task::yield_now().await;
        }
    })
    .await;
}
