//! How long a changed answer takes until its checked strategy stands there.

use crate::person::UP_TO_DATE;
use crate::visit::visit;
use serde_json::json;

const EDITS: u32 = 50;
/// A person would have looked away, ms.
const TOO_LONG: f64 = 5000.0;

/// Types into the web thickness and waits until the strategy has been old and is not any more.
const EDIT: &str = "
    const [text, upToDate, done] = arguments;
    const field = document.getElementById('f-part-web');
    const words = () => document.querySelector('.status-words').textContent;
    let old = false;
    const from = performance.now();
    const look = () => {
        const current = words() === upToDate && !document.querySelector('.route-stale');
        old = old || !current;
        if (old && current) { watch.disconnect(); done(performance.now() - from); }
    };
    const watch = new MutationObserver(look);
    watch.observe(document.getElementById('strategy'),
        {subtree: true, childList: true, characterData: true, attributes: true});
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(field, text);
    field.dispatchEvent(new InputEvent('input', {bubbles: true}));";

#[tokio::test]
#[allow(clippy::print_stdout, reason = "the figures are what one runs it for")]
async fn a_changed_answer_is_worked_out_while_one_looks() {
    visit("pace", |visit| async move {
        visit.settled().await;
        let mut times = Vec::new();
        for edit in 0..EDITS {
            // Thick and thin in turn, and no value twice: nothing is at hand from before.
            let hundredths = if edit % 2 == 0 {
                500 - edit
            } else {
                300 + edit
            };
            let text = format!("{}.{:02}", hundredths / 100, hundredths % 100);
            let arguments = vec![json!(text), json!(UP_TO_DATE)];
            let time = visit.client.execute_async(EDIT, arguments).await.unwrap();
            times.push(time.as_f64().unwrap());
        }
        times.sort_by(f64::total_cmp);
        let (median, worst) = (times[times.len() / 2], times[times.len() - 1]);
        println!("{EDITS} edits of the web thickness: median {median:.0} ms, worst {worst:.0} ms");
        assert!(worst < TOO_LONG, "{times:?}");
    })
    .await;
}
