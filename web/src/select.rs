//! A list to choose from that always shows what the state holds.

use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// A heading and the entries under it: key and words. An empty heading is none.
pub(crate) type Entries = Vec<(AttrValue, Vec<(AttrValue, AttrValue)>)>;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct SelectProps {
    #[prop_or_default]
    pub(crate) id: Option<AttrValue>,
    #[prop_or_default]
    pub(crate) class: Classes,
    /// A name for where no label stands.
    #[prop_or_default]
    pub(crate) label: Option<AttrValue>,
    #[prop_or_default]
    pub(crate) described: Option<AttrValue>,
    #[prop_or_default]
    pub(crate) wrong: bool,
    pub(crate) entries: Entries,
    /// The key that is chosen.
    pub(crate) chosen: AttrValue,
    pub(crate) on_choose: Callback<String>,
}

/// The list.
#[component]
pub(crate) fn Select(props: &SelectProps) -> Html {
    let list = use_node_ref();
    {
        // What a person chose once no longer follows the attribute, only the property.
        let (list, chosen) = (list.clone(), props.chosen.clone());
        use_effect(move || {
            if let Some(list) = list.cast::<HtmlSelectElement>()
                && list.value() != *chosen
            {
                list.set_value(&chosen);
            }
        });
    }
    let onchange = props
        .on_choose
        .reform(|event: Event| event.target_unchecked_into::<HtmlSelectElement>().value());
    let known = props
        .entries
        .iter()
        .flat_map(|(_, group)| group)
        .any(|(key, _)| *key == props.chosen);
    let option = |(key, words): &(AttrValue, AttrValue)| {
        html! { <option value={key.clone()} selected={*key == props.chosen}>{ words.clone() }</option> }
    };
    let groups = props.entries.iter().map(|(heading, group)| {
        let options: Html = group.iter().map(option).collect();
        if heading.is_empty() {
            options
        } else {
            html! { <optgroup label={heading.clone()}>{ options }</optgroup> }
        }
    });
    html! {
        <select
            ref={list}
            id={props.id.clone()}
            class={classes!("entry", props.class.clone())}
            aria-label={props.label.clone()}
            aria-describedby={props.described.clone()}
            aria-invalid={props.wrong.then_some("true")}
            {onchange}
        >
            if !known {
                // A key of a job file that is none: it stays, with its problem beside it.
                <option value={props.chosen.clone()} selected=true>{ props.chosen.clone() }</option>
            }
            { groups.collect::<Html>() }
        </select>
    }
}
