//! Whether a step will sing: nothing known, a push test, a tone; words, chart and table, by keyboard and in every width.

use crate::devtools::devtools;
use crate::paper::{Paper, sentences};
use crate::person::{ENTER, plain_blanks};
use crate::visit::{Visit, visit};
use serde_json::{Value, json};
use std::time::{Duration, Instant};
use thinwright_words::stability as words;

/// How long a chart may take on a machine that is busy with other tests.
const PATIENCE: Duration = Duration::from_secs(60);
const INTERVAL: Duration = Duration::from_millis(25);
/// The step that is opened, counted from 0: the first recess.
const STEP: usize = 2;

/// What is drawn in the chart, and what is said of it.
const CHART: &str = "
    const chart = document.querySelector('.song-chart');
    if (!chart) return null;
    const drawn = css => [...chart.querySelectorAll(css)].filter(e => e.getAttribute('d')).length;
    return {limit: drawn('.ink-index'), margin: drawn('.ink-hidden'), sings: drawn('.ink-hatch'),
        point: drawn('.ink-cutter'), role: chart.getAttribute('role'), said: chart.getAttribute('aria-label'),
        texts: [...chart.querySelectorAll('text')].map(e => e.textContent),
        height: chart.getBoundingClientRect().height};";

impl Visit {
    async fn chart(&self) -> Value {
        self.run(CHART, json!(null)).await
    }

