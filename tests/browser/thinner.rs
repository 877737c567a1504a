//! The page's main work: a thinner web gets another plan, and the page says what became of it.

use crate::person::plain_blanks;
use crate::visit::{Visit, visit};

/// What changed, by name: now and before.
async fn changes(visit: &Visit) -> Vec<(String, String)> {
    let names = visit.texts(".changed dt").await;
    let values = visit.texts(".changed dd").await;
    let values = values.iter().map(|v| plain_blanks(v));
    names.into_iter().zip(values).collect()
}

/// The line of a name, as now and before.
fn line<'a>(changes: &'a [(String, String)], name: &str) -> (&'a str, &'a str) {
    let found = changes.iter().find(|(what, _)| what == name);
    let (_, value) = found.unwrap_or_else(|| panic!("no line {name:?} in {changes:#?}"));
    value.split_once("; before: ").unwrap()
}

fn number(text: &str) -> f64 {
    text.trim_end_matches(" N/µm")
        .replace(' ', "")
        .parse()
        .unwrap_or_else(|_| panic!("no stiffness: {text:?}"))
}

#[tokio::test]
async fn a_thinner_web_gets_another_plan_and_the_page_says_why() {
    visit("thinner", |visit| async move {
        visit.settled().await;
        visit.type_over("part.web", "5").await;
        visit.settled().await;
        // Opened anew, so that changes are counted from the 5 mm.
        visit.client.refresh().await.unwrap();
        visit.settled().await;
        assert_eq!(visit.typed("part.web").await, "5");
        assert_eq!(changes(&visit).await, []);
        let (thick, setups) = (whole(&visit).await, visit.texts(".setup-name").await);
        assert_eq!(web_in_drawing(&visit).await, ["5"]);

        visit.type_over("part.web", "3").await;
        visit.settled().await;
        assert_eq!(web_in_drawing(&visit).await, ["3"]);
        assert_ne!(whole(&visit).await, thick);
        assert_ne!(visit.texts(".setup-name").await, setups);
        let changes = changes(&visit).await;
        assert_eq!(line(&changes, "Web thickness"), ("3 mm", "5 mm"));
        // The web that was softest is helped now.
        let (now, before) = line(&changes, "order and holding");
        assert!(now.contains("boss bolted") && !before.contains("boss bolted"));
        let (now, _) = line(&changes, "Setup 2");
        assert!(now.contains("boss bolted down"), "{now}");
        // By itself it is softer: bending goes with the cube of the thickness, shear and the give of rim and slots with
        // less. Source: timoshenko1959, plates of constant thickness.
        let (now, before) = line(&changes, "softest web without backing or bolt");
        let (now, before) = (number(now), number(before));
        let ratio = 5.0_f64 / 3.0;
        let rounding = 1.0 + half_digit(now) / now + half_digit(before) / before;
        let softer = before / now;
        assert!(
            ratio.powi(2) < softer && softer <= ratio.powi(3) * rounding,
            "{before} / {now} is no {ratio} to a power between 2 and 3"
        );
        let (now, before) = line(&changes, "softest web under a cut");
        assert!(number(now) < number(before));
        visit.picture("thinner").await;
    })
    .await;
}

/// Half of the last of three digits.
fn half_digit(value: f64) -> f64 {
    let mut digit = 1.0;
    while digit * 100.0 > value {
        digit /= 10.0;
    }
    while digit * 1000.0 <= value {
        digit *= 10.0;
    }
    digit / 2.0
}

async fn whole(visit: &Visit) -> String {
    visit.texts(".whole pre").await.concat()
}

/// How the drawing gives the web thickness.
async fn web_in_drawing(visit: &Visit) -> Vec<String> {
    let texts = visit.texts("[data-field='part.web'] text").await;
    texts.iter().map(|t| t.trim().to_owned()).collect()
}
