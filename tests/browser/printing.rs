//! The sheet on paper: whole, on two pages at most, with the numbers of the page; none where there is no way.

use crate::paper::{Paper, sentences};
use crate::person::plain_blanks;
use crate::visit::{Visit, visit};
use thinwright_words::{after_turn_over, before_start, sheet as words};

/// Pages that the sheet of an ordinary part may take.
const MOST_PAGES: usize = 2;

/// What the page shows of a step: its number, spindle speed and feed as typed.
struct Step {
    number: String,
    n: String,
    vf: String,
}

/// The number before its unit, without the blanks that group its digits.
fn bare(value: &str) -> String {
    let plain = plain_blanks(value);
    let (number, _) = plain.rsplit_once(' ').unwrap();
    number.replace(' ', "")
}

async fn steps(visit: &Visit) -> Vec<Step> {
    let numbers = visit.texts(".step-number").await;
    let n = visit.texts(".number:nth-child(2) .number-value").await;
    let vf = visit.texts(".number:nth-child(3) .number-value").await;
    assert!(numbers.len() == n.len() && n.len() == vf.len() && !n.is_empty());
    let values = n.iter().zip(&vf);
    let steps = numbers.into_iter().zip(values);
    steps
        .map(|(number, (n, vf))| Step {
            number,
            n: bare(n),
            vf: bare(vf),
        })
        .collect()
}

/// Whether a printed line starts with the step's number and holds spindle speed and feed beside each other.
fn printed_line(text: &str, step: &Step) -> bool {
    text.lines().any(|line| {
        let words: Vec<&str> = line.split_whitespace().collect();
        let values = [step.n.as_str(), step.vf.as_str()];
        words.first() == Some(&step.number.as_str()) && words.windows(2).any(|w| w == values)
    })
}

/// Demands a sentence, wherever its lines end.
fn holds(text: &str, sentence: &str) {
    let found = plain_blanks(text).contains(&plain_blanks(sentence));
    assert!(found, "the paper misses {sentence:?}\n{text}");
}

async fn sheet(id: &'static str) {
    visit(&format!("sheet-{id}"), move |visit| async move {
        visit.settled().await;
        visit.open_sample(id).await;
        let steps = steps(&visit).await;
        let setups = visit.count(".setup").await;
        let name = visit.typed("part.name").await;
        let cautions = visit.texts(".sheet-cautions li").await;
        assert!(!cautions.is_empty());
        visit.confirmed().await;
        for paper in [Paper::A4, Paper::Letter] {
            let pages = visit.printed(&format!("sheet-{id}"), paper).await;
            assert!(pages.len() <= MOST_PAGES, "{} pages", pages.len());
            let laid_out = pages.join("\n");
            for step in &steps {
                assert!(
                    printed_line(&laid_out, step),
                    "no line with step {}, {}, {}\n{laid_out}",
                    step.number,
                    step.n,
                    step.vf
                );
            }
            let read = sentences(&format!("sheet-{id}"), paper);
            holds(&read, &name);
            holds(&read, words::heading());
            holds(&read, words::not_a_program());
            let turned = if setups > 1 {
                &after_turn_over()[..]
            } else {
                &[]
            };
            let start = before_start();
            let checks = start.iter().chain(turned).copied();
            let signs = words::signatures();
            for sentence in cautions
                .iter()
                .map(String::as_str)
                .chain(checks)
                .chain(signs)
            {
                holds(&read, sentence);
            }
        }
    })
    .await;
}

#[tokio::test]
async fn the_back_plate_fits_two_pages() {
    sheet("mirror-back-plate").await;
}

#[tokio::test]
async fn the_grille_frame_fits_two_pages() {
    sheet("grille-frame").await;
}

#[tokio::test]
async fn the_filter_cover_fits_two_pages() {
    sheet("filter-cover").await;
}

#[tokio::test]
async fn what_cannot_be_made_has_no_sheet() {
    visit("no-sheet", |visit| async move {
        visit.settled().await;
        visit.open_sample("impossible").await;
        assert_eq!(visit.count(".refusal").await, 1);
        for paper in [Paper::A4, Paper::Letter] {
            let text = visit.printed("no-sheet", paper).await.concat();
            assert!(!text.contains(words::heading()), "{text}");
            assert!(text.contains("no checked strategy"), "{text}");
        }
    })
    .await;
}

#[tokio::test]
async fn an_old_strategy_has_no_sheet() {
    visit("old-sheet", |visit| async move {
        visit.settled().await;
        visit.type_over("part.web", "six").await;
        for paper in [Paper::A4, Paper::Letter] {
            let text = visit.printed("old-sheet", paper).await.concat();
            assert!(!text.contains(words::heading()), "{text}");
            assert!(text.contains("no checked strategy"), "{text}");
        }
    })
    .await;
}