    /// Waits until a chart of lobes is there.
    async fn drawn_up(&self) -> Value {
        let start = Instant::now();
        loop {
            let chart = self.chart().await;
            if chart["sings"] == json!(1) {
                return chart;
            }
            assert!(start.elapsed() < PATIENCE, "no chart yet: {chart}");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Waits until the strategy is of the answers as they were just typed.
    async fn settled_anew(&self) {
        // The page reads each key stroke at once, but draws it later.
        tokio::time::sleep(Duration::from_millis(100)).await;
        self.settled().await;
    }

    async fn open_step(&self) {
        let script = "document.querySelectorAll('.step-button')[arguments[0]].click();";
        self.run(script, json!(STEP)).await;
        self.song().await;
    }

    /// What is said, once the step is open.
    async fn song(&self) -> String {
        let start = Instant::now();
        loop {
            let said = plain_blanks(&self.texts(".song .part-list").await.concat());
            if !said.is_empty() {
                return said;
            }
            assert!(start.elapsed() < PATIENCE, "nothing is said of singing");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    async fn tap_the_mills(&self) {
        let rows = self.count(".rack-row").await;
        for row in 1..=rows {
            let key = format!("cutter.{row}.tone");
            let css = format!("#f-cutter-{row}-tone");
            // A drill is not asked for it.
            if self.count(&css).await == 1 {
                self.type_over(&key, "2300").await;
            }
        }
        self.settled_anew().await;
    }

    /// Opens the table without a pointer, and counts its rows.
    async fn table_by_keyboard(&self) {
        // The table opens by keyboard.
        let focus = "document.querySelector('.song-table summary').focus();";
        self.run(focus, json!(null)).await;
        self.press([ENTER]).await;
        let open = self
            .run(
                "return document.querySelector('.song-table').open;",
                json!(null),
            )
            .await;
        assert_eq!(open, json!(true));
        let rows = self.texts(".song-table tbody tr").await;
        assert_eq!(rows.len(), 12, "{rows:?}");
        assert!(rows.iter().all(|r| r.contains("rpm")), "{rows:?}");
    }

    /// Looks at the section in every width and both themes.
    async fn in_every_width(&self) {
        for (width, theme) in [
            (390, "light"),
            (390, "dark"),
            (820, "light"),
            (1440, "light"),
            (1440, "dark"),
        ] {
            let metrics =
                json!({ "width": width, "height": 900, "deviceScaleFactor": 1, "mobile": false });
            devtools(&self.client, "Emulation.setDeviceMetricsOverride", metrics).await;
            let theme_list =
                "const list = document.getElementById('theme'); list.value = arguments[0];
                list.dispatchEvent(new Event('change', {bubbles: true}));
                document.querySelector('.song').scrollIntoView();";
            self.run(theme_list, json!(theme)).await;
            self.no_barriers().await;
            let reach = "const song = document.querySelector('.song');
                return song.scrollWidth <= song.clientWidth;";
            assert_eq!(self.run(reach, json!(null)).await, json!(true), "{width}");
            self.picture(&format!("chart-{theme}-{width}")).await;
        }
    }
}

#[tokio::test]
async fn nothing_known_has_no_lobes_and_a_push_test_says_what_it_gave() {
    visit("chart-bare", |visit| async move {
        visit.settled().await;
        visit.open_step().await;
        let said = visit.song().await;
        for wanted in ["no speed can be picked", "Shops cut deeper", "First trial"] {
            assert!(said.contains(wanted), "{wanted:?} is not in {said}");
        }
        let chart = visit.chart().await;
        assert_eq!((&chart["sings"], &chart["point"]), (&json!(0), &json!(1)));
        assert_eq!(visit.count(".song-table").await, 0);
        visit.type_over("push.force", "50 N").await;
        visit.type_over("push.x-up", "0.012").await;
        assert_eq!(visit.count(".push-gave p").await, 0);
        visit.type_over("push.x-down", "0.01").await;
        visit.settled_anew().await;
        let gave = plain_blanks(&visit.texts(".push-gave").await.concat());
        assert!(gave.contains("Along X: 5 N/\u{B5}m"), "{gave}");
        assert!(gave.contains("takes the place of the class"), "{gave}");
        assert!(visit.chart().await["sings"] == json!(0));
        visit.no_barriers().await;
    })
    .await;
}

#[tokio::test]
async fn a_tone_gives_words_chart_and_table_by_keyboard() {
    visit("chart", |visit| async move {
        visit.settled().await;
        visit.open_step().await;
        let before = visit.chart().await;
        visit.tap_the_mills().await;
        let chart = visit.drawn_up().await;
        assert_eq!(
            (&chart["limit"], &chart["margin"], &chart["role"]),
            (&json!(1), &json!(1), &json!("img")),
            "{chart}"
        );
        assert_ne!(
            chart["point"],
            json!(0),
            "the step is on the chart: {chart}"
        );
        assert_eq!(chart["height"], before["height"]);
        let title = chart["texts"].to_string();
        assert!(title.contains("step-down ap, mm") && title.contains("spindle speed n, rpm"));
        let said = plain_blanks(chart["said"].as_str().unwrap());
        assert!(
            said.contains("least ") && said.contains("The step stands at"),
            "{said}"
        );
        let song = visit.song().await;
        for wanted in ["it is quiet", "sings from", "is planned", "Good speed: "] {
            assert!(song.contains(wanted), "{wanted:?} is not in {song}");
        }
        visit.table_by_keyboard().await;
        visit.no_barriers().await;
        visit.in_every_width().await;
    })
    .await;
}

#[tokio::test]
async fn a_chart_belongs_to_its_answers_and_the_sheet_has_its_line() {
    visit("chart-answers", |visit| async move {
        visit.settled().await;
        visit.open_step().await;
        visit.tap_the_mills().await;
        visit.drawn_up().await;
        visit.confirmed().await;
        for paper in [Paper::A4, Paper::Letter] {
            let pages = visit.printed("chart-answers", paper).await;
            assert!(pages.len() <= 2, "{} pages", pages.len());
            let read = plain_blanks(&sentences("chart-answers", paper));
            assert!(read.contains("; best near "), "{read}");
        }
        // Without the tones nothing of the lobes is left.
        let rows = visit.count(".rack-row").await;
        for row in 1..=rows {
            if visit.count(&format!("#f-cutter-{row}-tone")).await == 1 {
                visit.type_over(&format!("cutter.{row}.tone"), "").await;
            }
        }
        visit.settled_anew().await;
        let chart = visit.chart().await;
        assert_eq!(chart["sings"], json!(0), "{chart}");
        assert!(visit.song().await.contains("no speed can be picked"));
        assert!(
            !visit
                .texts(".song-figure")
                .await
                .concat()
                .contains(words::working_out())
        );
    })
    .await;
}
