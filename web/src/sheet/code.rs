//! The job itself on paper: a code to scan.

use super::Topic;
use crate::share::code;
use crate::text::links as text;
use thinwright_jobfile::{JobFile, LinkedJob};
use yew::prelude::*;

/// The code; why there is none where there is none.
pub(super) fn code_cell(topic: &Topic) -> Html {
    let linked = LinkedJob::of(&JobFile::new(
        topic.stamp.title.as_str(),
        topic.answers.clone(),
    ));
    let numbers = &topic.speaker.catalog.numbers;
    let made = match (topic.stamp.base.as_deref(), linked.write()) {
        (None, _) => Err(text::no_code_address()),
        (_, Err(_)) => Err(text::no_code_size()),
        (Some(base), Ok(link)) => code(base, &link, numbers).ok_or_else(text::no_code_size),
    };
    html! {
        <div class="sheet-code">
            {
                match made {
                    Ok(code) => {
                        let edge = format!("{:.1}mm", code.edge_mm(numbers));
                        html! { <>{ code.draw("sheet-code-squares", Some(edge)) }<p>{ text::scan_me() }</p></> }
                    }
                    Err(why) => html! { <p>{ why }</p> },
                }
            }
        </div>
    }
}
