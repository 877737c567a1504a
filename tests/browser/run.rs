//! What was run: a note says what it would teach before it is accepted, goes with file and sheet, and is taken back.

use crate::files::{CATCH, CAUGHT};
use crate::paper::{Paper, sentences};
use crate::person::plain_blanks;
use crate::visit::{Visit, visit};
use serde_json::{Value, json};
use thinwright_jobfile::{JobFile, Ran};

/// Unfolds the section.
const UNFOLD: &str = "document.getElementById('ran').open = true;";
impl Visit {
    /// Writes into an entry of the section in place of what stands there.
    async fn write_in(&self, id: &str, text: &str) {
        let script = "
            const [id, text] = arguments[0];
            const entry = document.getElementById(id);
            entry.value = text;
            entry.dispatchEvent(new InputEvent('input', { bubbles: true }));";
        self.run(script, json!([id, text])).await;
    }

    /// The learned answers of the job in hand, as a file would have them.
    async fn saved(&self) -> JobFile {
        self.run(CATCH, Value::Null).await;
        self.by_role("button", "Save").await.click().await.unwrap();
        let caught = self.client.execute_async(CAUGHT, Vec::new()).await.unwrap();
        JobFile::read(caught[1].as_str().unwrap().as_bytes()).unwrap()
    }
}

fn learned(file: &JobFile) -> Vec<(String, String)> {
    let all = file.answers.iter();
    let learned = all.filter(|(id, a)| id.key().starts_with("learned.") && !a.text.is_empty());
    learned.map(|(id, a)| (id.key(), a.text.clone())).collect()
}

/// Chooses the entry of a list that says these words.
async fn choose(visit: &Visit, list: &str, words: &str) {
    const CHOOSE: &str = "const list = document.getElementById(arguments[0]); \
        list.value = [...list.options].find(o => o.text.includes(arguments[1])).value; \
        list.dispatchEvent(new Event('change', { bubbles: true }));";
    let words = vec![json!(list), json!(words)];
    visit.client.execute(CHOOSE, words).await.unwrap();
}

#[tokio::test]
async fn a_note_teaches_is_printed_and_is_taken_back() {
    visit("run", |visit| async move {
        visit.settled().await;
        visit.run(UNFOLD, Value::Null).await;
        assert_eq!(visit.count(".ran-entry").await, 0);
        // The wall of a step that clears is off by more than the stiffest machine of this range would give.
        choose(&visit, "ran-step", "Clear").await;
        visit.by_role("radio", "The wall is off by").await.click().await.unwrap();
        visit.write_in("ran-off", "much").await;
        assert_eq!(visit.count("#ran-off[aria-invalid='true']").await, 1);
        visit.write_in("ran-off", "0.06").await;
        visit.write_in("ran-note", "quiet, chips flew well").await;
        visit.no_barriers().await;
        visit.picture("form").await;
        let told = visit.texts(".ran-teaches").await.join(" ");
        assert!(told.contains("Stiffness of the machine"), "{told}");
        assert_eq!(learned(&visit.saved().await), []);
        let learn = visit.by_role("button", "Note it and learn from it").await;
        learn.click().await.unwrap();
        visit.settled().await;
        let file = visit.saved().await;
        assert_eq!(file.records.len(), 1);
        assert_eq!(file.records[0].outcome, Some(Ran::Bent));
        assert_eq!(file.records[0].note, "quiet, chips flew well");
        assert!(!learned(&file).is_empty() && !file.records[0].date.is_empty());
        visit.picture("noted").await;
        visit.no_barriers().await;
        // On paper, in the table of what was run.
        visit.confirmed().await;
        visit.printed("run", Paper::A4).await;
        let paper = plain_blanks(&sentences("run", Paper::A4));
        assert!(paper.contains("quiet, chips flew well"), "{paper}");
        // Taken back, to the letter.
        let back = visit.by_role("button", "Take back: note 1").await;
        back.click().await.unwrap();
        visit.settled().await;
        let file = visit.saved().await;
        assert!(file.records[0].taken_back);
        assert_eq!(learned(&file), []);
        // A swing of the dial goes to the answers.
        choose(&visit, "ran-reading", "Runout at the cutter").await;
        visit.write_in("ran-read-0", "0.012").await;
        let take = visit.by_role("button", "Take it as the answer").await;
        take.click().await.unwrap();
        assert_eq!(visit.typed("machine.runout").await, "0.012");
        let widest = visit
            .run(
                "return document.documentElement.scrollWidth - document.documentElement.clientWidth;",
                json!(null),
            )
            .await;
        assert_eq!(widest, json!(0));
    })
    .await;
}
